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

/** Error of one circuit over a range, as a function of its bias resistor alone. */
export interface RangeError {
  /** Shown less true over the range, K; points where the reader shows nothing are left out. */
  curve(bias: number): ErrorPoint[];
  /** The error at every point for two biases, the lower first, K. */
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
  const errorAt = (circuit: ReadSetup, T: number, R: number): number =>
    reader.table.temperature(resistanceFromRatio(ratioSeen(circuit, R), reader.bias)) - T;

  const worst = (bias: number) => {
    const circuit = withBias(setup, bias);
    let most = 0;
    for (const { T, R } of points) {
      const error = orNull(() => errorAt(circuit, T, R));
      if (error === null) return Infinity;
      most = Math.max(most, Math.abs(error));
    }
    return most;
  };
  const curve = (bias: number) => {
    const circuit = withBias(setup, bias);
    return points.flatMap(({ T, R }) => {
      const error = orNull(() => errorAt(circuit, T, R));
      return error === null ? [] : [{ T, error }];
    });
  };
  return {
    worst,
    // The reading rises with the bias at every temperature, so the largest error lies at an end.
    worstBetween: (low, high) => Math.max(worst(low), worst(high)),
    curve,
    between(low, high) {
      const upper = new Map(curve(high).map(({ T, error }) => [T, error]));
      return curve(low).flatMap(({ T, error }) => {
        const other = upper.get(T);
        return other === undefined ? [] : [[T, error, other] as const];
      });
    },
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

/** Readings as points of an error plot: true temperature, shown less true, ±; K. */
export const errorSpots = (
  readings: readonly BathReading[],
): (readonly [T: number, error: number, plusMinus: number])[] =>
  readings.map(({ T, shown, plusMinus }) => [T, shown - T, plusMinus] as const);
