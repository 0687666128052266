/**
 * How sure the settled loop is, from the ± of what was entered. One side at a time; both sides draw the
 * same points, so what they share moves together and their difference stays sharp.
 */
import type { Distribution } from '$lib/solver/uncertainty/distributions';
import { propagate, squaredCorrelation, type Model } from '$lib/solver/uncertainty/propagate';
import { varianceShares } from '$lib/solver/uncertainty/shares';
import { LATTICE_RANGE } from '$lib/solver/numerics/lattice';
import { SolverError } from '$lib/solver/errors';
import { prepareLoop, type PreparedLoop } from '$lib/solver/loop/prepare';
import { steadyIn } from '$lib/solver/loop/steady';
import type { DutyId, SteadySolution } from '$lib/solver/loop/types';
import { requireConsistent } from './consistency';
import { requireMeasures } from './coreMeasures';
import type { Side } from './evaluate';
import { fieldAt, FIELDS } from './fields';
import { toLoop } from './toLoop';
import type { Value, Values } from './values';

/** Half a ± is one standard deviation, as everywhere in a job. */
const SIGMAS = 2;
/** Draws per side. */
export const DRAWS = 256;
/** For the shares: base points and repetitions. */
const SHARES = { samples: 32, repetitions: 2 };
const SEED = 20;

/** Inputs of the loop itself: readings, questions and views do not move it. */
const OF_THE_LOOP =
  /^(site|coolant|engine|duty|chargeCooler|frontExchanger|hose|pump|feed|reservoir|fans|airPath|soak)\./;

const PATHS = [...FIELDS]
  .filter(([path, { kind }]) => kind === 'quantity' && OF_THE_LOOP.test(path))
  .map(([path]) => path);
/** Last axis; parts of the candidate's own count down from here. */
const OTHER_PARTS = LATTICE_RANGE.dimensions[1] - 1;

/** The results studied, in this order. */
export const STUDIED = [
  'charge-cruise',
  'reservoir-cruise',
  'reservoir-traffic',
  'charge-pull',
  'flow-cruise',
] as const;
export type Studied = (typeof STUDIED)[number];

export interface Doubt {
  readonly path: string;
  readonly share: number;
  readonly error: number;
}

/** Plain data: it crosses from the other thread. */
export interface Sureness {
  /** Inputs with a ±. */
  readonly inputs: readonly string[];
  /** Draws of each result, SI; NaN where a draw made no loop. */
  readonly draws: Readonly<Record<Studied, Float64Array>>;
  readonly failed: number;
  /** What makes the charge air at cruise unsure, greatest first; total shares, of the ten most telling. */
  readonly doubts: readonly Doubt[] | null;
}

interface Uncertain {
  readonly path: string;
  readonly distribution: Distribution;
  /** Of the lattice: the same for both sides, unless the candidate has another part there. */
  readonly axis: number;
}

/** What the result of a side depends on, as text. */
export const surenessKey = (side: Side): string =>
  JSON.stringify([
    side.loop,
    uncertain(side.values).map(({ path, distribution }) => [path, distribution]),
  ]);

function uncertain(values: Values): Uncertain[] {
  let others = 0;
  return PATHS.flatMap((path, place): Uncertain[] => {
    const { si, pm, changed } = values[path]!;
    if (si === undefined || pm === undefined || !(pm > 0)) return [];
    const distribution = { kind: 'normal', mean: si, sd: pm / SIGMAS } as const;
    return [{ path, distribution, axis: changed ? OTHER_PARTS - others++ : place }];
  });
}

/** Inputs with a ± on any of the sides. */
export const unsurePaths = (sides: readonly Side[]): string[] =>
  PATHS.filter((path) => sides.some(({ values }) => (values[path]!.pm ?? 0) > 0));

