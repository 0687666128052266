/** Every candidate beside every other: does it meet the limit, does it beat the others. */
import type { Side } from '$lib/job/evaluate';
import type { Studied } from '$lib/job/sure/sureness';
import {
  beats,
  differenceBetween,
  meetsLimit,
  plusMinusOf,
  spreadOf,
  studyOf,
  SUBJECT,
} from './study';

/** One state of the loop with its name. */
export interface Named {
  readonly name: string;
  readonly side: Side;
}

/** One beside another, drawn alike. */
export interface Against {
  /** Chance of being better. */
  readonly chance: number;
  /** Middle of the differences, SI. */
  readonly by: number;
}

export interface CandidateRow {
  readonly name: string;
  /** SI; null where no draw gave an answer. */
  readonly middle: number | null;
  readonly plusMinus: number;
  /** Chance of meeting the limit; null where the result has none. */
  readonly meets: number | null;
  /** Of each of the others, in their order; null on itself. */
  readonly against: readonly (Against | null)[];
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
      against: all.map((other): Against | null => {
        if (other.side === side) return null;
        const its = studyOf(other.side);
        const chance = beats(study, its, id);
        const by = differenceBetween(study, its, id);
        return chance === null || by === null ? null : { chance, by };
      }),
    };
  });
}

/** In words: which of two is taken as better. */
export const betterWord = (id: Studied): string =>
  SUBJECT[id].better === 'lower' ? 'cooler' : 'more';
