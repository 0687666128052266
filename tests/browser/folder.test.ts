/** The job folder on the page, and `npm run folder` with a real browser. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Papa from 'papaparse';
import { afterAll, describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { demoJob } from '$lib/job/demo';
import { writeJob } from '$lib/job/file/file';
import { BUILD } from '../../src/cli/install.mjs';
import { PAPERS, readPdf, textOf } from './paper';
import { blank, press } from './sheet';
import { go, visits } from './visit';

const visit = visits();

const gathered = (page: Page) => page.locator('[data-gathered="whole"]').waitFor();
const chosen = (page: Page) => page.locator('main > .sheet h1').allInnerTexts();
const box = (page: Page, title: string) => page.getByRole('checkbox', { name: title });

async function saved(page: Page, button: string): Promise<string> {
  const coming = page.waitForEvent('download');
  await press(page, button);
  return readFile(await (await coming).path(), 'utf8');
}

/** A folder of two light sheets: printing a hundred pages takes minutes. */
async function twoSheets(page: Page): Promise<void> {
  await press(page, 'None');
  await box(page, 'Loop balance').check();
  await box(page, 'Pump feed').check();
}

describe('the folder', () => {
  it('holds the chosen sheets in the chosen order, and their title blocks count by it', async () => {
    const page = await visit('folder/');
    await twoSheets(page);
    expect(await chosen(page)).toEqual(['Loop balance', 'Pump feed']);
    const up = page.getByRole('button', { name: 'Move Pump feed forward' });
    await up.focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => chosen(page)).toEqual(['Pump feed', 'Loop balance']);
    // At the top there is no further up: the focus stays on the row.
    const focused = () => page.evaluate(() => document.activeElement?.getAttribute('aria-label'));
    await expect.poll(focused).toBe('Move Pump feed back');
    await page.reload();
    await expect.poll(() => chosen(page)).toEqual(['Pump feed', 'Loop balance']);
    const placeOf = (title: string) =>
      page.locator('main > .sheet', { hasText: title }).locator('header dl').first().innerText();
    expect(await placeOf('Pump feed')).toMatch(/1 of 2/);
    await go(page, 'sheets/exchangers/');
    expect(await page.locator('.sheet header dl').innerText()).toContain('not in folder');
  });

  it('keeps a revision and tells what changed since, in the units of the reader', async () => {
    const page = await visit('folder/');
    await twoSheets(page);
    await page.getByLabel('What changed, and why').fill('As found');
    await press(page, 'Keep a revision');
    await page.getByText('Revision A is kept').waitFor();
    await page.getByText('No input changed.').waitFor();
    await go(page, 'sheets/loop-balance/');
    await blank(page, 'Ambient air', 'as found').fill('90 °F');
    await page.keyboard.press('Tab');
    await go(page, 'folder/');
    await gathered(page);
    const inputs = page.getByRole('table', { name: 'Inputs changed, as found' });
    expect(await inputs.innerText()).toContain('90 °F');
    const moved = page.getByRole('table', { name: 'Results moved, as found' });
    expect(await moved.innerText()).toMatch(/Reservoir, cruise[^]*Δ?°F/);
    await page.locator('.cover').getByRole('radio', { name: 'SI', exact: true }).check();
    await gathered(page);
    await expect.poll(() => moved.innerText()).toMatch(/Reservoir, cruise[^]*°C/);
  });

  it('hands out results, inputs and the job as files', async () => {
    const page = await visit('folder/');
    await gathered(page);
    const csv = await saved(page, 'Results as CSV');
    const rows = Papa.parse<Record<string, string>>(csv, { header: true }).data;
    const report = JSON.parse(await saved(page, 'Results as JSON'));
    const settled = rows.find(
      ({ sheet, id, side }) =>
        sheet === 'loop-balance' && id === 'cruise.reservoir' && side === 'asFound',
    )!;
    const same = report.sides.asFound.sheets['loop-balance'].find(
      ({ id }: { id: string }) => id === 'cruise.reservoir',
    );
    expect(Number(settled['SI value'])).toBe(same.value);
    expect(await saved(page, 'Inputs as CSV')).toContain('pump.volts');
    expect(JSON.parse(await saved(page, 'Save the job file')).soakline).toBeTypeOf('number');
  });
});

