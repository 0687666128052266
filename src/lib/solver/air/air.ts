/** Dry air as an ideal gas. */
import { OutOfRangeError, requireWithin, type Interval } from '../errors';
import { CP_OVER_R_AIR, R_AIR_NASA } from './nasa-air.coefficients';

/** Specific gas constant of dry air, J/(kg K). ISO 2533:1975 (from memory). */
export const AIR_GAS_CONSTANT = 287.05287;

/** Where {@link airCp}, {@link airViscosity} and {@link airConductivity} are offered, K. */
export const AIR_RANGE = [200, 700] as const satisfies Interval;

/** Where {@link airDensity} is offered: ideal within 0.3 % at 300 K and 1 MPa, better below. */
export const AIR_DENSITY_RANGE = {
  T: [200, 700],
  p: [1e3, 1e6],
} as const satisfies Record<string, Interval>;

/**
 * Density of dry air.
 *
 * @formula rho = p / (R * T)
 * @symbol p - pressure, Pa, absolute
 * @symbol R - specific gas constant, 287.05287 J/(kg K)
 * @symbol T - temperature, K
 * @returns kg/m³
 * @throws {@link OutOfRangeError} outside {@link AIR_DENSITY_RANGE}
 * @source ideal gas; R from ISO 2533:1975
 * @example airDensity({ T: 288.15, p: 101325 }) // 1.225
 */
export function airDensity({ T, p }: { T: number; p: number }): number {
  requireWithin('density of air', AIR_DENSITY_RANGE, { T, p });
  return p / (AIR_GAS_CONSTANT * T);
}

/**
 * Specific heat of dry air at constant pressure, ideal gas.
 *
 * @symbol T - temperature, K
 * @returns J/(kg K); air at one atmosphere has 0.2 % more near 300 K, 0.5 % at 200 K
 * @throws {@link OutOfRangeError} outside {@link AIR_RANGE}
 * @source NASA/TP-2002-211556
 * @example airCp(300) // 1004.82
 */
export function airCp(T: number): number {
  requireAir('specific heat of air', T);
  const [a, b, c, d, e, f, g] = CP_OVER_R_AIR;
  return R_AIR_NASA * ((a / T + b) / T + c + T * (d + T * (e + T * (f + T * g))));
}

/**
 * Dynamic viscosity of air.
 *
 * @formula mu = 1.458e-6 * T^1.5 / (T + 110.4)
 * @symbol T - temperature, K
 * @returns Pa s; within 1 % of handbook tables below 450 K, 2 % up to 700 K
 * @throws {@link OutOfRangeError} outside {@link AIR_RANGE}
 * @source Sutherland's law, constants of ISO 2533:1975 (from memory)
 * @example airViscosity(300) // 1.846e-5
 */
export function airViscosity(T: number): number {
  requireAir('viscosity of air', T);
  return (1.458e-6 * T * Math.sqrt(T)) / (T + 110.4);
}

/**
 * Thermal conductivity of air.
 *
 * @formula k = 2.648151e-3 * T^1.5 / (T + 245.4 * 10^(-12 / T))
 * @symbol T - temperature, K
 * @returns W/(m K); within 1 % of handbook tables
 * @throws {@link OutOfRangeError} outside {@link AIR_RANGE}
 * @source ISO 2533:1975 (from memory)
 * @example airConductivity(288.15) // 0.025343
 */
export function airConductivity(T: number): number {
  requireAir('conductivity of air', T);
  return (2.648151e-3 * T * Math.sqrt(T)) / (T + 245.4 * 10 ** (-12 / T));
}

function requireAir(law: string, T: number): void {
  if (!(T >= AIR_RANGE[0] && T <= AIR_RANGE[1])) throw new OutOfRangeError(law, 'T', T, AIR_RANGE);
}
