/** The two temperatures a kitchen gives for nothing: ice in water, and water at the boil. */
import { requireWithin, type Interval } from '../../errors';
import {
  GRADIENT_HEIGHT,
  PRESSURE_EXPONENT,
  STANDARD_ATMOSPHERE,
  pressureAtAltitude,
} from '../../air/atmosphere';
import { coolantBoilingPoint } from '../../fluids/coolant';

/** Melting ice in water at any pressure of the air, K; to a few thousandths. */
export const ICE_POINT = 273.15;

/** How the pressure of the air is known. */
export type Barometer =
  /** Altitude alone, m: the standard atmosphere stands in for the weather. */
  | { readonly by: 'altitude'; readonly altitude: number }
  /** A barometer in the same room, Pa. */
  | { readonly by: 'station'; readonly pressure: number }
  /** A weather report, Pa: reduced to sea level, so it has to be taken back up. */
  | { readonly by: 'report'; readonly pressure: number; readonly altitude: number };

/** Pressures of air that occur where vehicles are, Pa; as reported, reduced to sea level. */
export const BAROMETER_RANGE = {
  station: [4.5e4, 1.1e5],
  report: [8.7e4, 1.09e5],
} as const satisfies Record<string, Interval>;

/**
 * Pressure at a place from the pressure that a weather report gives for sea level.
 *
 * @formula p = (p_r^(1/n) - p_0^(1/n) * h / H)^n
 * @symbol p_r - reported pressure, reduced to sea level, Pa
 * @symbol p_0 - standard pressure at sea level, 101325 Pa
 * @symbol h - altitude, m
 * @symbol H - standard temperature over its gradient, m
 * @symbol n - 5.25588
 * @returns Pa
 * @throws {@link OutOfRangeError} outside {@link BAROMETER_RANGE}
 * @source altimeter setting by the standard atmosphere, ISO 2533 (reduction from memory)
 */
export function stationPressure(p_r: number, h: number): number {
  requireWithin('barometer', { report: BAROMETER_RANGE.report }, { report: p_r });
  pressureAtAltitude(h); // refuses altitudes outside the standard atmosphere's layer
  const k = 1 / PRESSURE_EXPONENT;
  return (p_r ** k - (STANDARD_ATMOSPHERE.p0 ** k * h) / GRADIENT_HEIGHT) ** PRESSURE_EXPONENT;
}

/** Pressure of the air, Pa, however it is known. @throws OutOfRangeError outside {@link BAROMETER_RANGE} */
export function airPressureOf(barometer: Barometer): number {
  switch (barometer.by) {
    case 'altitude':
      return pressureAtAltitude(barometer.altitude);
    case 'station':
      requireWithin(
        'barometer',
        { station: BAROMETER_RANGE.station },
        { station: barometer.pressure },
      );
      return barometer.pressure;
    case 'report':
      return stationPressure(barometer.pressure, barometer.altitude);
  }
}

/**
 * Temperature of water at an open boil, K.
 * @param p - pressure of the air, Pa
 * @source IAPWS R7-97(2012), region 4
 * @example boilPoint(101325) // 373.124
 */
export const boilPoint = (p: number): number =>
  coolantBoilingPoint({ kind: 'water', massFraction: 0 }, p);
