/** The studies of the sides, kept by what they depend on; the thread that makes them puts them here. */
import type { Side } from '$lib/job/evaluate';
import {
  AT_ONCE,
  doubts,
  FULL,
  finished,
  sureness,
  surenessKey,
  type Doubts,
  type Studied,
  type Sureness,
} from '$lib/job/sure/sureness';
import { Keep } from '$lib/keep';
import type { DutyId } from '$lib/solver/loop/types';
import { chance, spread, type Spread } from '$lib/solver/uncertainty/propagate';
import type { Quantity } from '$lib/solver/quantity';

/** Some more than the candidates a job can hold. */
const SIDES = 48;

export const studies = new Keep<Sureness | null>(SIDES);
export const doubtStudies = new Keep<Doubts | null>(SIDES);
/** Made where they are shown, with fewer draws: on paper, in tests, on the command line. */
const quickStudies = new Keep<Sureness | null>(SIDES);
const quickDoubts = new Keep<Doubts | null>(SIDES);

export const doubtKey = (key: string, duty: DutyId): string => `${duty} ${key}`;

/** The study of a side: the full one where it is there, else a small one made at once. */
export function studyOf(side: Side): Sureness | null {
  const key = surenessKey(side);
  return studies.has(key) ? studies.of(key, () => null) : quickStudyOf(side);
}

/** Whether the full study is there. */
export const isDrawnInFull = (side: Side): boolean => studies.has(surenessKey(side));

/** The small one, whatever is there: studies can be paired only with their like. */
export const quickStudyOf = (side: Side): Sureness | null =>
  quickStudies.of(surenessKey(side), () => finished(sureness(side, AT_ONCE)));

/** What makes the result of a duty unsure, likewise. */
export function doubtsOf(side: Side, duty: DutyId): Doubts | null {
  const key = doubtKey(surenessKey(side), duty);
  return doubtStudies.has(key)
    ? doubtStudies.of(key, () => null)
    : quickDoubts.of(key, () => finished(doubts(side, duty, AT_ONCE)));
}

/** The full studies of a side, made here and kept: for who can wait. */
export function studyInFull(side: Side, duty: DutyId): void {
  const key = surenessKey(side);
  studies.of(key, () => finished(sureness(side, FULL)));
  doubtStudies.of(doubtKey(key, duty), () => finished(doubts(side, duty, FULL)));
}

export interface Subject {
  readonly name: string;
  readonly symbol: string;
  readonly quantity: Quantity;
  readonly difference: Quantity;
  /** Which limit of the job it has. */
  readonly limit: 'charge' | 'reservoir' | null;
  readonly better: 'lower' | 'higher';
}

const temperature = { quantity: 'temperature', difference: 'temperatureDifference' } as const;

export const SUBJECT: Readonly<Record<Studied, Subject>> = {
  'charge-cruise': {
    ...temperature,
    name: 'Charge air to the engine, cruise',
    symbol: 'T_3',
    limit: 'charge',
    better: 'lower',
  },
  'reservoir-cruise': {
    ...temperature,
    name: 'Reservoir, cruise',
    symbol: 'T_t',
    limit: 'reservoir',
    better: 'lower',
  },
  'reservoir-traffic': {
    ...temperature,
    name: 'Reservoir, traffic',
    symbol: 'T_t',
    limit: 'reservoir',
    better: 'lower',
  },
  'charge-pull': {
    ...temperature,
    name: 'Charge air to the engine, a pull held',
    symbol: 'T_3',
    limit: 'charge',
    better: 'lower',
  },
  'flow-cruise': {
    name: 'Liquid flow, cruise',
    symbol: '\\dot V',
    quantity: 'volumeFlow',
    difference: 'volumeFlow',
    limit: null,
    better: 'higher',
  },
};

export const spreadOf = (study: Sureness, id: Studied): Spread | null => spread(study.draws[id]);

/** Half the width of the range that holds 95 of 100 draws. */
export const plusMinusOf = ({ low, high }: Spread): number => (high - low) / 2;

/** Draws that meet the limit of their kind. */
export function meetsLimit(side: Side, study: Sureness, id: Studied): number | null {
  const { limit } = SUBJECT[id];
  if (limit === null) return null;
  const most = side.limits[limit];
  return chance(study.draws[id], (value) => value <= most);
}

/** Closer than this two temperatures are the same, K: a draw is settled ten times as sharply. */
const EVEN = 1e-3;

/** Chance that one side is better than another: the same draw of all that they share. */
export function beats(one: Sureness | null, other: Sureness | null, id: Studied): number | null {
  // Two studies of different lengths are one full and one made at once: no pairs.
  if (!one || !other || one.draws[id].length !== other.draws[id].length) return null;
  const than = other.draws[id];
  const pairs = one.draws[id].map((value, i) => (Number.isNaN(than[i]!) ? NaN : value));
  const { better, quantity } = SUBJECT[id];
  const least = quantity === 'temperature' ? EVEN : 0;
  return chance(pairs, (value, i) =>
    better === 'lower' ? value < than[i]! - least : value > than[i]! + least,
  );
}

/** Middle of the differences, draw by draw; null without pairs. */
export function differenceBetween(
  one: Sureness | null,
  other: Sureness | null,
  id: Studied,
): number | null {
  if (!one || !other || one.draws[id].length !== other.draws[id].length) return null;
  return spread(one.draws[id].map((value, i) => value - other.draws[id][i]!))?.median ?? null;
}