/** Study one side; null where it cannot be solved as it stands, or where nothing has a ±. */
export function sureness(side: Side): Sureness | null {
  const inputs = uncertain(side.values);
  if (!side.prepared.ok || inputs.length === 0) return null;
  const distributions = inputs.map(({ distribution }) => distribution);
  const drawn: Float64Array[] = [];
  const all = finished(
    propagate(
      {
        inputs: distributions,
        outputs: STUDIED.length,
        samples: DRAWS,
        seed: SEED,
        axes: inputs.map(({ axis }) => axis),
      },
      watched(
        drawn,
        modelOf(side.values, inputs, (solve) => {
          const cruise = solve('cruise');
          const traffic = solve('traffic');
          const pull = solve('pull');
          return [charge(cruise), tank(cruise), tank(traffic), charge(pull), cruise.operating.flow];
        }),
      ),
    ),
  );
  const doubtful = mostTelling(inputs, drawn, all.results[0]!);
  const [shares] = finished(
    varianceShares(
      {
        inputs: doubtful.map(({ distribution }) => distribution),
        outputs: 1,
        ...SHARES,
        seed: SEED,
      },
      modelOf(side.values, doubtful, (solve) => [charge(solve('cruise'))]),
    ),
  );
  return {
    inputs: inputs.map(({ path }) => path),
    draws: Object.fromEntries(STUDIED.map((id, o) => [id, all.results[o]!])) as Sureness['draws'],
    failed: all.failed,
    doubts: !shares
      ? null
      : doubtful
          .map(({ path }, i) => ({ path, share: shares.total[i]!, error: shares.totalError[i]! }))
          .sort((a, b) => b.share - a.share),
  };
}

const tank = (s: SteadySolution) => s.temperatures.reservoir;
const charge = (s: SteadySolution) => s.chargeOut ?? NaN;

/** Shares are worked out for so many inputs: those that go most with the result in the draws. */
const MOST_DOUBTFUL = 10;

const watched =
  (drawn: Float64Array[], model: Model): Model =>
  (x) => {
    drawn.push(x.slice());
    return model(x);
  };

/** The inputs whose draws go most with the result's: greatest squared correlation first. */
function mostTelling(
  inputs: readonly Uncertain[],
  drawn: readonly Float64Array[],
  result: Float64Array,
): Uncertain[] {
  const kept = drawn.flatMap((x, i) => (Number.isNaN(result[i]!) ? [] : [{ x, y: result[i]! }]));
  const strength = (j: number) => squaredCorrelation(kept.map(({ x, y }) => [x[j]!, y]));
  return inputs
    .map((input, j) => ({ input, r2: strength(j) }))
    .sort((a, b) => b.r2 - a.r2)
    .slice(0, MOST_DOUBTFUL)
    .map(({ input }) => input);
}

type Solve = (duty: DutyId) => SteadySolution;

/** The loop at one draw of its inputs; no answer where the draw makes no loop. */
function modelOf(
  values: Values,
  inputs: readonly Uncertain[],
  results: (solve: Solve) => number[],
): Model {
  return (x) => {
    const drawn: Record<string, Value> = { ...values };
    inputs.forEach(({ path }, i) => {
      drawn[path] = { ...values[path]!, si: held(path, x[i]!) };
    });
    try {
      const ready = prepared(drawn);
      return results((id) =>
        steadyIn(ready, ready.loop.duties[id], ready.loop.duties[id].vehicleSpeed),
      );
    } catch (error) {
      if (error instanceof SolverError) return null;
      throw error;
    }
  };
}

function prepared(values: Values): PreparedLoop {
  requireMeasures(values);
  const loop = toLoop(values);
  requireConsistent(loop);
  return prepareLoop(loop);
}

/** A tail of the distribution does not leave the range of the field: a share stays a share. */
function held(path: string, si: number): number {
  const field = fieldAt(path);
  return field.kind === 'quantity' ? Math.min(field.max, Math.max(field.min, si)) : si;
}

function finished<T>(work: Generator<number, T>): T {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
  }
}
