/** Which input's uncertainty makes a result uncertain: shares of the variance. */
import { requireWithin } from '../errors';
import { lattice } from '../numerics/lattice';
import { quantile, type Distribution } from './distributions';
import type { Model } from './propagate';

export interface SharesStudy {
  readonly inputs: readonly Distribution[];
  readonly outputs: number;
  /**
   * Base points of each repetition; the model is run at most `repetitions * samples * (inputs + 2)`
   * times. An input that moves nothing at the first points is not run again.
   */
  readonly samples: number;
  /** Independent shifts of the lattice; their scatter is the error told. */
  readonly repetitions: number;
  readonly seed: number;
}

/** Shares of one result's variance, by input. */
export interface VarianceShares {
  /** By that input alone: what knowing it exactly would take away on average. */
  readonly first: readonly number[];
  /** With all it does together with others. */
  readonly total: readonly number[];
  /** Standard errors of both. */
  readonly firstError: readonly number[];
  readonly totalError: readonly number[];
  readonly variance: number;
}

export const SHARES_RANGE = {
  inputs: [1, 125], // two points of the lattice's 250 dimensions
  samples: [8, 2 ** 18],
  repetitions: [2, 64],
} as const;

/**
 * First-order and total shares of the variance for each result.
 *
 * @formula S_i = mean(f_B (f_ABi - f_A)) / V, T_i = mean((f_A - f_ABi)^2) / (2 V)
 * @throws {@link OutOfRangeError} outside {@link SHARES_RANGE}
 * @returns one entry per result; null where the model failed at a point or the result does not vary
 * @source Saltelli et al., Comput. Phys. Commun. 181 (2010) 259-270: first order by its estimator (b),
 *   total by Jansen's (both from memory)
 */
export function* varianceShares(
  study: SharesStudy,
  model: Model,
): Generator<number, (VarianceShares | null)[]> {
  const { inputs, outputs, samples, repetitions, seed } = study;
  const k = inputs.length;
  requireWithin('variance shares', SHARES_RANGE, { inputs: k, samples, repetitions });
  const runs: Repetition[] = [];
  const still = new Set<number>();
  for (let r = 0; r < repetitions; r++) {
    const progress = (done: number) => (r + done) / repetitions;
    runs.push(yield* repetition(study, seed + 7919 * r, model, progress, still));
  }
  return Array.from({ length: outputs }, (_, o) => {
    const each = runs.map((run) => run(o));
    if (each.some((e) => e === null)) return null;
    const all = each as Estimate[];
    const first = inputs.map((_, i) => stats(all.map((e) => e.first[i]!)));
    const total = inputs.map((_, i) => stats(all.map((e) => e.total[i]!)));
    return {
      first: first.map((s) => s.mean),
      total: total.map((s) => s.mean),
      firstError: first.map((s) => s.error),
      totalError: total.map((s) => s.error),
      variance: stats(all.map((e) => e.variance)).mean,
    };
  });
}

interface Estimate {
  readonly first: readonly number[];
  readonly total: readonly number[];
  readonly variance: number;
}
type Repetition = (output: number) => Estimate | null;

/** Base points after which an input that has moved nothing is left where it is. */
const LOOKS = 8;
/** Moving a result by less than this share of its spread is moving nothing: the model may be rounded. */
const NOTHING = 1e-4;

function* repetition(
  { inputs, outputs, samples }: SharesStudy,
  seed: number,
  model: Model,
  progress: (done: number) => number,
  /** Inputs that move nothing; filled by the first repetition. */
  still: Set<number>,
): Generator<number, Repetition> {
  const k = inputs.length;
  const draw = lattice(2 * k, seed);
  const u = new Float64Array(2 * k);
  const x = new Float64Array(k);
  const put = (j: number, from: number) => {
    const p = Math.min(1 - 2 ** -33, Math.max(2 ** -33, u[from]!));
    x[j] = quantile(inputs[j]!, p);
  };
  // [A, B, AB_1 ... AB_k] for each base point and result.
  const columns = k + 2;
  const f = Array.from({ length: outputs }, () => new Float64Array(samples * columns));
  const store = (column: number, i: number) => {
    const y = model(x);
    for (let o = 0; o < outputs; o++) f[o]![i * columns + column] = y === null ? NaN : y[o]!;
  };
  const same = (column: number, i: number) => {
    for (const of of f) of[i * columns + column] = of[i * columns]!;
  };
  const known = still.size > 0;
  for (let i = 0; i < samples; i++) {
    if (i % 4 === 0) yield progress(i / samples);
    if (i === LOOKS && !known) lookForStill(f, k, still);
    draw(i, u);
    for (let j = 0; j < k; j++) put(j, k + j);
    store(1, i);
    for (let j = 0; j < k; j++) put(j, j);
    store(0, i);
    for (let j = 0; j < k; j++) {
      if (still.has(j)) {
        same(2 + j, i);
        continue;
      }
      put(j, k + j); // the one input from B
      store(2 + j, i);
      put(j, j);
    }
  }
  return (o) => estimate(f[o]!, samples, k);
}

/** Inputs for which no result moved at the first points. */
function lookForStill(f: readonly Float64Array[], k: number, still: Set<number>): void {
  const columns = k + 2;
  const moves = (of: Float64Array, j: number) => {
    let least = Infinity;
    let most = -Infinity;
    let change = 0;
    for (let i = 0; i < LOOKS; i++) {
      const a = of[i * columns]!;
      least = Math.min(least, a, of[i * columns + 1]!);
      most = Math.max(most, a, of[i * columns + 1]!);
      change = Math.max(change, Math.abs(of[i * columns + 2 + j]! - a));
    }
    return !(change <= NOTHING * (most - least));
  };
  for (let j = 0; j < k; j++) if (!f.some((of) => moves(of, j))) still.add(j);
}

function estimate(f: Float64Array, samples: number, k: number): Estimate | null {
  if (f.some(Number.isNaN)) return null;
  const at = (i: number, column: number) => f[i * (k + 2) + column]!;
  let mean = 0;
  for (let i = 0; i < samples; i++) mean += at(i, 0) + at(i, 1);
  mean /= 2 * samples;
  let variance = 0;
  for (let i = 0; i < samples; i++) variance += (at(i, 0) - mean) ** 2 + (at(i, 1) - mean) ** 2;
  variance /= 2 * samples;
  if (!(variance > 0)) return null;
  const first: number[] = [];
  const total: number[] = [];
  for (let j = 0; j < k; j++) {
    let s = 0;
    let t = 0;
    for (let i = 0; i < samples; i++) {
      const change = at(i, 2 + j) - at(i, 0);
      // Centred: the mean cancels in expectation, and taking it off keeps the scatter small.
      s += (at(i, 1) - mean) * change;
      t += change * change;
    }
    first.push(s / samples / variance);
    total.push(t / (2 * samples) / variance);
  }
  return { first, total, variance };
}

function stats(values: readonly number[]) {
  const n = values.length;
  const mean = values.reduce((a, b) => a + b, 0) / n;
  const squares = values.reduce((a, b) => a + (b - mean) ** 2, 0);
  return { mean, error: Math.sqrt(squares / (n - 1) / n) };
}
