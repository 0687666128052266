/**
 * What every sheet of a job says, as plain data: results and findings of both sides. The command line,
 * the folder and its revisions take it from here, so that they tell the same. No screen.
 */
import type { ResultRow } from '$lib/job/folder/exportCsv';
import type { Evaluated } from '$lib/job/evaluate';
import type { SideId } from '$lib/job/types';
import { CONTENTS } from '../contents';
import type { Finding, Result } from '../types';

/** One sheet for one side. */
export interface Gathered {
  readonly sheet: string;
  readonly side: SideId;
  readonly results: readonly Result[];
  readonly findings: readonly Finding[];
  /** The sheet could not be worked out at all. */
  readonly failed?: string;
}

/** How many there are to come. */
export const partsOf = ({ candidate }: Pick<Evaluated, 'candidate'>): number =>
  Object.keys(CONTENTS).length * (candidate ? 2 : 1);

/** One after the other: the first of them come while the long ones are still to be worked out. */
export function* gather(all: Evaluated): Generator<Gathered, void> {
  const { asFound, candidate } = all;
  for (const sheet in CONTENTS) {
    for (const side of candidate ? [asFound, candidate] : [asFound]) {
      try {
        const { results, findings } = CONTENTS[sheet]!(side, all);
        yield { sheet, side: side.id, results, findings };
      } catch (thrown) {
        const failed = thrown instanceof Error ? thrown.message : String(thrown);
        yield { sheet, side: side.id, results: [], findings: [], failed };
      }
    }
  }
}

/** The results as rows of a table, in the order of the sheets, the loop as found first. */
export const resultRows = (gathered: readonly Gathered[]): ResultRow[] =>
  gathered.flatMap(({ sheet, side, results }) =>
    results.map(({ id, name, quantity, value, absent, state }) => ({
      sheet,
      id,
      name,
      side,
      quantity,
      value,
      ...(value === null && absent !== undefined ? { absent } : {}),
      ...(state === undefined ? {} : { state }),
    })),
  );
