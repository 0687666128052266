/** Liquid water from the ice point to 120 °C. */
import { OutOfRangeError, type Interval } from '../errors';
import { R_WATER_IF97, REGION_1, REGION_1_SCALE } from './if97-region1.coefficients';
import type { LiquidProperties } from './properties';
import { saturationPressureWater } from './saturation';
import { conductivityIapws, viscosityIapws } from './transport';

export { saturationPressureWater, saturationTemperatureWater } from './saturation';

/** Where {@link waterProperties} is offered. The releases reach further; the loop does not. */
export const WATER_RANGE = {
  T: [273.15, 393.15],
  p: [611.213, 100e6], // and never below saturation at T
} as const satisfies Record<string, Interval>;

/**
 * Pressure at which water is taken when none is given, Pa: liquid up to 133 °C, so there is no step at
 * 100 °C. Against one atmosphere it changes no property by more than 0.03 %.
 */
export const REFERENCE_PRESSURE = 300e3;

// Powers of the two reduced variables, refilled at each call: half the time of Math.pow, nothing allocated.
const J_MIN = Math.min(...REGION_1.map(([, J]) => J));
const J_MAX = Math.max(...REGION_1.map(([, J]) => J));
const I_MAX = Math.max(...REGION_1.map(([I]) => I));
const powersP = new Float64Array(I_MAX + 1);
const powersT = new Float64Array(J_MAX - J_MIN + 1);
const column = (pick: (row: (typeof REGION_1)[number]) => number) =>
  Float64Array.from(REGION_1, pick);
const rowP = Int32Array.from(REGION_1, ([I]) => I);
const rowT = Int32Array.from(REGION_1, ([, J]) => J - J_MIN);
const N = column(([, , n]) => n);
const N_PI = column(([I, , n]) => -I * n);
const N_TAUTAU = column(([, J, n]) => J * (J - 1) * n);

/** Density and specific heat from the Gibbs energy of region 1; the caller holds the range. */
export function region1(T: number, p: number): { rho: number; cp: number } {
  const tau = REGION_1_SCALE.T / T;
  const a = REGION_1_SCALE.shiftP - p / REGION_1_SCALE.p;
  const b = tau - REGION_1_SCALE.shiftT;
  const inverse = 1 / b;
  const zero = -J_MIN;
  powersP[0] = 1;
  for (let i = 1; i <= I_MAX; i++) powersP[i] = powersP[i - 1]! * a;
  powersT[zero] = 1;
  for (let j = zero + 1; j <= J_MAX - J_MIN; j++) powersT[j] = powersT[j - 1]! * b;
  for (let j = zero - 1; j >= 0; j--) powersT[j] = powersT[j + 1]! * inverse;

  let gammaPi = 0;
  let gammaTauTau = 0;
  for (let m = 0; m < N.length; m++) {
    const term = powersP[rowP[m]!]! * powersT[rowT[m]!]!;
    gammaPi += N_PI[m]! * term;
    gammaTauTau += N_TAUTAU[m]! * term;
  }
  // Each derivative lowers one power: divided out once instead of per term.
  gammaPi /= a;
  gammaTauTau /= b * b;
  return {
    rho: REGION_1_SCALE.p / (R_WATER_IF97 * T * gammaPi),
    cp: -R_WATER_IF97 * tau * tau * gammaTauTau,
  };
}

/**
 * Properties of liquid water.
 *
 * @param T - temperature, K
 * @param p - pressure, Pa absolute; {@link REFERENCE_PRESSURE} when left out
 * @throws {@link OutOfRangeError} outside {@link WATER_RANGE}, or when `p` is below saturation at `T`
 *   (the water would be steam)
 * @source IAPWS R7-97(2012) region 1 (rho within 0.003 %, cp within 0.2 %), R12-08 (mu, 1 %), R15-11 (k, 1 %)
 * @example waterProperties(300, 3e6).rho // 997.853
 */
export function waterProperties(T: number, p: number = REFERENCE_PRESSURE): LiquidProperties {
  if (!(T >= WATER_RANGE.T[0] && T <= WATER_RANGE.T[1])) {
    throw new OutOfRangeError('liquid water', 'T', T, WATER_RANGE.T);
  }
  if (p !== REFERENCE_PRESSURE) requireLiquid(T, p);
  const { rho, cp } = region1(T, p);
  return { rho, cp, mu: viscosityIapws(rho, T), k: conductivityIapws(rho, T) };
}

function requireLiquid(T: number, p: number): void {
  const range: Interval = [saturationPressureWater(T), WATER_RANGE.p[1]];
  if (!(p >= range[0] && p <= range[1])) throw new OutOfRangeError('liquid water', 'p', p, range);
}
