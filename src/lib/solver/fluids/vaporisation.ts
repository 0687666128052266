/** How much heat boiling takes. */
import { requireWithin, type Interval } from '../errors';
import { saturationPressureWater } from './saturation';
import { SATURATED_DENSITIES as S } from './saturated-densities.coefficients';

/** Where {@link heatOfVaporisation} is stated: the equations reach 647 K, a loop never does. */
export const VAPORISATION_RANGE = { T: [273.16, 500] } as const satisfies Record<string, Interval>;

/** Half-width of the difference that gives the slope of the saturation pressure, K. */
const STEP = 0.01;

/** Densities of liquid and vapour in balance, kg/m³. */
export function saturatedDensities(T: number): {
  readonly liquid: number;
  readonly vapour: number;
} {
  requireWithin('saturated densities', VAPORISATION_RANGE, { T });
  const theta = 1 - T / S.T_critical;
  const sum = (terms: readonly (readonly [number, number])[]) =>
    terms.reduce((total, [factor, exponent]) => total + factor * theta ** exponent, 0);
  return {
    liquid: S.rho_critical * (1 + sum(S.liquid)),
    vapour: S.rho_critical * Math.exp(sum(S.vapour)),
  };
}

/**
 * Heat of vaporisation of water. Over a glycol mixture it is water that leaves (glycol taken as
 * non-volatile), at the mixture's temperature.
 *
 * @formula L = T * dp_dT * (1 / rho_v - 1 / rho_l)
 * @symbol T - temperature, K
 * @symbol dp_dT - slope of the saturation pressure, Pa/K
 * @symbol rho_v, rho_l - density of vapour and liquid in balance, kg/m^3
 * @returns L, J/kg
 * @throws {@link OutOfRangeError} outside {@link VAPORISATION_RANGE}
 * @source Clapeyron; pressure IAPWS R7-97(2012), densities IAPWS SR1-86(1992)
 * @example heatOfVaporisation(373.1243) // 2256648
 */
export function heatOfVaporisation(T: number): number {
  const { liquid, vapour } = saturatedDensities(T);
  const low = Math.max(T - STEP, VAPORISATION_RANGE.T[0]);
  const high = T + STEP;
  const slope = (saturationPressureWater(high) - saturationPressureWater(low)) / (high - low);
  return T * slope * (1 / vapour - 1 / liquid);
}
