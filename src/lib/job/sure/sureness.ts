/**
 * How sure the settled loop is, from the ± of what was entered. One side at a time; all sides draw the
 * same points, so what they share moves together and their differences stay sharp.
 */
import { propagate } from '$lib/solver/uncertainty/propagate';
import { varianceShares } from '$lib/solver/uncertainty/shares';
import type { DutyId } from '$lib/solver/loop/types';
import type { Glance } from '$lib/solver/loop/glance';
import { evaluate, evaluateAside, type Side } from '../evaluate';
import type { Job } from '../types';
import { uncertainOf } from './surenessInputs';
import { loopModel } from './surenessModel';

/** How much work a study is. */
export interface StudySize {
  /** Loops drawn. */
  readonly draws: number;
  /** For the shares: base points, and repetitions whose scatter is the error told. */
  readonly samples: number;
  readonly repetitions: number;
}
/** On another thread. */
export const FULL: StudySize = { draws: 2048, samples: 256, repetitions: 4 };
/** Where nothing can wait, as on paper. */
export const AT_ONCE: StudySize = { draws: 256, samples: 16, repetitions: 2 };

/** All sides and all studies draw the same points. */
export const SEED = 20;
/** Draws between two chances to stop. */
const BREATH = 16;

/** The results studied, in this order. */
export const STUDIED = [
  'charge-cruise',
  'reservoir-cruise',
  'reservoir-traffic',
  'charge-pull',
  'flow-cruise',
] as const;
export type Studied = (typeof STUDIED)[number];

/** The result whose doubts are looked into, by the duty the sheets show. */
export const DOUBTED: Readonly<Record<DutyId, Studied>> = {
  traffic: 'reservoir-traffic',
  cruise: 'charge-cruise',
  pull: 'charge-pull',
};

/** Plain data: it crosses from the other thread. */
export interface Sureness {
  /** Inputs with a ±. */
  readonly inputs: readonly string[];
  /** Draws of each result, SI; NaN where a draw made no loop. */
  readonly draws: Readonly<Record<Studied, Float64Array>>;
  readonly failed: number;
}

/** Shares of one result's variance that come from one input. */
export interface Doubt {
  readonly path: string;
  /** From it alone. */
  readonly first: number;
  readonly firstError: number;
  /** What it does together with others included. */
  readonly total: number;
  readonly totalError: number;
}

export interface Doubts {
  readonly of: Studied;
  /** Greatest total share first; null where a draw made no loop, or where nothing varies. */
  readonly shares: readonly Doubt[] | null;
  /** Loops settled for it. */
  readonly runs: number;
}

/** Every side of a job: as found, the candidate in hand, those put aside. */
export function sidesOf(job: Job): Side[] {
  const { asFound, candidate } = evaluate(job);
  return [asFound, ...(candidate ? [candidate] : []), ...evaluateAside(job)];
}

/** What the studies of a side depend on, as text. */
export const surenessKey = (side: Side): string =>
  JSON.stringify([side.loop, uncertainOf(side.values)]);

/**
 * Draw one side's loop. A generator that yields the share done, so that whoever drives it can tell
 * progress and stop. Null where the side cannot be solved as it stands, or where nothing has a ±.
 */
export function* sureness(side: Side, { draws }: StudySize): Generator<number, Sureness | null> {
  const inputs = uncertainOf(side.values);
  if (!side.prepared.ok || inputs.length === 0) return null;
  const all = yield* propagate(
    {
      inputs: inputs.map(({ distribution }) => distribution),
      outputs: STUDIED.length,
      samples: draws,
      seed: SEED,
      axes: inputs.map(({ axis }) => axis),
    },
    loopModel(side.values, inputs, (solve) => {
      const cruise = solve('cruise');
      const traffic = solve('traffic');
      const pull = solve('pull');
      return [charge(cruise), cruise.reservoir, traffic.reservoir, charge(pull), cruise.flow];
    }),
    BREATH,
  );
  return {
    inputs: inputs.map(({ path }) => path),
    draws: Object.fromEntries(STUDIED.map((id, o) => [id, all.results[o]!])) as Sureness['draws'],
    failed: all.failed,
  };
}

/** Which inputs make the result of a duty unsure: first-order and total shares of every one of them. */
export function* doubts(
  side: Side,
  duty: DutyId,
  { samples, repetitions }: StudySize,
): Generator<number, Doubts | null> {
  const inputs = uncertainOf(side.values);
  if (!side.prepared.ok || inputs.length === 0) return null;
  const of = DOUBTED[duty];
  const read = of === 'reservoir-traffic' ? (s: Glance) => s.reservoir : charge;
  const model = loopModel(side.values, inputs, (solve) => [read(solve(duty))]);
  let runs = 0;
  const [shares] = yield* varianceShares(
    {
      inputs: inputs.map(({ distribution }) => distribution),
      outputs: 1,
      samples,
      repetitions,
      seed: SEED,
    },
    (x) => {
      runs++;
      return model(x);
    },
  );
  if (!shares) return { of, shares: null, runs };
  const { first, firstError, total, totalError } = shares;
  const all = inputs.map(({ path }, i): Doubt => ({
    path,
    first: first[i]!,
    firstError: firstError[i]!,
    total: total[i]!,
    totalError: totalError[i]!,
  }));
  return { of, shares: all.toSorted((a, b) => b.total - a.total), runs };
}

const charge = (s: Glance) => s.chargeOut ?? NaN;

/** Drive a study to its end at once. */
export function finished<T>(work: Generator<number, T>): T {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
  }
}
