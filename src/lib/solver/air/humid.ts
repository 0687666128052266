/** Moist air, and where the moisture of a compressed charge begins to condense. */
import { OutOfRangeError, requireWithin, type Interval } from '../errors';
import { brent } from '../numerics/root';
import {
  SATURATION_PRESSURE_RANGE,
  saturationPressureWater,
  saturationTemperatureWater,
} from '../fluids/saturation';
import { AIR_GAS_CONSTANT } from './air';

/** Molar mass of water over that of dry air. ASHRAE Fundamentals 2017, ch. 1. */
export const WATER_AIR_RATIO = 0.621945;

/** Ambient states covered. Dew points ask for a little moisture: at none there is no dew point. */
export const HUMID_RANGE = {
  T: [213.15, 333.15],
  relativeHumidity: [0, 1],
  p: [20e3, 120e3],
} as const satisfies Record<string, Interval>;
/** As {@link HUMID_RANGE} for a dew point. */
export const DEW_RANGE = { ...HUMID_RANGE, relativeHumidity: [0.001, 1] } as const;
/** Charge pressures covered by {@link compressedDewPoint}, Pa. */
export const CHARGE_PRESSURE_RANGE = [20e3, 1e6] as const satisfies Interval;
/** Vapour pressures for which a dew (or frost) point is given, Pa: 150 K to 100 °C. */
export const VAPOUR_PRESSURE_RANGE = [6.2e-6, 101e3] as const satisfies Interval;

/** A state of moist air. Relative humidity is over ice below the triple point, as ASHRAE has it. */
export interface MoistAir {
  /** Dry-bulb temperature, K. */
  readonly T: number;
  /** 0 to 1. */
  readonly relativeHumidity: number;
  /** Pressure of the mixture, Pa absolute. */
  readonly p: number;
}

const T_TRIPLE = 273.16;
const P_TRIPLE = 611.657;

/** Pressure over ice: IAPWS R14-08(2011), sublimation line, 50 to 273.16 K. */
function sublimationPressure(T: number): number {
  const t = T / T_TRIPLE;
  const sum =
    -0.212144006e2 * t ** 0.333333333e-2 +
    0.273203819e2 * t ** 1.20666667 +
    -0.61059813e1 * t ** 1.70333333;
  return P_TRIPLE * Math.exp(sum / t);
}

/** Vapour pressure over what water is at `T`: ice below the triple point, liquid above, Pa. */
export function saturationPressureAir(T: number): number {
  return T < T_TRIPLE ? sublimationPressure(T) : saturationPressureWater(T);
}

/**
 * Partial pressure of the water vapour.
 *
 * @formula p_w = phi * p_ws
 * @symbol phi - relative humidity, 1
 * @symbol p_ws - saturation pressure at the air's temperature, Pa
 * @returns Pa
 * @throws {@link OutOfRangeError} outside {@link HUMID_RANGE}
 * @source ASHRAE Fundamentals 2017, ch. 1; saturation by IAPWS (within 0.1 % of the handbook's)
 */
export function vapourPressure({ T, relativeHumidity, p }: MoistAir): number {
  requireWithin('moist air', HUMID_RANGE, { T, relativeHumidity, p });
  return relativeHumidity * saturationPressureAir(T);
}

/**
 * Mass of vapour per mass of dry air.
 *
 * @formula W = 0.621945 * p_w / (p - p_w)
 * @symbol p_w - partial pressure of the vapour, Pa
 * @symbol p - pressure of the mixture, Pa
 * @returns kg/kg
 * @throws {@link OutOfRangeError} outside {@link HUMID_RANGE}, or where the vapour alone would exceed `p`
 * @source ASHRAE Fundamentals 2017, ch. 1
 */
export function humidityRatio(air: MoistAir): number {
  return ratioAt(vapourPressure(air), air.p);
}

function ratioAt(p_w: number, p: number): number {
  if (!(p_w < p)) throw new OutOfRangeError('moist air', 'vapourPressure', p_w, [0, p]);
  return (WATER_AIR_RATIO * p_w) / (p - p_w);
}

/**
 * Partial pressure of the vapour in air of humidity ratio `W` at pressure `p`, Pa: the inverse of the ratio.
 *
 * @formula p_w = p * W / (0.621945 + W)
 * @symbol W - humidity ratio, 1
 * @symbol p - pressure of the mixture, Pa
 */
