/** A visit to the site as a person makes it; at its end it must have left no complaint behind. */
import { afterAll, afterEach, beforeAll, expect, inject, vi } from 'vitest';
import type { Browser, Page } from 'playwright-core';
import { assertNoForeignRequests, launch, openPage, type View, type Watched } from './browser';

export const site = inject('site');

/** The address of a page of the site; '' is the desk. */
export const addressOf = (place: string) => new URL(place, site).href;

/** Open a place of the site in `page` and wait until it is drawn. */
export async function go(page: Page, place: string): Promise<Page> {
  await page.goto(addressOf(place));
  await drawn(page);
  return page;
}

/** The pages are drawn in the browser: a heading means that the job is there. */
export async function drawn(page: Page): Promise<void> {
  await page.getByRole('heading', { level: 1 }).first().waitFor();
  await page.evaluate(() => document.fonts.ready.then(() => undefined));
}

/** Opens a first visit (nothing kept yet) at a place of the site. */
export type Visit = (place?: string, view?: View) => Promise<Page>;

/**
 * Chromium for the tests of one file. After each test every visit is closed, and must have asked
 * no other host for anything and have printed no error.
 */
export function visits(): Visit {
  // A few seconds each on a quiet machine; a busy one must not fail them.
  vi.setConfig({ testTimeout: 240_000 });
  let browser: Browser;
  const open: Watched[] = [];
  beforeAll(async () => void (browser = await launch()));
  afterEach(async () => {
    for (const watched of open.splice(0)) {
      await watched.close();
      expect(watched.requests.length).toBeGreaterThan(0);
      assertNoForeignRequests(watched, site);
      expect(watched.errors).toEqual([]);
    }
  });
  afterAll(() => browser.close());
  return async (place = '', view) => {
    const watched = await openPage(browser, view);
    watched.page.setDefaultTimeout(120_000);
    open.push(watched);
    return go(watched.page, place);
  };
}
