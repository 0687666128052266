/**
 * Bias and pin from readings at known temperatures, in closed form: one point gives the bias, two give
 * the bias and a resistance in series with the probe.
 */
import { InvalidInputError } from '../../errors';
import type { Probe } from './probe';

/** A probe at a known temperature and what its reader shows, K. */
export interface ShownPoint {
  readonly T_true: number;
  readonly T_shown: number;
}

/**
 * Temperature shown where the bias in the circuit is not the one the reader's table assumes.
 *
 * @formula R_shown = R(T_true) * R_ba / R_b
 * @symbol R_ba - bias assumed by the table, ohm
 * @symbol R_b - bias in the circuit, ohm
 * @returns K
 * @throws {@link OutOfRangeError} outside the probe's law
 * @source voltage divider against its own supply: x / (1 - x) = R / R_b
 */
export const shownWithBias = (probe: Probe, T_true: number, R_ba: number, R_b: number): number =>
  probe.temperature((probe.resistance(T_true) * R_ba) / R_b);

/**
 * Bias in the circuit, from one reading: the inverse of {@link shownWithBias}.
 *
 * @formula R_b = R_ba * R(T_true) / R(T_shown)
 * @returns ohm
 * @throws {@link OutOfRangeError} outside the probe's law
 */
export const biasFromPoint = (probe: Probe, { T_true, T_shown }: ShownPoint, R_ba: number) =>
  (R_ba * probe.resistance(T_true)) / probe.resistance(T_shown);

/**
 * Bias and series resistance that explain two readings exactly.
 *
 * @formula R_shown = (R_ba / R_b) * (R(T) + R_s), at both points
 * @returns bias in the circuit and resistance in series with the probe, ohm; a negative one is no
 *   resistor's: something else is wrong
 * @throws {@link InvalidInputError} for two equal temperatures
 * @throws {@link OutOfRangeError} outside the probe's law
 */
export function biasAndSeries(
  probe: Probe,
  [one, other]: readonly [ShownPoint, ShownPoint],
  R_ba: number,
): { readonly bias: number; readonly series: number } {
  return solvedFor(
    [probe.resistance(one.T_true), probe.resistance(other.T_true)],
    [probe.resistance(one.T_shown), probe.resistance(other.T_shown)],
    R_ba,
  );
}

/**
 * As {@link biasAndSeries}, from resistances: of the probe (`R`) and as the reader takes it (`S`).
 * @throws {@link InvalidInputError} for two equal resistances
 */
export function solvedFor(
  [R_1, R_2]: readonly [number, number],
  [S_1, S_2]: readonly [number, number],
  R_ba: number,
): { readonly bias: number; readonly series: number } {
  if (R_1 === R_2) {
    throw new InvalidInputError('probe readings', 'two different temperatures are needed');
  }
  const k = (S_1 - S_2) / (R_1 - R_2);
  return { bias: R_ba / k, series: S_1 / k - R_1 };
}