export function vapourPressureFromRatio(W: number, p: number): number {
  return (p * W) / (WATER_AIR_RATIO + W);
}

/**
 * Density of moist air, vapour included.
 *
 * @formula rho = p * (1 + W) / (R * T * (1 + W / 0.621945))
 * @symbol W - humidity ratio, 1
 * @symbol R - specific gas constant of dry air, J/(kg K)
 * @returns kg/m³
 * @throws {@link OutOfRangeError} outside {@link HUMID_RANGE}
 * @source ASHRAE Fundamentals 2017, ch. 1
 */
export function moistAirDensity(air: MoistAir): number {
  const W = humidityRatio(air);
  return (air.p * (1 + W)) / (AIR_GAS_CONSTANT * air.T * (1 + W / WATER_AIR_RATIO));
}

/**
 * Temperature at which vapour of partial pressure `p_w` begins to condense; the frost point below 0.01 °C.
 *
 * @param p_w - Pa
 * @returns K
 * @throws {@link OutOfRangeError} outside {@link VAPOUR_PRESSURE_RANGE}
 */
export function dewPointAtVapourPressure(p_w: number): number {
  const [low, high] = VAPOUR_PRESSURE_RANGE;
  if (!(p_w >= low && p_w <= high)) {
    throw new OutOfRangeError('dew point', 'vapourPressure', p_w, VAPOUR_PRESSURE_RANGE);
  }
  if (p_w >= P_TRIPLE && p_w >= SATURATION_PRESSURE_RANGE[0])
    return saturationTemperatureWater(p_w);
  return brent((T) => Math.log(sublimationPressure(T) / p_w), 150, T_TRIPLE, { xtol: 1e-9 }).x;
}

/**
 * Dew point of moist air, K.
 * @throws {@link OutOfRangeError} outside {@link DEW_RANGE}
 */
export function dewPoint(air: MoistAir): number {
  requireWithin('dew point', DEW_RANGE, { ...air });
  return dewPointAtVapourPressure(vapourPressure(air));
}

/**
 * Dew point of ambient air after compression: the vapour keeps its share, so its partial pressure rises
 * with the whole. Water drops out where a cooler's wall is colder than this.
 *
 * @formula p_w2 = p_w * p_charge / p
 * @symbol p_w - partial pressure of the vapour at ambient, Pa
 * @symbol p_charge - charge pressure, Pa, absolute
 * @symbol p - ambient pressure, Pa
 * @returns K
 * @throws {@link OutOfRangeError} outside {@link DEW_RANGE} or {@link CHARGE_PRESSURE_RANGE}
 */
export function compressedDewPoint(air: MoistAir & { readonly p_charge: number }): number {
  const { T, relativeHumidity, p, p_charge } = air;
  requireWithin('dew point', DEW_RANGE, { T, relativeHumidity, p });
  requireWithin('dew point', { p_charge: CHARGE_PRESSURE_RANGE }, { p_charge });
  return dewPointAtVapourPressure((vapourPressure(air) * p_charge) / p);
}

/**
 * Thermodynamic wet-bulb temperature: the balance of ASHRAE's equations (over ice below the triple
 * point), solved by root finding.
 *
 * @returns K
 * @throws {@link OutOfRangeError} outside {@link HUMID_RANGE}
 * @source ASHRAE Fundamentals 2017, ch. 1, humidity ratio from wet bulb, above and below freezing
 */
export function wetBulb(air: MoistAir): number {
  const W = humidityRatio(air);
  const t = air.T - 273.15;
  /** Humidity ratio that a wet bulb at T_wet would mean, less the one there is; kJ/kg, °C. */
  const excess = (T_wet: number) => {
    const w = T_wet - 273.15;
    const W_s = ratioAt(saturationPressureAir(T_wet), air.p);
    const sensible = 1.006 * (t - w);
    const meant =
      T_wet >= T_TRIPLE
        ? ((2501 - 2.326 * w) * W_s - sensible) / (2501 + 1.86 * t - 4.186 * w)
        : ((2830 - 0.24 * w) * W_s - sensible) / (2830 + 1.86 * t - 2.1 * w);
    return meant - W;
  };
  if (excess(air.T) <= 0) return air.T; // saturated: rounding may leave the root a hair above
  return brent(excess, 150, air.T, { xtol: 1e-9 }).x;
}
