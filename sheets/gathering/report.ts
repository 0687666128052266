/** The results of a job as one object to be written as JSON, SI units: what `npm run solve` prints. */
import { evaluate, type Side } from '$lib/job/evaluate';
import type { Job } from '$lib/job/types';
import { SI_UNIT } from '$lib/solver/quantity';
import type { Result } from '../types';
import type { Gathered, GatheredAside } from './gather';
import { ownReport } from './own';

/**
 * @param notes - what the reader of the file was told
 * @param aside - the candidates put aside, where they are wanted
 */
export function jobReport(
  job: Job,
  gathered: readonly Gathered[],
  notes: readonly string[] = [],
  aside?: readonly GatheredAside[],
) {
  const { asFound, candidate } = evaluate(job);
  return {
    job: job.header.title,
    ...(job.header.invented === undefined ? {} : { invented: job.header.invented }),
    notes,
    units: 'SI',
    sides: {
      asFound: sideReport(job, asFound, gathered),
      candidate: candidate && {
        name: job.candidate!.name,
        ...sideReport(job, candidate, gathered),
      },
      ...(aside && {
        aside: aside.map(({ name, all, parts }) => ({
          name,
          ...sideReport(all.job, all.candidate!, parts),
        })),
      }),
    },
  };
}

export const jsonText = (report: object): string => `${JSON.stringify(report, null, 2)}\n`;

function sideReport(job: Job, side: Side, gathered: readonly Gathered[]) {
  const own = gathered.filter((part) => part.side === side.id);
  return {
    problem: side.problem ?? null,
    refused: side.problems,
    assumed: Object.keys(side.values).filter((path) => side.values[path]!.assumed),
    sheets: Object.fromEntries(own.map(({ sheet, results }) => [sheet, results.map(resultReport)])),
    own: ownReport(job, side),
    ...failures(own),
  };
}

/** Sheets that could not be worked out, and why; nothing where there are none. */
function failures(own: readonly Gathered[]) {
  const failed = own.flatMap(({ sheet, failed: why }) => (why === undefined ? [] : [[sheet, why]]));
  return failed.length > 0 ? { failed: Object.fromEntries(failed) as Record<string, string> } : {};
}

const resultReport = ({ id, name, symbol, value, absent, quantity, plusMinus, state }: Result) => ({
  id,
  name,
  symbol,
  value,
  unit: SI_UNIT[quantity],
  ...(plusMinus === undefined ? {} : { plusMinus }),
  ...(value === null && absent !== undefined ? { absent } : {}),
  ...(state === undefined ? {} : { state }),
});
