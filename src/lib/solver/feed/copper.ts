import { requireWithin, type Interval } from '../errors';
import { copperArea, type WireSize } from './gauge';

/**
 * Resistivity of annealed copper at 20 °C, ohm·m: 100 % IACS, defined as 1/58 ohm·mm²/m.
 * Tables print it rounded, 0.017241; the two differ by 2e-5.
 */
export const COPPER_RESISTIVITY_20 = 1e-6 / 58;

/** Change of resistance per kelvin as a share of that at 20 °C, for 100 % IACS copper. IEC 60028. */
export const COPPER_COEFFICIENT_20 = 0.00393;

/** Temperature at which resistivity and coefficient are stated, K. */
export const COPPER_REFERENCE_TEMPERATURE = 293.15;

/** Temperatures over which a straight line is used: -50 to 200 °C, ours; copper is close to straight there. */
export const COPPER_RANGE = { T: [223.15, 473.15] } as const satisfies Record<string, Interval>;

/**
 * Resistance at a temperature over resistance at 20 °C.
 *
 * @formula k = 1 + 0.00393 * (T - 293.15)
 * @symbol T - temperature of the copper, K
 * @returns k, 1
 * @throws {@link OutOfRangeError} outside {@link COPPER_RANGE}, NaN included
 * @source IEC 60028 (value seen in tables, standard not read)
 * @example copperTemperatureFactor({ T: 333.15 }) // 1.1572
 */
export function copperTemperatureFactor({ T }: { T: number }): number {
  requireWithin('copper resistance', COPPER_RANGE, { T });
  return 1 + COPPER_COEFFICIENT_20 * (T - COPPER_REFERENCE_TEMPERATURE);
}

/**
 * Resistance of one metre of copper wire. Solid annealed copper; stranded and plated wire is 2 to 10 %
 * higher (compare `largestResistance` of ISO 6722).
 *
 * @formula r = 1e-6 / 58 / A * (1 + 0.00393 * (T - 293.15))
 * @symbol A - area of copper, m²
 * @symbol T - temperature of the copper, K
 * @returns r, ohm/m
 * @throws {@link OutOfRangeError} for a size or temperature outside its range
 * @source IEC 60028, International Annealed Copper Standard
 * @example resistancePerMetre({ by: 'area', area: 2.5e-6 }, 293.15) // 0.0068966
 */
export function resistancePerMetre(size: WireSize, T: number): number {
  return (COPPER_RESISTIVITY_20 / copperArea(size)) * copperTemperatureFactor({ T });
}
