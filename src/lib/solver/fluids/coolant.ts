/** The loop's liquid, whatever it is: one set of functions over water and both glycols. */
import { InvalidInputError, OutOfRangeError, type Interval, type Note } from '../errors';
import type { Coolant } from '../loop/types';
import {
  GLYCOL_FIT,
  GLYCOL_RANGE,
  MOLAR_MASS,
  glycolFreezingPoint,
  requireFraction,
} from './glycol';
import type { LiquidProperties } from './properties';
import {
  SATURATION_TEMPERATURE_RANGE,
  saturationPressure,
  saturationTemperatureWater,
} from './saturation';
import { WATER_RANGE, waterProperties } from './water';

/** Hottest liquid the solver follows, K. For glycol the last 20 K lie beyond the fit, with a note. */
export const COOLANT_TMAX = WATER_RANGE.T[1];

/**
 * Freezing point of the coolant, K. Water: 273.15. A glycol kind with fraction 0 keeps its polynomial
 * (within 0.1 K of water's).
 * @throws {@link OutOfRangeError} for a mass fraction outside 0 to 0.6
 */
export function coolantFreezingPoint(coolant: Coolant): number {
  if (coolant.kind === 'water') {
    requireNoGlycol(coolant);
    return WATER_RANGE.T[0];
  }
  return glycolFreezingPoint(coolant.kind, coolant.massFraction);
}

/** Temperatures at which {@link coolantProperties} answers: freezing point to 120 °C, K. */
export function coolantRange(coolant: Coolant): Interval {
  return [coolantFreezingPoint(coolant), COOLANT_TMAX];
}

/**
 * Density, specific heat, viscosity and conductivity of the coolant as a liquid.
 *
 * Whether it boils is not asked here: without `p`, water is taken at 300 kPa, liquid up to 133 °C, and
 * a mixture's polynomials know no pressure. Ask {@link coolantBoilingPoint}. With `p`, water below its
 * saturation pressure is refused.
 *
 * @param T - temperature, K
 * @param p - pressure, Pa absolute; used for water only
 * @throws {@link OutOfRangeError} outside {@link coolantRange}; see {@link coolantNotes} for the part
 *   of it that lies beyond the fit
 * @source IAPWS for water, Melinder 2010 for glycol
 * @example coolantProperties({ kind: 'ethylene-glycol', massFraction: 0.3 }, 293.15).cp // 3718.25
 */
export function coolantProperties(coolant: Coolant, T: number, p?: number): LiquidProperties {
  const range = coolantRange(coolant);
  if (!(T >= range[0] && T <= range[1])) throw new OutOfRangeError(coolant.kind, 'T', T, range);
  if (coolant.kind === 'water') return waterProperties(T, p);
  return GLYCOL_FIT[coolant.kind].properties(coolant.massFraction, T);
}

/**
 * Mole fraction of water in the coolant.
 *
 * @formula x_w = (1 - w) / (1 - w + w / m)
 * @symbol w - mass fraction of glycol, 1
 * @symbol m - molar mass of the glycol over that of water, 1
 * @throws {@link OutOfRangeError} for a mass fraction outside 0 to 0.6
 */
export function waterMoleFraction(coolant: Coolant): number {
  if (coolant.kind === 'water') {
    requireNoGlycol(coolant);
    return 1;
  }
  const w = coolant.massFraction;
  requireFraction(w);
  return (1 - w) / (1 - w + (w * MOLAR_MASS.water) / MOLAR_MASS[coolant.kind]);
}

/**
 * Vapour pressure over the coolant by Raoult's law, glycol taken as non-volatile; good to about 5 %.
 * Below 0 °C the water in the mixture is supercooled and its own vapour pressure is used.
 *
 * @formula p_v = x_w * p_sat
 * @symbol x_w - mole fraction of water, 1
 * @symbol p_sat - vapour pressure of liquid water at T, Pa
 * @param T - temperature, K, up to the critical point: a boiling point may lie above 120 °C
 * @returns Pa, absolute
 * @throws {@link OutOfRangeError} below the freezing point, or above 647 K
 * @source Raoult (from memory); IAPWS R7-97(2012) region 4; Murphy & Koop 2005 below 0 °C
 */
export function coolantVapourPressure(coolant: Coolant, T: number): number {
  const range: Interval = [coolantFreezingPoint(coolant), SATURATION_TEMPERATURE_RANGE[1]];
  if (!(T >= range[0] && T <= range[1])) throw new OutOfRangeError('Raoult', 'T', T, range);
  return waterMoleFraction(coolant) * saturationPressure(T);
}

/**
 * Temperature at which the coolant boils at pressure `p`: where {@link coolantVapourPressure} reaches it.
 *
 * @param p - pressure, Pa absolute
 * @returns K
 * @throws {@link OutOfRangeError} when the answer would lie below 273.15 K or above the critical point
 * @example coolantBoilingPoint({ kind: 'water', massFraction: 0 }, 101325) // 373.1243
 */
export function coolantBoilingPoint(coolant: Coolant, p: number): number {
  return saturationTemperatureWater(p / waterMoleFraction(coolant));
}

/**
 * What the reader must be told of the coolant's properties at `T`; empty when nothing.
 * How far the continued polynomials stray was judged at zero glycol, where water is known: at 120 °C
 * viscosity 8 to 11 % low, the rest within 1 %; and for density against handbook tables, within 1 %.
 */
export function coolantNotes(coolant: Coolant, T: number): Note[] {
  if (coolant.kind === 'water' || !(T > GLYCOL_RANGE.Tmax)) return [];
  return [
    {
      code: 'property-beyond-fit',
      message:
        'The glycol property polynomials were fitted up to 100 °C; the values used here continue them. ' +
        'At 120 °C viscosity may be some 10 % too low; the other properties stay within 1 %.',
      quantity: 'T',
      value: T,
      range: [coolantFreezingPoint(coolant), GLYCOL_RANGE.Tmax],
    },
  ];
}

/** Water that is said to hold glycol contradicts itself: nobody should get water's answer for it. */
function requireNoGlycol(coolant: Coolant): void {
  if (coolant.massFraction !== 0) {
    throw new InvalidInputError(
      'coolant.massFraction',
      'plain water has no glycol in it',
      coolant.massFraction,
    );
  }
}
