/** The line on which liquid water and its vapour balance. */
import { OutOfRangeError, type Interval } from '../errors';
import { REGION_4 as n } from './if97-region4.coefficients';

/** Where {@link saturationPressureWater} is stated: ice point to critical point, K. */
export const SATURATION_TEMPERATURE_RANGE = [273.15, 647.096] as const satisfies Interval;
/** The same line by pressure, Pa. */
export const SATURATION_PRESSURE_RANGE = [611.213, 22.064e6] as const satisfies Interval;
/** Where {@link saturationPressureSupercooled} is used, K; its source covers 123 to 332 K. */
export const SUPERCOOLED_RANGE = [200, 273.15] as const satisfies Interval;

/**
 * Saturation pressure of water.
 *
 * @symbol T - temperature, K
 * @returns Pa, absolute
 * @throws {@link OutOfRangeError} outside {@link SATURATION_TEMPERATURE_RANGE}
 * @source IAPWS R7-97(2012), region 4, eq. 30
 * @example saturationPressureWater(300) // 3536.58941
 */
export function saturationPressureWater(T: number): number {
  const [low, high] = SATURATION_TEMPERATURE_RANGE;
  if (!(T >= low && T <= high)) {
    throw new OutOfRangeError('IF97 saturation', 'T', T, SATURATION_TEMPERATURE_RANGE);
  }
  const t = T + n.n9 / (T - n.n10);
  const A = (t + n.n1) * t + n.n2;
  const B = (n.n3 * t + n.n4) * t + n.n5;
  const C = (n.n6 * t + n.n7) * t + n.n8;
  const r = (2 * C) / (-B + Math.sqrt(B * B - 4 * A * C));
  const r2 = r * r;
  return 1e6 * r2 * r2;
}

/**
 * Saturation temperature (boiling point) of water: the exact inverse of {@link saturationPressureWater}.
 *
 * @symbol p - pressure, Pa, absolute
 * @returns K
 * @throws {@link OutOfRangeError} outside {@link SATURATION_PRESSURE_RANGE}
 * @source IAPWS R7-97(2012), region 4, eq. 31
 * @example saturationTemperatureWater(1e5) // 372.755919
 */
export function saturationTemperatureWater(p: number): number {
  const [low, high] = SATURATION_PRESSURE_RANGE;
  if (!(p >= low && p <= high)) {
    throw new OutOfRangeError('IF97 saturation', 'p', p, SATURATION_PRESSURE_RANGE);
  }
  const b = Math.sqrt(Math.sqrt(p * 1e-6));
  const E = (b + n.n3) * b + n.n6;
  const F = (n.n1 * b + n.n4) * b + n.n7;
  const G = (n.n2 * b + n.n5) * b + n.n8;
  const D = (2 * G) / (-F - Math.sqrt(F * F - 4 * E * G));
  const s = n.n10 + D;
  return (s - Math.sqrt(s * s - 4 * (n.n9 + n.n10 * D))) / 2;
}

/**
 * Vapour pressure of liquid water at any temperature a coolant has: {@link saturationPressureWater} from
 * 0 °C up, {@link saturationPressureSupercooled} below.
 *
 * @symbol T - temperature, K
 * @returns Pa, absolute
 * @throws {@link OutOfRangeError} below 200 K, or above the critical point
 * @source IAPWS R7-97(2012) region 4; Murphy & Koop 2005 below 0 °C (from memory)
 * @example saturationPressure(300) // 3536.58941
 */
export function saturationPressure(T: number): number {
  const warm = T >= SATURATION_TEMPERATURE_RANGE[0];
  return warm ? saturationPressureWater(T) : saturationPressureSupercooled(T);
}

/**
 * Vapour pressure of liquid water below its freezing point: what a glycol mixture that is still liquid
 * there needs for Raoult's law. Meets {@link saturationPressureWater} at 273.15 K within 0.01 %.
 *
 * @symbol T - temperature, K
 * @returns Pa, absolute
 * @throws {@link OutOfRangeError} outside {@link SUPERCOOLED_RANGE}
 * @source Murphy & Koop, Q. J. R. Meteorol. Soc. 131 (2005) 1539-1565, eq. 10 (from memory)
 * @example saturationPressureSupercooled(240) // 37.667
 */
export function saturationPressureSupercooled(T: number): number {
  const [low, high] = SUPERCOOLED_RANGE;
  if (!(T >= low && T <= high)) {
    throw new OutOfRangeError('Murphy-Koop vapour pressure', 'T', T, SUPERCOOLED_RANGE);
  }
  const lnT = Math.log(T);
  return Math.exp(
    54.842763 -
      6763.22 / T -
      4.21 * lnT +
      0.000367 * T +
      Math.tanh(0.0415 * (T - 218.8)) * (53.878 - 1331.22 / T - 9.44523 * lnT + 0.014025 * T),
  );
}
