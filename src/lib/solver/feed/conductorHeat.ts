import { requireWithin, type Interval } from '../errors';
import {
  COPPER_COEFFICIENT_20,
  COPPER_RANGE,
  COPPER_REFERENCE_TEMPERATURE,
  resistancePerMetre,
} from './copper';
import { type WireSize } from './gauge';

/**
 * Heat lost by a thin wire in still air, convection and radiation together, on the outside of its
 * insulation, W/(m² K). From memory, ±40 %; a moving breeze loses more, a taped bundle much less.
 */
export const STILL_AIR_LOSS = 15;

/** Relative uncertainty of {@link STILL_AIR_LOSS}. */
export const STILL_AIR_LOSS_UNCERTAINTY = 0.4;

export const CONDUCTOR_HEAT_RANGE = {
  current: [0, 500],
  outsideDiameter: [0.5e-3, 40e-3],
  ambient: COPPER_RANGE.T,
  loss: [1, 200],
} as const satisfies Record<string, Interval>;

/** A wire in air with a current in it. */
export interface HeatedWire {
  readonly size: WireSize;
  readonly current: number;
  /** Over the insulation, m. */
  readonly outsideDiameter: number;
  readonly ambient: number;
  /** W/(m² K) on the outside; {@link STILL_AIR_LOSS} when not known. */
  readonly loss?: number;
}

/** Where a heated wire settles; copper that heats faster than it can lose has no such point. */
export type WireTemperature =
  { readonly settles: true; readonly temperature: number } | { readonly settles: false };

/**
 * Steady temperature of a wire: the heat of its current, resistance rising with temperature, leaves through
 * its outside. Also `settles: false` when it would settle above the range of the law of copper (200 °C).
 *
 * @formula T = ambient + I^2 * r / (h * pi * D - I^2 * r20 * 0.00393)
 * @symbol I - current, A
 * @symbol r - resistance of one metre at ambient, ohm/m
 * @symbol r20 - resistance of one metre at 20 °C, ohm/m
 * @symbol h - heat lost per outside area and kelvin, W/(m² K)
 * @symbol D - outside diameter, m
 * @symbol ambient - temperature of the air, K
 * @returns T, K; the rise is as uncertain as h
 * @throws {@link OutOfRangeError} outside {@link CONDUCTOR_HEAT_RANGE}
 * @source First law of thermodynamics, steady
 */
export function wireTemperature(wire: HeatedWire): WireTemperature {
  const { size, current, outsideDiameter, ambient, loss = STILL_AIR_LOSS } = wire;
  requireWithin('wire heat', CONDUCTOR_HEAT_RANGE, { current, outsideDiameter, ambient, loss });
  const squared = current * current;
  const net =
    loss * Math.PI * outsideDiameter -
    squared * resistancePerMetre(size, COPPER_REFERENCE_TEMPERATURE) * COPPER_COEFFICIENT_20;
  if (net <= 0) return { settles: false };
  const temperature = ambient + (squared * resistancePerMetre(size, ambient)) / net;
  return temperature <= COPPER_RANGE.T[1] ? { settles: true, temperature } : { settles: false };
}
