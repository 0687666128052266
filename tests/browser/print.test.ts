/** The sheets on paper: size, title block, lines, sources, signatures; nothing clipped, all vectors. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import type { Page } from 'playwright-core';
import { SHEETS } from '$sheets/abouts';
import { CAUTIONS } from '$sheets/cautions';
import {
  PAPERS,
  clipped,
  onPaper,
  onScreen,
  paleTexts,
  rastersOf,
  readPdf,
  textOf,
  wordsOutside,
  type Paper,
} from './paper';
import { blank, choose, list } from './sheet';
import { go, visits } from './visit';

const visit = visits();
const folder = mkdtempSync(join(tmpdir(), 'sheets-on-paper-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Side margins of a printed page; src/lib/kit/paper.ts. */
const MARGIN_MM = 13;
const TITLE = {
  Job: 'Print trial',
  Vehicle: 'Van, invented',
  'Prepared by': 'A. Tester',
  'Checked by': 'B. Second',
  Date: '2031-04-05',
};

/** A job with a full title block, on that paper, at the folder. */
async function titled(page: Page, paper: Paper): Promise<void> {
  for (const [label, text] of Object.entries(TITLE)) await blank(page, label).fill(text);
  await go(page, 'folder/');
  await choose(page, 'Paper', paper);
}

async function printed(page: Page, name: string) {
  const bytes = await page.pdf({ preferCSSPageSize: true, printBackground: false });
  const file = join(folder, `${name}.pdf`);
  writeFileSync(file, bytes);
  return { ...readPdf(bytes), file };
}

/** Of the demonstration, which this job is but for its title. */
const INVENTED = 'invented for demonstration';

/** Words that every sheet must carry. */
const wordsOf = (sheet: (typeof SHEETS)[number]): string[] => [
  ...Object.values(TITLE),
  sheet.title,
  `${sheet.number} of ${SHEETS.length}`,
  ...sheet.cautions.map((id) => CAUTIONS[id].title),
  INVENTED,
  'Source:',
  'Done by',
  'Checked by',
];

const flat = (text: string) => text.replace(/[\s\u00a0]+/g, ' ');

/** What must hold of a printed page, whatever tools the machine has. */
async function expectOnPaper(page: Page, name: string, paper: Paper) {
  const pdf = await printed(page, name);
  expect.soft(pdf.sizes.length, name).toBeGreaterThan(0);
  for (const [width, height] of pdf.sizes) {
    expect.soft(Math.abs(width - PAPERS[paper].width), name).toBeLessThan(1);
    expect.soft(Math.abs(height - PAPERS[paper].height), name).toBeLessThan(1);
  }
  expect.soft(pdf.images, name).toBe(0);
  // Poppler reads the file itself, where it is installed.
  expect.soft(rastersOf(pdf.file) ?? [], name).toEqual([]);
  expect.soft(wordsOutside(pdf.file, (MARGIN_MM / 25.4) * 72) ?? [], name).toEqual([]);

  await onPaper(page, paper, MARGIN_MM);
  expect.soft(await clipped(page), name).toEqual([]);
  const laidOut = flat(await page.locator('body').innerText());
  const figures = await page.locator('figure').evaluateAll((all) =>
    all.map((figure) => ({
      drawn: figure.querySelector('svg[role=img], table') !== null,
      pixels: figure.querySelector('img, canvas') !== null,
    })),
  );
  expect
    .soft(
      figures.every(({ drawn, pixels }) => drawn && !pixels),
      name,
    )
    .toBe(true);
  await onScreen(page);
  return { text: textOf(pdf.file) ?? laidOut, pages: pdf.sizes.length };
}

/** Ten sheets in one test: more than the usual time where the machine is busy. */
const LONG = { timeout: 600_000 };

describe('on paper', LONG, () => {
  it('every sheet prints whole, with title block, lines, sources, cautions and signatures', async () => {
    const page = await visit();
    await titled(page, 'A4'); // the narrower of the two
    for (const sheet of SHEETS) {
      await go(page, `sheets/${sheet.slug}/`);
      const heads = page.getByRole('list', { name: 'Lines' }).getByRole('heading', { level: 3 });
      // A sheet that searches for a while says so first and has its lines after.
      await heads.first().waitFor({ timeout: 120_000 });
      const busy = page.locator('main progress, main [data-busy]');
      await expect.poll(() => busy.count(), { timeout: 120_000, message: sheet.slug }).toBe(0);
      const statements = await heads.allInnerTexts();
      expect(statements.length, sheet.slug).toBeGreaterThan(4);
      const { text } = await expectOnPaper(page, sheet.slug, 'A4');
      for (const words of [...wordsOf(sheet), ...statements])
        expect.soft(text.includes(flat(words)), `${sheet.slug}: ${words}`).toBe(true);
    }
  });

  it.each(['Letter', 'A4'] as const)(
    'the folder prints every sheet in order on %s',
    async (paper) => {
      const page = await visit();
      await titled(page, paper);
      const { text, pages } = await expectOnPaper(page, `folder-${paper}`, paper);
      expect(pages).toBeGreaterThan(SHEETS.length);
      const places = SHEETS.map((sheet) => {
        for (const words of wordsOf(sheet))
          expect.soft(text.includes(flat(words)), `${sheet.slug}: ${words}`).toBe(true);
        return text.indexOf(`${sheet.number} of ${SHEETS.length}`);
      });
      expect(places).toEqual(places.toSorted((a, b) => a - b));
    },
  );
});

describe('night paper', () => {
  it('is for the screen: print is dark ink on white, the theme chosen or the device dark', async () => {
    const page = await visit('sheets/loop-balance/', { colorScheme: 'dark' });
    const ground = () => page.evaluate(() => getComputedStyle(document.body).backgroundColor);
    const night = await ground();
    await list(page, 'Paper on the screen').selectOption({ label: 'Night' });
    expect(await ground()).toBe(night);
    await onPaper(page, 'Letter', MARGIN_MM);
    expect(['rgba(0, 0, 0, 0)', 'rgb(255, 255, 255)']).toContain(await ground());
    expect(await paleTexts(page)).toEqual([]);
    await onScreen(page);
    expect(await ground()).toBe(night);
    // On the screen the ink is light: the check above can fail.
    expect(await paleTexts(page)).not.toEqual([]);
  });
});
