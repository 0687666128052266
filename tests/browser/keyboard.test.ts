/** A sheet without a mouse: every stop reached in order, seen, left again. */
import { describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { choose, found, plotReader } from './sheet';
import { visits } from './visit';

const visit = visits();
const LINE_UNITS = /^Line \d+: ?in SI units$/;

interface Stop {
  readonly name: string;
  readonly kind: string;
  readonly seen: boolean;
}

/** Where the focus is, and whether something shows it; null when it has left the page. */
const stop = (page: Page) =>
  page.evaluate((): Stop | null => {
    const e = document.activeElement;
    if (!(e instanceof HTMLElement) || e === document.body) return null;
    // A radio drawn as a cell shows the focus on the cell.
    const shows = [e, e.nextElementSibling, e.closest('label')].some((part) => {
      if (!part) return false;
      const { outlineStyle, outlineWidth } = getComputedStyle(part);
      return outlineStyle !== 'none' && parseFloat(outlineWidth) >= 2;
    });
    const name =
      e.getAttribute('aria-label') ??
      (e instanceof HTMLInputElement ? e.labels?.[0]?.textContent : e.textContent) ??
      '';
    const box = e.getBoundingClientRect();
    return {
      name: name.replace(/\s+/g, ' ').trim(),
      kind:
        e.getAttribute('role') ??
        (e instanceof HTMLInputElement ? e.type : e.tagName.toLowerCase()),
      seen: shows && box.width > 0 && e.matches(':focus-visible'),
    };
  });

/** Tab from the top of the page until the focus leaves it. */
async function walk(page: Page): Promise<Stop[]> {
  const stops: Stop[] = [];
  for (let i = 0; i < 500; i++) {
    await page.keyboard.press('Tab');
    const here = await stop(page);
    if (!here) return stops;
    stops.push(here);
  }
  throw new Error(`the focus does not leave; last ${stops.at(-1)!.name}`);
}

const kindsOf = (stops: readonly Stop[], kind: string) =>
  stops.filter((s) => s.kind === kind).map((s) => s.name);

describe('the keyboard', () => {
  it('reaches everything on a sheet in order, each stop seen, and leaves it', async () => {
    const page = await visit('sheets/pump-and-restriction/');
    const stops = await walk(page);
    expect(stops.filter(({ seen }) => !seen)).toEqual([]);
    expect(stops[0]!.name).toBe('Skip to the sheet');

    const names = stops.map(({ name }) => name);
    const order = [
      /^Skip to/,
      /^US$/,
      /^Voltage at the pump, as found$/,
      /^Read along/,
      LINE_UNITS,
    ];
    const places = order.map((name) => names.findIndex((n) => name.test(n)));
    expect(places).not.toContain(-1);
    expect(places).toEqual(places.toSorted((a, b) => a - b));

    // No blank and no plot is passed over.
    const blanks = await page.getByRole('textbox').evaluateAll((all) => all.length);
    expect(stops.filter(({ kind }) => kind === 'text' || kind === 'textarea')).toHaveLength(blanks);
    const plots = await page
      .getByRole('figure')
      // Those not tables; on a slow machine the walk is past a plot before it is drawn.
      .filter({ hasNot: page.getByRole('table') })
      .count();
    expect(kindsOf(stops, 'slider')).toHaveLength(plots);
    const lines = await page.getByRole('list', { name: 'Lines' }).locator('> li').count();
    expect(names.filter((name) => LINE_UNITS.test(name))).toHaveLength(lines);

    // And back: the way out of the last stop is the way it was entered.
    await page.keyboard.press('Shift+Tab');
    await expect.poll(async () => (await stop(page))?.name).toBe(names.at(-1));
  });

  it('skips to the sheet', async () => {
    const page = await visit('sheets/loop-balance/');
    await page.keyboard.press('Tab');
    const link = page.getByRole('link', { name: 'Skip to the sheet' });
    expect((await link.boundingBox())!.x).toBeGreaterThanOrEqual(0);
    await page.keyboard.press('Enter');
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.closest('main') !== null)).toBe(true);
  });

  it('moves the reading of a plot, and switches the units', async () => {
    const page = await visit('sheets/loop-balance/');
    const reader = await plotReader(page, 'Why it settles there');
    const reading = () => reader.getAttribute('aria-valuetext');
    await page.keyboard.press('Home');
    const first = await reading();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowRight');
    const third = await reading();
    expect(third).not.toBe(first);
    expect(third).toMatch(/\d.*°F/);
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('ArrowLeft');
    expect(await reading()).toBe(first);
    await page.keyboard.press('End');
    expect(await reading()).not.toBe(first);

    await page.getByRole('radio', { name: 'US' }).focus();
    await page.keyboard.press('ArrowRight');
    await expect.poll(async () => (await found(page, 'Reservoir')).unit).toBe('°C');
    await choose(page, 'Units', 'US');
  });

  it('tells both sides of a comparison apart when a plot is read out', async () => {
    const page = await visit('sheets/pump-and-restriction/');
    const reader = await plotReader(page, 'Pump and loop');
    await page.keyboard.press('ArrowRight');
    const parts = (await reader.getAttribute('aria-valuetext'))!.split(/[:,] /).slice(1);
    const labels = parts.map((part) => part.replace(/ [−\d].*$/, ''));
    expect(labels.length).toBeGreaterThan(2);
    expect(new Set(labels).size).toBe(labels.length);
  });
});