/** A number of the exports as paper shows it: true minus, power of ten. */
const printedForm = (value: string): string => {
  const [digits, power] = value.replaceAll('-', '−').split('e');
  const raised = (sign: string) => (sign === '−' ? '⁻' : '⁰¹²³⁴⁵⁶⁷⁸⁹'[Number(sign)]!);
  return power === undefined ? digits! : `${digits}×10${[...power].map(raised).join('')}`;
};

describe('npm run folder', { timeout: 900_000 }, () => {
  const place = mkdtempSync(join(tmpdir(), 'folder-'));
  afterAll(() => rmSync(place, { recursive: true, force: true }));

  it('prints the folder and its data as the sheets show them', async () => {
    const base = demoJob();
    const job = {
      ...base,
      header: { ...base.header, paper: 'A4' as const },
      folder: {
        sheets: ['pump-feed', 'loop-balance', 'warm-up-and-recovery'],
        findings: 'Hot.',
        decisions: 'Fans first.',
      },
    };
    const path = join(place, 'given.json');
    writeFileSync(path, writeJob(job));
    const out = join(place, 'out');
    const built = existsSync(BUILD) ? ['--no-build'] : [];
    const ran = spawnSync(process.execPath, ['src/cli/folder.mjs', path, '--out', out, ...built], {
      encoding: 'utf8',
      timeout: 800_000,
    });
    expect(ran.stderr).not.toMatch(/could not/);
    expect(ran.status).toBe(0);
    expect(readdirSync(out).toSorted()).toEqual([
      '01-pump-feed.pdf',
      '02-loop-balance.pdf',
      '03-warm-up-and-recovery.pdf',
      'folder.pdf',
      'inputs.csv',
      'job.json',
      'results.csv',
      'results.json',
    ]);
    expect(readFileSync(join(out, 'job.json'), 'utf8')).toBe(writeJob(job));

    const pages = (name: string) => readPdf(readFileSync(join(out, name))).sizes;
    const names = [
      'folder.pdf',
      '01-pump-feed.pdf',
      '02-loop-balance.pdf',
      '03-warm-up-and-recovery.pdf',
    ];
    const [cover, ...sheets] = names.map(pages);
    for (const [width, height] of [cover!, ...sheets].flat()) {
      expect(Math.abs(width - PAPERS.A4.width)).toBeLessThan(1);
      expect(Math.abs(height - PAPERS.A4.height)).toBeLessThan(1);
    }
    const inSheets = sheets.reduce((sum, sheet) => sum + sheet.length, 0);
    expect(sheets.every((sheet) => sheet.length > 0)).toBe(true);
    expect(cover!.length).toBeGreaterThan(inSheets);

    const rows = Papa.parse<Record<string, string>>(
      readFileSync(join(out, 'results.csv'), 'utf8'),
      { header: true },
    ).data;
    const settled = rows.find(
      ({ sheet, id, side }) =>
        sheet === 'loop-balance' && id === 'cruise.reservoir' && side === 'asFound',
    )!;
    // The words of a PDF are read where Poppler is installed; the page itself says the same anywhere.
    const page = await visit('sheets/loop-balance/');
    const shown = await page.locator('main').innerText();
    expect(shown).toContain(settled.value);
    const text = textOf(join(out, 'folder.pdf'));
    if (text !== null) {
      for (const words of [job.header.title.job, 'Fans first.', '1 of 2', settled.value!])
        expect.soft(text.includes(words), words).toBe(true);
      // Every number of the exports can be read on the paper of its sheet; JSON has the same in SI.
      const report = JSON.parse(readFileSync(join(out, 'results.json'), 'utf8'));
      const read = text.replace(/(\d),(?=\d{3})/g, '$1');
      const numbers = rows.filter(
        ({ sheet, side, value }) =>
          side === 'asFound' && value && job.folder.sheets.includes(sheet!),
      );
      expect(numbers.length).toBeGreaterThan(30);
      for (const row of numbers) {
        const result = report.sides.asFound.sheets[row.sheet!].find(
          ({ id }: { id: string }) => id === row.id,
        );
        expect.soft(result.value, `${row.sheet} ${row.id}`).toBe(Number(row['SI value']));
        expect.soft(read, `${row.sheet} ${row.id}`).toContain(printedForm(row.value!));
      }
    }
  });
});
