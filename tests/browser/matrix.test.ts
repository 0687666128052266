/** Many candidates against one another: on paper every column is there, and none is cut. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { demoJob } from '$lib/job/demo';
import { writeJob } from '$lib/job/file/file';
import { openFile } from './files';
import { clipped, onPaper, onScreen, wordsOutside, type Paper } from './paper';
import { choose } from './sheet';
import { go, visits } from './visit';

const visit = visits();
const folder = mkdtempSync(join(tmpdir(), 'matrix-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Side margins of a printed page; src/lib/kit/paper.ts. */
const MARGIN_MM = 13;
const COUNT = 20;

/** The demonstration with so many candidates. */
function crowded() {
  const base = demoJob();
  const aside = Array.from({ length: COUNT - 1 }, (_, i) => ({
    ...base.aside[i % base.aside.length]!,
    name: `Candidate number ${i + 2} with a name as long as people write them`,
  }));
  return {
    ...base,
    header: { ...base.header, title: { ...base.header.title, job: 'Crowd' } },
    aside,
  };
}

describe('candidates against one another on paper', () => {
  it(`holds ${COUNT} candidates and the loop as found, nothing cut, and tells how many were drawn`, async () => {
    const page = await visit();
    await openFile(page, 'crowd.json', writeJob(crowded()));
    await page.getByText('Crowd').first().waitFor();
    for (const paper of ['A4', 'Letter'] as const satisfies readonly Paper[]) {
      await go(page, 'folder/');
      await choose(page, 'Paper', paper);
      await go(page, 'sheets/how-sure/#cautions-16');
      // Without waiting for the other thread, as the browser's own menu prints.
      await onPaper(page, paper, MARGIN_MM);
      expect(await clipped(page), paper).toEqual([]);
      const section = page.getByRole('region', { name: 'Candidates against one another' });
      const tables = section.getByRole('table');
      const columns = (
        await tables.evaluateAll((all) =>
          all.map((table) =>
            [...table.querySelectorAll('thead .number')].map((cell) => Number(cell.textContent)),
          ),
        )
      ).flat();
      expect(columns).toEqual(Array.from({ length: COUNT + 1 }, (_, i) => i + 1));
      for (const table of await tables.all())
        expect(await table.locator('tbody tr').count()).toBe(COUNT + 1);
      // Only beside itself has a loop nothing to say.
      expect(await section.getByText('·', { exact: true }).count()).toBe(COUNT + 1);
      expect(await section.innerText()).toContain('drawn 256 times');
      expect(await page.locator('section.findings').innerText()).toMatch(/256[^]*2,048/);
      await onScreen(page);
      const bytes = await page.pdf({ preferCSSPageSize: true, printBackground: false });
      const file = join(folder, `${paper}.pdf`);
      writeFileSync(file, bytes);
      expect(wordsOutside(file, (MARGIN_MM / 25.4) * 72) ?? [], paper).toEqual([]);
    }
  });
});
