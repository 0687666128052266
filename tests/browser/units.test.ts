/** What people type as a bore, and the switch between the two systems of units. */
import { describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { blank, choose, found, headline, isRefused, press, readingOf, rows, says } from './sheet';
import { go, visits } from './visit';

const visit = visits();
const SHEET = 'sheets/pump-and-restriction/';
const BORE = 'Pump to first core: bore';
const FLOW = 'Liquid flow';

/** Exact: NIST SP 811, appendix B, gallon of 231 cubic inches, inch of 25.4 mm. */
const L_PER_GAL = 231 * 2.54 ** 3 * 1e-3;

/** Half a unit of the last digit shown. */
const lastDigit = (text: string) => 0.5 * 10 ** -(/\.(\d+)/.exec(text)?.[1]?.length ?? 0);

const bore = (page: Page) => blank(page, BORE, 'as found');

/** Flow once `text` stands in the bore and is accepted. */
async function flowWith(page: Page, text: string): Promise<string> {
  await bore(page).fill(text);
  await page.evaluate(() => new Promise(requestAnimationFrame));
  expect(await isRefused(bore(page)), text).toBe(false);
  return (await found(page, FLOW)).text;
}

describe('a bore as people type it', () => {
  it('takes inches, fractions, millimetres and dash sizes as the same bore', async () => {
    const page = await visit(SHEET);
    const asFound = (await found(page, FLOW)).text;
    const wide = await flowWith(page, '1.25 in');
    expect(wide).not.toBe(asFound);
    for (const same of ['1 1/4 in', '1-1/4"', '31.75 mm', '3.175cm', '1.25']) {
      expect(await flowWith(page, same), same).toBe(wide);
    }

    await bore(page).fill('20 mm');
    expect(readingOf(await says(bore(page)).then((s) => s.slice(s.indexOf('='))))).toMatchObject({
      value: 0.7874, // 20 / 25.4, to the digits shown
      unit: 'in',
    });

    const threeQuarters = await flowWith(page, '0.75 in');
    expect(await flowWith(page, '-12')).toBe(threeQuarters);
    // Both bores: twelve sixteenths, and the 5/8 in of a hose that replaces a 3/4 in tube.
    const words = await says(bore(page));
    expect(words).toMatch(/−12 taken as 0\.750? in/);
    expect(words).toMatch(/0\.625 in/);
  });

  it('refuses a flow beside the blank, says what was expected, keeps the text and the numbers', async () => {
    const page = await visit(SHEET);
    const before = await headline(page, FLOW);
    await bore(page).fill('8 gpm');
    await expect.poll(() => isRefused(bore(page))).toBe(true);
    const words = await says(bore(page));
    expect(words).toContain('“gpm” does not measure a bore');
    expect(words).toMatch(/such as 0\.75 in or 19\.05 mm/);
    await blank(page, 'Pump to first core: length', 'as found').focus();
    expect(await bore(page).inputValue()).toBe('8 gpm');
    expect(await headline(page, FLOW)).toEqual(before);
    await go(page, SHEET);
    expect(await bore(page).inputValue()).toBe('8 gpm');
    expect(await isRefused(bore(page))).toBe(true);
    expect(await flowWith(page, '0.50 in')).toBe(before[0]!.text);
  });
});

describe('the switch of units', () => {
  it('changes what is shown, for the whole job, and no value', async () => {
    const page = await visit(SHEET);
    await bore(page).fill('0.8'); // inches, since the job is in US units
    await bore(page).blur();
    const us = await headline(page, FLOW);
    const typed = await blank(page, 'Voltage at the pump', 'as found').inputValue();
    await choose(page, 'Units', 'SI');
    const si = await headline(page, FLOW);
    expect(si).toHaveLength(us.length);
    si.forEach(({ value, unit, text }, i) => {
      expect(unit).toBe('L/min');
      const half = lastDigit(us[i]!.text) * L_PER_GAL + lastDigit(text);
      expect(Math.abs(value - us[i]!.value * L_PER_GAL)).toBeLessThanOrEqual(half);
    });
    // Texts stay as typed; a bare number was given its unit before it could change its meaning.
    expect(await blank(page, 'Voltage at the pump', 'as found').inputValue()).toBe(typed);
    expect(await bore(page).inputValue()).toBe('0.8 in');
    expect(await says(bore(page))).toContain('20.32 mm'); // 0.8 x 25.4
    const results = await rows(page.getByRole('table', { name: 'Results of this sheet' }));
    expect([...results.values()].flat().join(' ')).not.toMatch(/\b(gpm|ft|psi)\b/);

    await go(page, 'sheets/loop-balance/');
    expect((await found(page, 'Reservoir')).unit).toBe('°C');
    await choose(page, 'Units', 'US');
    await go(page, SHEET);
    expect(await headline(page, FLOW)).toEqual(us);
  });

  it('changes one line alone when asked at the line', async () => {
    const page = await visit(SHEET);
    const lines = page.getByRole('list', { name: 'Lines' }).locator('> li');
    const line = lines.nth(1); // the head of the pump at its speed
    const other = lines.nth(2);
    await other.scrollIntoViewIfNeeded();
    const putIn = (of: typeof line) => of.getByRole('img').first().getAttribute('aria-label');
    await expect.poll(() => putIn(line)).toMatch(/ft/);
    const [before, next] = [(await putIn(line))!, await putIn(other)];
    await press(page, 'Line 2: in SI units');
    await expect.poll(() => putIn(line)).toMatch(/\d m\b/);
    const [feet, metres] = [readingOf(before), readingOf((await putIn(line))!)];
    expect(feet.unit).toBe('ft');
    expect(metres.unit).toBe('m');
    // 0.3048 m to the foot, exact: NIST SP 811.
    const half = lastDigit(feet.text) * 0.3048 + lastDigit(metres.text);
    expect(Math.abs(metres.value - feet.value * 0.3048)).toBeLessThanOrEqual(half);
    expect(await putIn(other)).toBe(next);
    await press(page, 'Line 2: in US units');
    await expect.poll(() => putIn(line)).toBe(before);
  });
});
