/** Who lands far down a sheet, by a link or a reload, sees its plots and lines come without going up. */
import { describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { SHEETS } from '$sheets/abouts';
import { visits } from './visit';

const visit = visits();

const PHONE = { width: 390, height: 844 };

/** A plot of each sheet that another thread has to work out, and what every such sheet writes down. */
const AWAITED: Readonly<Record<string, string | null>> = {
  'warm-up-and-recovery': 'The drive with what happens on the way',
  diagnosis: 'Causes, likeliest first',
  'how-sure': 'Charge air to the engine, cruise',
  upgrades: 'Best for the money',
  'what-it-takes': 'From the day’s air up to the result',
  // Its plot waits for nothing, the order of its instruments does.
  instruments: null,
};
const CASES = SHEETS.filter(({ slug }) => slug in AWAITED);

/** From now on: how far up the page was ever scrolled. Nobody may go up for the work to begin. */
const watchScroll = (page: Page) =>
  page.evaluate(() => {
    const kept = globalThis as unknown as { highest: number };
    kept.highest = scrollY;
    addEventListener('scroll', () => (kept.highest = Math.min(kept.highest, scrollY)));
  });
const highest = (page: Page) =>
  page.evaluate(() => (globalThis as unknown as { highest: number }).highest);

/** @param within - share of the window, from its top */
const inSight = (page: Page, id: string, within = 1) =>
  page.evaluate(
    ({ id, within }) => {
      const { top } = document.getElementById(id)!.getBoundingClientRect();
      return top > -60 && top < innerHeight * within;
    },
    { id, within },
  );

describe('landing on a part of a sheet on a phone', () => {
  it.each(
    CASES.flatMap((sheet) => (['plots', 'lines'] as const).map((part) => ({ ...sheet, part }))),
  )('$slug, $part: come where the reader is', async ({ slug, number, part }) => {
    const page = await visit(`sheets/${slug}/#${part}-${number}`, PHONE);
    await expect.poll(() => inSight(page, `${part}-${number}`), { timeout: 30_000 }).toBe(true);
    await watchScroll(page);

    const section = page.locator(`section.${part}`);
    const plot = AWAITED[slug];
    if (part === 'lines') {
      await section.getByRole('heading', { level: 3 }).first().waitFor({ timeout: 40_000 });
    } else if (plot) {
      const figure = section.getByRole('figure').filter({ hasText: plot });
      const drawn = figure.locator('svg, table').first();
      await drawn.waitFor({ state: 'attached', timeout: 40_000 });
    }
    const busy = page.locator('main progress, main [data-busy]');
    await expect.poll(() => busy.count(), { timeout: 40_000 }).toBe(0);
    expect(await highest(page)).toBeGreaterThan(PHONE.height / 2);
    // What grew above it must not have carried it away.
    await expect.poll(() => inSight(page, `${part}-${number}`, 1 / 4)).toBe(true);
  });

  it('lets go of who scrolls on', async () => {
    const page = await visit('sheets/how-sure/#lines-16', PHONE);
    await expect.poll(() => inSight(page, 'lines-16', 1 / 4)).toBe(true);
    await page.mouse.wheel(0, 2 * PHONE.height);
    await expect.poll(() => inSight(page, 'lines-16')).toBe(false);
    // Plots above go on growing; the link takes nobody back.
    const busy = page.locator('main progress, main [data-busy]');
    await expect.poll(() => busy.count(), { timeout: 40_000 }).toBe(0);
    expect(await inSight(page, 'lines-16')).toBe(false);
  });
});
