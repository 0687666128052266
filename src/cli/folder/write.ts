/** The folder of one job written to a directory: what can be refused is refused before anything is built. */
import { accessSync, constants, existsSync, mkdirSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { SHEETS } from '../../../sheets/abouts';
import { chosenSheets } from '../../lib/job/folder/folderEdits';
import type { Job } from '../../lib/job/types';
import { BUILD, build, findChromium, isBuilt, say } from '../install.mjs';
import { fail, readJobFile } from '../jobFile';
import { printFolder } from './print';

export async function writeFolder(path: string, out: string, noBuild: boolean): Promise<void> {
  const read = readJobFile(path);
  if (!read.ok) return fail(read.message);
  const refusal = refusalOf(out);
  if (refusal) return fail(refusal);
  const chromium = findChromium();
  if (!chromium || !existsSync(chromium)) return fail(noChromium(chromium));
  if (noBuild && !existsSync(BUILD))
    return fail('There is no build to print with; run without --no-build.');
  if (!noBuild && !isBuilt()) build();
  for (const note of read.notes) say(note);

  const { job, text } = read;
  const slugs = chosenSheets(
    job,
    SHEETS.map(({ slug }) => slug),
  );
  let count: number;
  try {
    count = await writeData(job, out);
    // The file as it was given: a copy of an older version opens as that one does.
    if (resolve(path) !== resolve(out, 'job.json')) writeFileSync(join(out, 'job.json'), text);
    count += 1;
    for await (const { name, bytes } of printFolder({ chromium, path, slugs })) {
      writeFileSync(join(out, name), bytes);
      say(`${name} ...`);
      count++;
    }
  } catch (thrown) {
    const words = thrown instanceof Error ? thrown.message.split('\n')[0]! : String(thrown);
    return fail(`The folder could not be written: ${words}`);
  }
  process.stdout.write(`${count} files are in ${out}\n`);
}

/** Results and inputs; the work of all sheets is loaded only now. */
async function writeData(job: Job, out: string): Promise<number> {
  const { inputsCsv, resultsCsv } = await import('../../lib/job/folder/exportCsv');
  const { evaluate } = await import('../../lib/job/evaluate');
  const { gather, resultRows } = await import('../../../sheets/gathering/gather');
  const { jobReport, jsonText } = await import('../../../sheets/gathering/report');
  say('Working out every sheet ...');
  const gathered = [...gather(evaluate(job), true)];
  const files = {
    'results.csv': resultsCsv(resultRows(gathered), job.header.units),
    'results.json': jsonText(jobReport(job, gathered)),
    'inputs.csv': inputsCsv(job),
  };
  for (const [name, text] of Object.entries(files)) writeFileSync(join(out, name), text);
  return Object.keys(files).length;
}

/** Makes the directory; why it cannot be written to, or nothing. */
function refusalOf(out: string): string | null {
  try {
    makeFolder(resolve(out));
    if (!statSync(out).isDirectory()) return `${out} is not a directory.`;
    accessSync(out, constants.W_OK);
    return null;
  } catch {
    return `${out} cannot be written to: it is no directory, or it belongs to somebody else.`;
  }
}

/** One level after the other: Node's own way to make them all never ends below a place such as /proc. */
function makeFolder(path: string): void {
  if (existsSync(path)) return;
  makeFolder(dirname(path));
  mkdirSync(path);
}

const noChromium = (named: string | null): string =>
  named
    ? `CHROMIUM names ${named}, which is not there.`
    : 'Printing needs Chromium. Install it (Debian, Ubuntu: sudo apt-get install chromium) or set ' +
      'CHROMIUM to the path of a Chromium or Chrome, then run again.';
