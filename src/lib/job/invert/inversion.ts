/** What the answer to a question for one input is made of. */
import type { Crossing, Stretch, Survey } from '$lib/solver/numerics/survey';
import type { Entry } from './invertInputs';
import type { Question } from './invertQuestion';
import type { Gone, Tried } from './invertResults';
import type { Rival, Rung } from './invertWhy';

export interface Gap {
  readonly from: number;
  readonly to: number;
  readonly gone: Gone;
}

/** A size sold, and what it would give. */
export interface SoldSize extends Entry {
  readonly y: number | null;
  readonly meets: boolean;
}

/** `already`: the loop meets the target, the value is how far the input may go. */
export type Verdict = 'found' | 'already' | 'any' | 'none' | 'flat' | 'unsolved';

/** The question answered; plain data, so that it crosses from the other thread. */
export interface Inversion {
  readonly question: Question;
  readonly present: { readonly x: number; readonly tried: Tried };
  /** Rising in x; y is NaN where there is no result. */
  readonly looks: Survey['looks'];
  readonly gaps: readonly Gap[];
  readonly shape: Survey['shape'];
  /** Past its best the result gets worse again by more than a little. */
  readonly overdone: boolean;
  /** What the result must be; null where nothing could be solved. */
  readonly level: number | null;
  readonly wanted: 'below' | 'above' | 'on';
  /** Best the input can do, and the worst. */
  readonly best: { readonly x: number; readonly y: number } | null;
  readonly worst: { readonly x: number; readonly y: number } | null;
  readonly crossings: readonly Crossing[];
  readonly meets: readonly Stretch[];
  readonly verdict: Verdict;
  /** The value asked for; null where there is none. */
  readonly value: number | null;
  /** Where the value stands: the level crossed, jumped, or the last place with a solution. */
  readonly end: 'crossing' | 'jump' | 'edge' | 'entry' | null;
  readonly sold: readonly SoldSize[];
  /** At the value, or at the best the input can do. */
  readonly at: { readonly x: number; readonly y: number } | null;
  readonly rungs: readonly Rung[];
  readonly rivals: readonly Rival[];
}
