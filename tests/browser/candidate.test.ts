/** A change planned beside the loop as found: begun, compared, taken over, dropped. */
import { describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { blank, found, headline, press, readingOf, rows } from './sheet';
import { go, visits } from './visit';

const visit = visits();
const PUMP = 'sheets/pump-and-restriction/';
const BORE = 'Last core to reservoir: bore';
const changes = (page: Page) =>
  rows(page.getByRole('table', { name: 'What the candidate changes' }));
const results = (page: Page) => rows(page.getByRole('table', { name: 'Results of this sheet' }));

/** A new job with a candidate that changes exchanger, fans and one hose. */
async function planned(page: Page): Promise<void> {
  await press(page, 'New job');
  await page.getByRole('heading', { level: 1, name: 'Untitled job' }).waitFor();
  await go(page, PUMP);
  await press(page, 'Plan a change beside it');
  await blank(page, BORE, 'candidate').fill('1 in');
  await go(page, 'sheets/exchangers/');
  await blank(page, 'Rated heat', 'candidate').last().fill('60000 Btu/h');
  await go(page, 'sheets/fans-and-face-airflow/');
  await blank(page, 'Voltage at the fans', 'candidate').fill('13.8 V');
}

describe('a candidate', () => {
  it('is shown beside the loop as found with the difference, then taken as found', async () => {
    const page = await visit();
    await planned(page);
    await go(page, PUMP);
    const [flow, plannedFlow] = await headline(page, 'Liquid flow');
    expect(plannedFlow!.value).toBeGreaterThan(flow!.value);
    for (const [name, [is, would, difference]] of await results(page)) {
      if (!/\d/.test(difference ?? '')) continue;
      const [a, b, d] = [is!, would!, difference!].map((text) => readingOf(text));
      // Each of the three is rounded by itself to four digits or so.
      const slack = 2e-3 * (Math.abs(a!.value) + Math.abs(b!.value)) + 1e-9;
      expect(Math.abs(d!.value - (b!.value - a!.value)), name).toBeLessThanOrEqual(slack);
    }

    await go(page, 'sheets/loop-balance/');
    const temperatures = await headline(page, 'Reservoir');
    expect(temperatures[1]!.value).toBeLessThan(temperatures[0]!.value);
    await go(page, '');
    const listed = await changes(page);
    expect(listed.size).toBe(3);
    expect([...listed.values()].map(([, to]) => to)).toEqual(
      expect.arrayContaining(['1 in', '60000 Btu/h', '13.8 V']),
    );

    await press(page, 'The change was made: take it as found');
    expect(await page.getByRole('button', { name: 'Plan a change' }).count()).toBe(1);
    await go(page, PUMP);
    expect(await headline(page, 'Liquid flow')).toEqual([plannedFlow]);
    expect(await blank(page, BORE).inputValue()).toBe('1 in');
    await go(page, 'sheets/loop-balance/');
    expect(await headline(page, 'Reservoir')).toEqual([temperatures[1]]);
  });

  it('asks before it is dropped, and comes back by undo', async () => {
    const page = await visit();
    const listed = await changes(page);
    const before = await headline(page, 'Reservoir, cruise');
    const dialog = page.getByRole('dialog', { name: 'Drop the candidate?' });

    await press(page, 'Drop the candidate');
    await dialog.getByRole('button', { name: 'Keep it' }).click();
    await dialog.waitFor({ state: 'hidden' });
    await press(page, 'Drop the candidate');
    await dialog.waitFor();
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'hidden' });
    expect(await changes(page)).toEqual(listed);
    // A modal dialog gives the focus back to where it was opened.
    const focused = page.getByRole('button', { name: 'Drop the candidate' });
    expect(await focused.evaluate((b) => b === document.activeElement)).toBe(true);

    await press(page, 'Drop the candidate');
    await dialog.getByRole('button', { name: 'Drop it' }).click();
    await page.getByRole('button', { name: 'Plan a change' }).waitFor();
    expect(await headline(page, 'Reservoir, cruise')).toEqual([before[0]]);
    await press(page, 'Undo');
    await expect.poll(() => headline(page, 'Reservoir, cruise')).toEqual(before);
    expect(await changes(page)).toEqual(listed);
  });

  it('says as found again when its blank is emptied', async () => {
    const page = await visit(PUMP);
    const volts = blank(page, 'Voltage at the pump', 'candidate');
    const with13 = (await headline(page, 'Liquid flow'))[1]!;
    await volts.fill('');
    await expect
      .poll(async () => (await headline(page, 'Liquid flow'))[1]!.text)
      .not.toBe(with13.text);
    await volts.blur();
    expect(await volts.inputValue()).toBe('');
    expect((await found(page, 'Liquid flow')).unit).toBe('gpm');
    await go(page, '');
    expect([...(await changes(page)).keys()].join()).not.toContain('Voltage at the pump');
  });
});
