/** Error of a reader over a range, and the bias resistor that makes it least. */
import { InvalidInputError, SolverError } from '../../../errors';
import { maximum } from '../../../numerics/maximum';
import { spaced } from '../../../numerics/spaced';
import { resistanceFromRatio } from '../divider';
import type { BathReading } from '../bath';
import { ratioSeen, withBias, type ReadSetup } from '../reader';

/** Temperatures at which the error is asked for: every five kelvin or so of a usual range. */
const POINTS = 41;
/** Factor up and down from the present bias within which the best one is looked for. */
const WIDEST = 50;

export interface ErrorPoint {
  /** True temperature, K. */
  readonly T: number;
  /** Shown less true, K. */
  readonly error: number;
}

export interface ShownAt {
  /** True temperature, K. */
  readonly T: number;
  /** What the reader shows, K. */
  readonly shown: number;
}

/** Error of one circuit over a range, as a function of its bias resistor alone. */
export interface RangeError {
  /** What the reader shows over the range, K; points where it shows nothing are left out. */
  shown(bias: number): ShownAt[];
  /** Shown less true at the same points, K. */
  curve(bias: number): ErrorPoint[];
  /** What is shown at every point with two biases, the lower first, K. */
  shownBetween(low: number, high: number): (readonly [T: number, low: number, high: number])[];
  /** The error at the same points, K. */
  between(low: number, high: number): (readonly [T: number, low: number, high: number])[];
  /** Largest magnitude of the error over the range, K; Infinity where the reader shows nothing. */
  worst(bias: number): number;
  /** Largest magnitude over the range for any bias between two, K: at one of the two ends. */
  worstBetween(low: number, high: number): number;
}

/**
 * @param from, to - range of true temperatures, K
 * @throws {@link InvalidInputError} when the range is empty
 * @throws {@link OutOfRangeError} when the probe's law does not reach over the range
 */
export function rangeError(setup: ReadSetup, from: number, to: number): RangeError {
  if (!(to > from)) {
    throw new InvalidInputError('probe.to', 'the range must end above its start', to);
  }
  const points = spaced(from, to, POINTS).map((T) => ({ T, R: setup.probe.resistance(T) }));
  const { reader } = setup;
  const shownAt = (circuit: ReadSetup, R: number): number =>
    reader.table.temperature(resistanceFromRatio(ratioSeen(circuit, R), reader.bias));

  const worst = (bias: number) => {
    const circuit = withBias(setup, bias);
    let most = 0;
    for (const { T, R } of points) {
      const shown = orNull(() => shownAt(circuit, R));
      if (shown === null) return Infinity;
      most = Math.max(most, Math.abs(shown - T));
    }
    return most;
  };
  const shown = (bias: number) => {
    const circuit = withBias(setup, bias);
    return points.flatMap(({ T, R }) => {
      const at = orNull(() => shownAt(circuit, R));
      return at === null ? [] : [{ T, shown: at }];
    });
  };
  const shownBetween = (low: number, high: number) => {
    const upper = new Map(shown(high).map((point) => [point.T, point.shown]));
    return shown(low).flatMap((point) => {
      const other = upper.get(point.T);
      return other === undefined ? [] : [[point.T, point.shown, other] as const];
    });
  };
  return {
    worst,
    // The reading rises with the bias at every temperature, so the largest error lies at an end.
    worstBetween: (low, high) => Math.max(worst(low), worst(high)),
    shown,
    curve: (bias) => shown(bias).map((point) => ({ T: point.T, error: point.shown - point.T })),
    shownBetween,
    between: (low, high) => shownBetween(low, high).map(([T, a, b]) => [T, a - T, b - T] as const),
  };
}

/** A circuit that shows nothing at some temperature; anything but a refusal of the solver is a fault. */
function orNull(work: () => number): number | null {
  try {
    return work();
  } catch (thrown) {
    if (thrown instanceof SolverError) return null;
    throw thrown;
  }
}

/**
 * Bias resistor for which the largest error over the range is least, ohm.
 *
 * At every temperature the reading rises with the bias, so the largest magnitude has one trough.
 */
export function bestBias(error: RangeError, present: number): number {
  const centre = Math.log(present);
  const span = Math.log(WIDEST);
  // A bias for which the reader shows nothing somewhere scores by its distance: the trough stays one.
  const score = (log: number) => {
    const worst = error.worst(Math.exp(log));
    return worst === Infinity ? -1e6 * (1 + Math.abs(log - centre)) : -worst;
  };
  return Math.exp(maximum(score, centre - span, centre + span, 1e-10).x);
}

/** Readings as points of a plot of what is shown: true temperature, shown, ±; K. */
export const shownSpots = (
  readings: readonly BathReading[],
): (readonly [T: number, shown: number, plusMinus: number])[] =>
  readings.map(({ T, shown, plusMinus }) => [T, shown, plusMinus] as const);

/** Readings as points of an error plot: true temperature, shown less true, ±; K. */
export const errorSpots = (
  readings: readonly BathReading[],
): (readonly [T: number, error: number, plusMinus: number])[] =>
  readings.map(({ T, shown, plusMinus }) => [T, shown - T, plusMinus] as const);
