/** Values that are not known exactly, sent through a model. */
import { requireWithin } from '../errors';
import { lattice } from '../numerics/lattice';
import { quantile, type Distribution } from './distributions';

/** Results at one set of inputs, SI; null where the model has no answer there. */
export type Model = (inputs: Float64Array) => ArrayLike<number> | null;

export interface Study {
  readonly inputs: readonly Distribution[];
  /** How many results the model gives. */
  readonly outputs: number;
  readonly samples: number;
  /** Two studies with one seed draw the same points: their difference is then sharp. */
  readonly seed: number;
  /** Axis of the lattice for each input; inputs on one axis in two studies move together. In order unless told. */
  readonly axes?: readonly number[];
}

/** Sample by sample; `results[o][i]` is NaN where the model had no answer. */
export interface Draws {
  readonly results: readonly Float64Array[];
  readonly failed: number;
}

export const STUDY_RANGE = { samples: [1, 2 ** 20], outputs: [1, 1000] } as const;

/**
 * Propagate distributions by a randomly shifted lattice. A generator, so that whoever drives it can
 * tell progress and stop: it yields the share done every `every` samples.
 *
 * @throws {@link OutOfRangeError} for no samples, too many, or more inputs than the lattice has
 * @source JCGM 101:2008 (GUM Supplement 1), clauses 5 to 7, with lattice points for pseudo-random ones
 */
export function* propagate(study: Study, model: Model, every = 100): Generator<number, Draws> {
  const { inputs, outputs, samples, seed, axes = inputs.map((_, j) => j) } = study;
  requireWithin('propagation', STUDY_RANGE, { samples, outputs });
  const results = Array.from({ length: outputs }, () => new Float64Array(samples));
  const dimensions = Math.max(0, ...axes.map((axis) => axis + 1));
  const u = new Float64Array(dimensions);
  const x = new Float64Array(inputs.length);
  const draw = dimensions > 0 ? lattice(dimensions, seed) : () => undefined;
  let failed = 0;
  for (let i = 0; i < samples; i++) {
    if (i > 0 && i % every === 0) yield i / samples;
    draw(i, u);
    for (let j = 0; j < x.length; j++) x[j] = quantile(inputs[j]!, inside(u[axes[j]!]!));
    const y = model(x);
    if (y === null) failed++;
    for (let o = 0; o < outputs; o++) results[o]![i] = y === null ? NaN : y[o]!;
  }
  return { results, failed };
}

/** A lattice point can be 0, where a normal distribution has no value. */
const inside = (p: number) => Math.min(1 - 2 ** -33, Math.max(2 ** -33, p));

export interface Spread {
  readonly mean: number;
  readonly sd: number;
  readonly median: number;
  /** 95 % of the draws, as much left out on either side. */
  readonly low: number;
  readonly high: number;
  readonly count: number;
}

/**
 * Mean, standard deviation and the probabilistically symmetric 95 % interval of draws.
 * Draws without an answer (NaN) are left out; null when fewer than two are left.
 * @source JCGM 101:2008, 7.6 and 7.7
 */
export function spread(draws: Float64Array): Spread | null {
  const sorted = draws.filter((v) => !Number.isNaN(v)).sort();
  const count = sorted.length;
  if (count < 2) return null;
  let sum = 0;
  for (const v of sorted) sum += v;
  const mean = sum / count;
  let squares = 0;
  for (const v of sorted) squares += (v - mean) ** 2;
  const at = (p: number) => {
    const place = p * (count - 1);
    const below = Math.floor(place);
    const low = sorted[below]!;
    const high = sorted[Math.min(count - 1, below + 1)]!;
    return low + (place - below) * (high - low);
  };
  return {
    mean,
    sd: Math.sqrt(squares / (count - 1)),
    median: at(0.5),
    low: at(0.025),
    high: at(0.975),
    count,
  };
}

/** Share of draws for which a statement holds, among those with an answer; null without any. */
export function chance(draws: Float64Array, holds: (value: number, i: number) => boolean) {
  let count = 0;
  let yes = 0;
  draws.forEach((value, i) => {
    if (Number.isNaN(value)) return;
    count++;
    if (holds(value, i)) yes++;
  });
  return count === 0 ? null : yes / count;
}

/** Steps of a {@link cumulative} curve. */
const CUMULATIVE_STEPS = 80;

/**
 * Share of draws at or below a value, as a curve from the lowest draw to the highest.
 * Draws without an answer are left out; empty without any.
 * @source JCGM 101:2008, 7.5.1, the discrete representation of the distribution function
 */
export function cumulative(draws: Float64Array): (readonly [value: number, share: number])[] {
  const sorted = draws.filter((v) => !Number.isNaN(v)).sort();
  const n = sorted.length;
  if (n < 2) return [];
  return Array.from({ length: CUMULATIVE_STEPS + 1 }, (_, i) => {
    const rank = Math.round((i / CUMULATIVE_STEPS) * (n - 1));
    return [sorted[rank]!, (rank + 0.5) / n] as const;
  });
}

/**
 * Square of the correlation of pairs: for a nearly straight model the share of the variance that the
 * first explains. 0 for fewer than three pairs, or where either does not vary.
 * @formula r^2 = (sum dx dy)^2 / (sum dx^2 sum dy^2)
 * @source any text of statistics
 */
export function squaredCorrelation(pairs: readonly (readonly [x: number, y: number])[]): number {
  const n = pairs.length;
  if (n < 3) return 0;
  const mean = (k: 0 | 1) => pairs.reduce((sum, pair) => sum + pair[k], 0) / n;
  const [mx, my] = [mean(0), mean(1)];
  let xy = 0;
  let xx = 0;
  let yy = 0;
  for (const [x, y] of pairs) {
    xy += (x - mx) * (y - my);
    xx += (x - mx) ** 2;
    yy += (y - my) ** 2;
  }
  return xx > 0 && yy > 0 ? (xy * xy) / (xx * yy) : 0;
}
