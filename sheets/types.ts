/**
 * What a sheet says, as data: results, numbered lines, findings. Pure functions of one side of the
 * job (as found, or the candidate), so that the page, the print and the command line say the same.
 */
import type { Evaluated, Side } from '$lib/job/evaluate';
import type { Line } from '$lib/solver/formula';
import type { Quantity } from '$lib/solver/quantity';
import type { CautionId } from './cautions';

/** A number inside a sentence; the screen words it in the reader's units. */
export interface Said {
  readonly value: number;
  readonly quantity: Quantity;
  /** Half width of the range that holds 95 of 100, SI; absent: none is told. */
  readonly plusMinus?: number;
}

/** A sentence with numbers in it. */
export type Sentence = readonly (string | Said)[];

/** `info` explains, `good` confirms, `watch` warns, `act` asks for something to be done. */
export type FindingLevel = 'info' | 'good' | 'watch' | 'act';

/** What the numbers mean, in plain words. */
export interface Finding {
  readonly code: string;
  readonly level: FindingLevel;
  readonly sentence: Sentence;
}

/** State of a result against its limit: `near` is inside the last tenth (or as the sheet states). */
export type MarginState = 'ok' | 'near' | 'over';

/** A result worth carrying to the overview, the comparison and the command line. */
export interface Result {
  /** Unique in its sheet, stable: scripts and tests name it. */
  readonly id: string;
  readonly name: string;
  /** TeX of the symbol. */
  readonly symbol: string;
  /** SI; null where it does not exist in this state (and `absent` says why). */
  readonly value: number | null;
  readonly absent?: string;
  /** Stands for the number where that alone would mislead. */
  readonly said?: string;
  readonly quantity: Quantity;
  /** Kind for the difference of two sides; defaults to `quantity`. */
  readonly differenceQuantity?: Quantity;
  /** Half width of the range that holds 95 of 100, SI. */
  readonly plusMinus?: number;
  readonly state?: MarginState;
  /** Which way is better, for the comparison; none: neither. */
  readonly better?: 'lower' | 'higher';
}

export interface SheetContent {
  readonly results: readonly Result[];
  readonly lines: readonly Line[];
  readonly findings: readonly Finding[];
}

/**
 * The pure half of a sheet. A sheet that speaks of every candidate is also given the job as evaluated;
 * without it the sheet says what can be said of the one side.
 */
export type ContentOf = (side: Side, all?: Evaluated) => SheetContent;

/** Card of a sheet: who it is, what it is for. */
export interface SheetAbout {
  readonly slug: string;
  /** Position in the job folder, from 1. */
  readonly number: number;
  readonly title: string;
  /** Two sentences. */
  readonly purpose: string;
  readonly cautions: readonly CautionId[];
  /** It asks nothing of the loop: all it says comes from inputs of its own. */
  readonly ownInputs?: true;
}

/** Build a sentence: say`The tank settles at ${q(T, 'temperature')}.` */
export function say(words: TemplateStringsArray, ...numbers: (Said | string)[]): Sentence {
  return words
    .flatMap((word, i) => (i < numbers.length ? [word, numbers[i]!] : [word]))
    .filter((p) => p !== '');
}

/** A number with its kind, for {@link say}. */
export const q = (value: number, quantity: Quantity, plusMinus?: number): Said => ({
  value,
  quantity,
  ...(plusMinus !== undefined && { plusMinus }),
});
