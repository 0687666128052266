/** Thermistor by one resistance and one Beta: the law of most data sheets. */
import { requireWithin, type Interval } from '../../errors';
import { THERMISTOR_RANGE } from './steinhartHart';

/** Temperature at which a data sheet states its resistance: 25 °C. */
export const T_25 = 298.15;

export interface Beta {
  /** Resistance at 25 °C, ohm. */
  readonly R25: number;
  /** K */
  readonly beta: number;
}

/** What thermistors are made with; Beta from memory of data sheets. */
export const BETA_RANGE = {
  R25: [10, 1e7],
  beta: [1500, 6500],
} as const satisfies Record<string, Interval>;

/**
 * Resistance at temperature `T`.
 *
 * @formula R = R25 * exp(beta * (1 / T - 1 / 298.15))
 * @symbol R25 - resistance at 25 °C, ohm
 * @symbol beta - K
 * @symbol T - temperature, K
 * @returns ohm
 * @throws {@link OutOfRangeError} outside {@link BETA_RANGE} or {@link THERMISTOR_RANGE}
 * @source Beta law, any data sheet; one Beta for the whole range strays by kelvins from a real probe
 * @example betaResistance({ R25: 10000, beta: 3950 }, 273.15) // 33620.6
 */
export function betaResistance({ R25, beta }: Beta, T: number): number {
  requireWithin('Beta law', BETA_RANGE, { R25, beta });
  requireWithin('Beta law', { T: THERMISTOR_RANGE.T }, { T });
  return R25 * Math.exp(beta * (1 / T - 1 / T_25));
}

/**
 * Temperature at resistance `R`: inverse of {@link betaResistance}.
 *
 * @formula T = 1 / (1 / 298.15 + log(R / R25) / beta)
 * @returns K
 * @throws {@link OutOfRangeError} outside {@link BETA_RANGE} or {@link THERMISTOR_RANGE}
 */
export function betaTemperature({ R25, beta }: Beta, R: number): number {
  requireWithin('Beta law', BETA_RANGE, { R25, beta });
  requireWithin('Beta law', { R: THERMISTOR_RANGE.R }, { R });
  const T = 1 / (1 / T_25 + Math.log(R / R25) / beta);
  requireWithin('Beta law', { T: THERMISTOR_RANGE.T }, { T });
  return T;
}
