/** The study of a side, kept by what it depends on. */
import type { Evaluated, Side } from '$lib/job/evaluate';
import { sureness, surenessKey, type Studied, type Sureness } from '$lib/job/sureness';
import { Keep } from '$lib/keep';
import { chance, spread, type Spread } from '$lib/solver/uncertainty/propagate';
import type { Quantity } from '$lib/solver/quantity';
import type { Keeping } from '$lib/workers/background.svelte';

const studies = new Keep<Sureness | null>(6);

export const KEEPING: Keeping<'sure'> = {
  task: 'sure',
  keyOf: surenessKey,
  known: (key) => studies.has(key),
  keep: (key, value) => studies.set(key, value),
};

export const studyOf = (side: Side): Sureness | null =>
  studies.of(surenessKey(side), () => sureness(side));

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

/** Draws that meet the limit of their kind. */
export function meetsLimit(side: Side, study: Sureness, id: Studied): number | null {
  const { limit } = SUBJECT[id];
  if (limit === null) return null;
  const most = side.limits[limit];
  return chance(study.draws[id], (value) => value <= most);
}

/** Chance that the candidate is better than the loop as found: the same draw of all they share. */
export function beats({ asFound, candidate }: Evaluated, id: Studied): number | null {
  if (!candidate) return null;
  const [found, planned] = [studyOf(asFound), studyOf(candidate)];
  if (!found || !planned) return null;
  const { better } = SUBJECT[id];
  const other = found.draws[id];
  return chance(planned.draws[id], (value, i) =>
    better === 'lower' ? value < other[i]! : value > other[i]!,
  );
}
