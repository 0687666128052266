/** What an explanation of a symbol is, and words that many of them share. */
import type { SourceStanding } from '../sources';

/** A range met in practice, SI, and how sure we are of it. */
export interface Usual {
  readonly from: number;
  readonly to: number;
  readonly standing: SourceStanding;
}

export interface Explanation {
  /** What it is, more than its name says, one sentence. */
  readonly means: string;
  /** Its usual range; in words where none can be given. */
  readonly usual: Usual | string;
  /** Where it is measured, read or worked out. */
  readonly where: string;
}

/** Names that share an explanation (a pattern where a name counts up), then meaning, range, place. */
export type Row = readonly [
  names: readonly (string | RegExp)[],
  means: string,
  usual: readonly [from: number, to: number, standing?: SourceStanding] | string,
  where: string,
];

/** The rows of one kind of quantity. */
export type Shelf = readonly Row[];

export const CONSTANT = 'A fixed value: nothing to look for.';
export const ANY = 'No range is usual: it follows from the job.';
export const LINE = 'Not measured: worked out on the line that gives it.';

/** Scales of the trade in SI, for ranges. */
export const celsius = (t: number): number => t + 273.15;
export const INCH = 0.0254;
export const FOOT = 0.3048;
export const GPM = 6.30902e-5;
export const PSI = 6894.757;
export const INCH_OF_WATER = 249.08891;
export const MPH = 0.44704;
export const POUND = 0.45359237;
export const GALLON = 3.785411784e-3;
