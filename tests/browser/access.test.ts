/** Every page for everyone: WCAG 2.2 AA by rule, in both themes, on a phone and on a desk. */
import { describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { SHEETS } from '$sheets/abouts';
import { axe } from './browser';
import { blank, isRefused } from './sheet';
import { go, visits } from './visit';

const visit = visits();
const PLACES = ['', ...SHEETS.map(({ slug }) => `sheets/${slug}/`), 'folder/'];
const WIDTHS = [390, 820, 1440];

/** The demonstration has a candidate; refused texts on both sides put errors on the sheets. */
async function withErrors(page: Page): Promise<void> {
  await go(page, 'sheets/pump-and-restriction/');
  for (const side of ['as found', 'candidate'] as const) {
    const bore = blank(page, 'Pump to charge cooler: bore', side);
    await bore.fill('8 gpm');
    await expect.poll(() => isRefused(bore)).toBe(true);
  }
  const head = page.getByRole('textbox', { name: 'Head, row 2' }).first();
  await head.fill('19 ft');
}

/** Pages longer than the window that can be moved sideways as a whole. */
const sideways = (page: Page) =>
  page.evaluate(() => {
    const { scrollWidth, clientWidth } = document.documentElement;
    return scrollWidth - clientWidth;
  });

/** Scroll through once, so that everything that waits for the reader is drawn. */
async function readThrough(page: Page): Promise<void> {
  await page.evaluate(async () => {
    for (let y = 0; y < document.body.scrollHeight; y += innerHeight) {
      scrollTo(0, y);
      await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)));
    }
    scrollTo(0, 0);
  });
}

describe('every page', () => {
  it.each(PLACES)('/%s keeps WCAG 2.2 AA and never scrolls sideways', async (place) => {
    const page = await visit('', { width: 390 });
    await withErrors(page);
    await go(page, place);
    await readThrough(page);
    for (const width of WIDTHS) {
      await page.setViewportSize({ width, height: 900 });
      expect(await sideways(page), `${width} px`).toBe(0);
      if (width === 820) continue;
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme });
        expect(await axe(page), `${width} px, ${colorScheme}`).toEqual([]);
      }
    }
  });
});
