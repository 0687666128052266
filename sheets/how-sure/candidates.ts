/** Every candidate beside every other: does it meet the limit, does it beat the others. */
import type { Side } from '$lib/job/evaluate';
import type { Studied } from '$lib/job/sure/sureness';
import {
  beats,
  differenceBetween,
  meetsLimit,
  isDrawnInFull,
  plusMinusOf,
  quickStudyOf,
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

/** Studies that can be paired: the full ones where every loop has one, else of all the small one. */
const pairing = (all: readonly Named[]) =>
  all.every(({ side }) => isDrawnInFull(side)) ? studyOf : quickStudyOf;

/** Draws of each loop behind the table; null where nothing has a ±. */
export const drawCount = (all: readonly Named[], id: Studied): number | null => {
  const drawsOf = pairing(all);
  return all.map(({ side }) => drawsOf(side)?.draws[id].length).find(Boolean) ?? null;
};

/** Rows of the table, in the order given. */
export function candidateRows(all: readonly Named[], id: Studied): CandidateRow[] {
  const drawsOf = pairing(all);
  return all.map(({ name, side }) => {
    const study = drawsOf(side);
    const s = study && spreadOf(study, id);
    return {
      name,
      middle: s?.median ?? null,
      plusMinus: s ? plusMinusOf(s) : 0,
      meets: study && meetsLimit(side, study, id),
      against: all.map((other): Against | null => {
        if (other.side === side) return null;
        const its = drawsOf(other.side);
        const chance = beats(study, its, id);
        const by = differenceBetween(study, its, id);
        return chance === null || by === null ? null : { chance, by };
      }),
    };
  });
}

/** Columns that stand beside the rows' names, values and chances on the narrower paper upright. */
const ON_PAPER = 8;

/** Columns of the table in blocks of about one width that fit paper, as [first, past the last]. */
export function columnBlocks(count: number): (readonly [from: number, to: number])[] {
  const blocks = Math.max(1, Math.ceil(count / ON_PAPER));
  const edge = (block: number) => Math.round((block * count) / blocks);
  return Array.from({ length: blocks }, (_, block) => [edge(block), edge(block + 1)] as const);
}

/** In words: which of two is taken as better. */
export const betterWord = (id: Studied): string =>
  SUBJECT[id].better === 'lower' ? 'cooler' : 'more';
