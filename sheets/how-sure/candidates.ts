/** Every candidate beside every other: does it meet the limit, does it beat the others. */
import type { Side } from '$lib/job/evaluate';
import type { Studied } from '$lib/job/sureness';
import { beats, meetsLimit, plusMinusOf, spreadOf, studyOf, SUBJECT } from './study';

/** One state of the loop with its name. */
export interface Named {
  readonly name: string;
  readonly side: Side;
}

export interface CandidateRow {
  readonly name: string;
  /** SI; null where no draw gave an answer. */
  readonly middle: number | null;
  readonly plusMinus: number;
  /** Chance of meeting the limit; null where the result has none. */
  readonly meets: number | null;
  /** Chance of beating each of the others, in their order; null on itself. */
  readonly beats: readonly (number | null)[];
}

/** Rows of the table, in the order given. */
export function candidateRows(all: readonly Named[], id: Studied): CandidateRow[] {
  return all.map(({ name, side }) => {
    const study = studyOf(side);
    const s = study && spreadOf(study, id);
    return {
      name,
      middle: s?.median ?? null,
      plusMinus: s ? plusMinusOf(s) : 0,
      meets: study && meetsLimit(side, study, id),
      beats: all.map((other) =>
        other.side === side ? null : beats(study, studyOf(other.side), id),
      ),
    };
  });
}

/** In words: which of two is taken as better. */
export const betterWord = (id: Studied): string =>
  SUBJECT[id].better === 'lower' ? 'cooler' : 'more';
