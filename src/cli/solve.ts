/**
 * `npm run solve -- job.json`: read a job, evaluate it, print every sheet's results as JSON, SI units.
 * A job that cannot be read: one line on stderr, exit code 1.
 */
import { readFileSync } from 'node:fs';
import type { Side } from '../lib/job/evaluate';
import { readJob } from '../lib/job/file';
import { SI_UNIT } from '../lib/solver/quantity';
import type { ContentOf, Result } from '../../sheets/types';

async function main(paths: readonly string[]): Promise<void> {
  const [path, ...more] = paths;
  if (path === undefined || more.length > 0) return fail('usage: npm run solve -- job.json');

  let text: string;
  try {
    text = readFileSync(path, 'utf8');
  } catch {
    return fail(`${path}: there is no such file, or it cannot be read.`);
  }
  const read = readJob(text);
  if (!read.ok) return fail(`${path}: ${read.message}`);

  // Loaded only now, so that a bad file is refused at once.
  const { evaluate } = await import('../lib/job/evaluate');
  const { CONTENTS } = await import('../../sheets/contents');
  const { job, notes } = read;
  const { asFound, candidate } = evaluate(job);
  const report = {
    job: job.header.title,
    ...(job.header.invented === undefined ? {} : { invented: job.header.invented }),
    notes,
    units: 'SI',
    sides: {
      asFound: sideReport(asFound, CONTENTS),
      candidate: candidate && sideReport(candidate, CONTENTS),
    },
  };
  process.stdout.write(`${JSON.stringify(report, null, 2)}\n`);
}

function sideReport(side: Side, contents: Readonly<Record<string, ContentOf>>) {
  return {
    problem: side.problem ?? null,
    refused: side.problems,
    assumed: Object.keys(side.values).filter((path) => side.values[path]!.assumed),
    sheets: Object.fromEntries(
      Object.entries(contents).map(([slug, content]) => [
        slug,
        content(side).results.map(resultReport),
      ]),
    ),
  };
}

const resultReport = ({ id, name, symbol, value, absent, quantity, state }: Result) => ({
  id,
  name,
  symbol,
  value,
  unit: SI_UNIT[quantity],
  ...(value === null && absent !== undefined ? { absent } : {}),
  ...(state === undefined ? {} : { state }),
});

function fail(message: string): void {
  process.stderr.write(`${message.replace(/\s+/g, ' ')}\n`);
  process.exitCode = 1;
}

await main(process.argv.slice(2));
