/** Bad input is refused where it stands, in words, and nothing typed or kept is lost. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { openFile, saveFile } from './files';
import { blank, found, headline, isRefused, press, says } from './sheet';
import { drawn, go, visits } from './visit';

const visit = visits();
const PUMP = 'sheets/pump-and-restriction/';
const BORE = 'Reservoir to pump: bore';
const FLOW = 'Liquid flow';
const demo = readFileSync('static/demo-job.json', 'utf8');

describe('a blank', () => {
  it('refuses what is no bore beside it, keeps the text and the numbers of the sheet', async () => {
    const page = await visit(PUMP);
    const before = await headline(page, FLOW);
    const bore = blank(page, BORE, 'as found');
    const refused: [text: string, reason: RegExp][] = [
      ['', /Nothing entered/],
      ['-0.5 in', /outside/],
      ['0', /outside/],
      ['NaN', /not a number/],
      ['Infinity in', /not a number/],
      ['1e30', /too large/],
      ['1e6 in', /outside/],
      ['wide', /not a number/],
      ['-13', /No bore is known for dash size 13/],
    ];
    for (const [text, reason] of refused) {
      await bore.fill(text);
      await expect.poll(() => says(bore), { message: text }).toMatch(reason);
      expect(await isRefused(bore), text).toBe(true);
      await bore.blur();
      expect(await bore.inputValue()).toBe(text);
      expect(await headline(page, FLOW), text).toEqual(before);
      const shown = (await page.getByRole('main').innerText()).replaceAll(`“${text}”`, '');
      expect(/\bNaN\b|Infinity|undefined/.exec(shown)?.[0], text).toBeUndefined();
      await bore.fill('0.50 in');
      await expect.poll(() => isRefused(bore), { message: text }).toBe(false);
    }
  });
});

describe('a table', () => {
  const table = (page: Page) => page.getByRole('table', { name: /^Head of the pump/ }).first();

  /** What is said to the table as a whole. */
  const complaint = (page: Page) => says(table(page));

  it('says so when a pump curve rises, and keeps its rows', async () => {
    const page = await visit(PUMP);
    const before = await headline(page, FLOW);
    const cell = table(page).getByRole('textbox', { name: 'Head, row 2' });
    await cell.fill('19 ft');
    await expect.poll(() => complaint(page)).toMatch(/fall|rise/i);
    await cell.blur();
    expect(await cell.inputValue()).toBe('19 ft');
    expect(await headline(page, FLOW)).toEqual(before);
    await cell.fill('13.6 ft');
    await expect.poll(() => complaint(page)).toBe('');
  });

  it('keeps at least two points of a pump curve, and says so when a file brings one', async () => {
    const page = await visit(PUMP);
    const remove = table(page).getByRole('button', { name: /^Remove row/ });
    for (let left = await remove.count(); left > 2; left--) {
      await remove.last().click();
      await expect.poll(() => remove.count()).toBe(left - 1);
    }
    expect(await remove.first().isDisabled()).toBe(true);

    const job = JSON.parse(demo);
    job.asFound['pump.curve'].is = [['0 gpm', '15 ft']];
    await go(page, '');
    await openFile(page, 'one-point.json', JSON.stringify(job));
    await go(page, PUMP);
    expect(await complaint(page)).toMatch(/2 rows or more/);
    expect((await found(page, FLOW)).value).toBeGreaterThan(0);
  });
});

describe('a contradiction', () => {
  it('of fans larger than the core is refused at a fan input, and the sheet lives', async () => {
    const page = await visit('sheets/fans-and-face-airflow/');
    const diameter = blank(page, 'Diameter of the swept ring', 'as found');
    await diameter.fill('30 in');
    await expect.poll(() => isRefused(diameter)).toBe(true);
    expect(await says(diameter)).toMatch(/face|core|exchanger/i);
    expect(await diameter.inputValue()).toBe('30 in');
    expect(await page.getByRole('term').count()).toBeGreaterThan(3);
  });
});

describe('a file', () => {
  it('that is no job is refused in words and changes nothing', async () => {
    const newer = JSON.stringify({ ...JSON.parse(demo), soakline: 999 });
    const files: [name: string, text: string, reason: RegExp][] = [
      ['cut-short.json', demo.slice(0, demo.length / 2), /breaks off before its end/],
      ['newer.json', newer, /newer version/],
      ['not-json.json', 'flow,head\n1,2\n', /not JSON/],
      ['other.json', '{"hello": 1}', /not a job file/],
      ['empty.json', '', /empty/],
    ];
    const page = await visit();
    const before = await saveFile(page);
    const said = page.getByRole('status').or(page.getByRole('alert'));
    for (const [name, text, reason] of files) {
      await openFile(page, name, text);
      await said.getByText(reason).first().waitFor();
      await said.getByText(name).first().waitFor();
      expect((await saveFile(page)).text, name).toBe(before.text);
    }
    const kept = page.getByRole('heading', { name: 'Kept in this browser' });
    expect(await kept.locator('xpath=following-sibling::ul').getByRole('listitem').count()).toBe(1);
    await page.reload();
    await drawn(page);
    expect((await saveFile(page)).text).toBe(before.text);
    await press(page, 'Duplicate'); // the desk still works
    await page.getByRole('heading', { level: 1, name: /copy/ }).waitFor();
  });
});
