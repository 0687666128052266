/** The built site as any plain static server gives it, under a sub-path. */
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import type { Browser } from 'playwright-core';
import { assertNoForeignRequests, launch, openPage } from './browser';

const site = inject('site');

describe('the site under a sub-path', () => {
  let browser: Browser;
  beforeAll(async () => void (browser = await launch()));
  afterAll(() => browser.close());

  it('opens, and every page it leads to, without an error and without another host', async () => {
    const index = await openPage(browser);
    await index.page.goto(site, { waitUntil: 'networkidle' });
    const links = await index.page
      .locator('a[href]')
      .evaluateAll((all) => all.map((a) => (a as HTMLAnchorElement).href.replace(/#.*/, '')));
    expect(links.length).toBeGreaterThan(0);
    for (const link of new Set(links)) {
      expect(link.startsWith(site), link).toBe(true);
      const response = await index.page.goto(link, { waitUntil: 'networkidle' });
      expect(response?.status() ?? 200, link).toBeLessThan(400);
    }
    expect(index.errors).toEqual([]);
    assertNoForeignRequests(index, site);
    await index.close();
  });

  it('answers 404 for what is not there', async () => {
    expect((await fetch(`${site}no/such/page/`)).status).toBe(404);
  });

  it('notices a request to another host', async () => {
    const watched = await openPage(browser);
    await watched.page.goto(site);
    // Port 9 discards: nothing leaves the machine, the request is seen all the same.
    await watched.page.evaluate(() => fetch('http://127.0.0.1:9/').catch(() => undefined));
    expect(() => assertNoForeignRequests(watched, site)).toThrow(/127\.0\.0\.1:9/);
    await watched.close();
  });
});
