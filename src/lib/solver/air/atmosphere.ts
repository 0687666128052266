/** Standard atmosphere: pressure and temperature by altitude. */
import { OutOfRangeError, type Interval } from '../errors';

/** Geopotential altitudes covered here, m: the lowest layer of the standard, where vehicles are. */
export const ALTITUDE_RANGE = [-500, 11000] as const satisfies Interval;

/** ISO 2533:1975 (from memory): sea level, gradient, gas constant, gravity, nominal radius of the earth. */
export const STANDARD_ATMOSPHERE = {
  p0: 101325, // Pa
  T0: 288.15, // K
  gradient: 0.0065, // K lost per m
  R: 287.05287, // J/(kg K)
  g: 9.80665, // m/s²
  radius: 6356766, // m
} as const;

const { p0, T0, gradient, R, g, radius } = STANDARD_ATMOSPHERE;

/** Altitude at which the gradient would have used up all of T0, m: turns the law into 1 - h/H. */
export const GRADIENT_HEIGHT = T0 / gradient;
/** Exponent of the pressure law, g / (R gradient). */
export const PRESSURE_EXPONENT = g / (R * gradient);

const PRESSURE_RANGE: Interval = [pressure(ALTITUDE_RANGE[1]), pressure(ALTITUDE_RANGE[0])];

function pressure(h: number): number {
  return p0 * (1 - h / GRADIENT_HEIGHT) ** PRESSURE_EXPONENT;
}

/**
 * Pressure at altitude. Weather moves the true barometer by some ±3 %: a reading beats this.
 *
 * @formula p = p_0 * (1 - h / H)^n
 * @symbol p_0 - pressure at sea level, 101325 Pa
 * @symbol h - geopotential altitude, m
 * @symbol H - standard temperature over its gradient, 288.15 K / 0.0065 K/m
 * @symbol n - g / (R L), 5.25588
 * @returns Pa
 * @throws {@link OutOfRangeError} outside {@link ALTITUDE_RANGE}
 * @source ISO 2533:1975
 * @example pressureAtAltitude(1000) // 89874.56
 */
export function pressureAtAltitude(h: number): number {
  requireAltitude(h);
  return pressure(h);
}

/**
 * Standard temperature at geopotential altitude `h`, K.
 * @throws {@link OutOfRangeError} outside {@link ALTITUDE_RANGE}
 * @source ISO 2533:1975
 */
export function temperatureAtAltitude(h: number): number {
  requireAltitude(h);
  return T0 - gradient * h;
}

/**
 * Geopotential altitude at which the standard atmosphere has pressure `p`: inverse of {@link pressureAtAltitude}.
 * @symbol p - pressure, Pa
 * @returns m
 * @throws {@link OutOfRangeError} for pressures outside those of {@link ALTITUDE_RANGE}
 */
export function altitudeAtPressure(p: number): number {
  if (!(p >= PRESSURE_RANGE[0] && p <= PRESSURE_RANGE[1])) {
    throw new OutOfRangeError('standard atmosphere', 'p', p, PRESSURE_RANGE);
  }
  return GRADIENT_HEIGHT * (1 - (p / p0) ** (1 / PRESSURE_EXPONENT));
}

/**
 * Geopotential from geometric altitude; they differ by 1 m at 2.5 km.
 *
 * @formula H = r * z / (r + z)
 * @symbol r - nominal radius of the earth, 6356766 m
 * @symbol z - height above sea level as a map gives it, m
 * @returns m
 * @throws {@link OutOfRangeError} when the answer is outside {@link ALTITUDE_RANGE}
 * @source ISO 2533:1975
 */
export function geopotentialAltitude(z: number): number {
  const h = (radius * z) / (radius + z);
  requireAltitude(h);
  return h;
}

function requireAltitude(h: number): void {
  if (!(h >= ALTITUDE_RANGE[0] && h <= ALTITUDE_RANGE[1])) {
    throw new OutOfRangeError('standard atmosphere', 'altitude', h, ALTITUDE_RANGE);
  }
}
