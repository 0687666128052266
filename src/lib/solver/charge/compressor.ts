import { OutOfRangeError, requireWithin, type Interval } from '../errors';

/** Ratio of specific heats of air, taken constant; 1.39 at 500 K, worth about 1 % of the rise. */
export const GAMMA_AIR = 1.4;

/** What a compressor of a boosted engine can be; outside, the description is wrong. */
export const COMPRESSOR_RANGE = {
  T_in: [200, 500],
  pressureRatio: [1, 6],
  efficiency: [0.2, 1],
  gamma: [1.2, 1.67],
} as const satisfies Record<string, Interval>;

export interface Compression {
  readonly T_in: number;
  readonly pressureRatio: number;
  readonly efficiency: number;
  readonly gamma?: number;
}

/** Rise over T_in of a compression without loss: PR^((gamma-1)/gamma) - 1. */
const idealRise = (pressureRatio: number, gamma: number): number =>
  Math.expm1(((gamma - 1) / gamma) * Math.log(pressureRatio));

/**
 * Outlet temperature of a compressor with no loss and no heat given away.
 *
 * @formula T_s = T_in * PR^((gamma - 1)/gamma)
 * @symbol T_in - inlet temperature, K
 * @symbol PR - outlet over inlet pressure, absolute, 1
 * @symbol gamma - ratio of specific heats, 1
 * @returns outlet temperature, K
 * @throws {@link OutOfRangeError} outside {@link COMPRESSOR_RANGE}
 * @source any thermodynamics text
 * @example isentropicOutlet({ T_in: 298.15, pressureRatio: 2 }) // 363.449
 */
export function isentropicOutlet({
  T_in,
  pressureRatio,
  gamma = GAMMA_AIR,
}: Omit<Compression, 'efficiency'>): number {
  requireWithin('isentropic compression', COMPRESSOR_RANGE, {
    T_in,
    pressureRatio,
    efficiency: 1,
    gamma,
  });
  return T_in * (1 + idealRise(pressureRatio, gamma));
}

/**
 * Outlet temperature of a compressor.
 *
 * @formula T_out = T_in * (1 + (PR^((gamma - 1)/gamma) - 1) / eta)
 * @symbol T_in - inlet temperature, K
 * @symbol PR - outlet over inlet pressure, absolute, 1
 * @symbol gamma - ratio of specific heats, 1
 * @symbol eta - isentropic ("adiabatic") efficiency, 1
 * @returns outlet temperature, K
 * @throws {@link OutOfRangeError} outside {@link COMPRESSOR_RANGE}
 * @source any thermodynamics text
 * @example compressorOutlet({ T_in: 298.15, pressureRatio: 2, efficiency: 0.7 }) // 391.434
 */
export function compressorOutlet({
  T_in,
  pressureRatio,
  efficiency,
  gamma = GAMMA_AIR,
}: Compression): number {
  requireWithin('compressor outlet', COMPRESSOR_RANGE, { T_in, pressureRatio, efficiency, gamma });
  return T_in * (1 + idealRise(pressureRatio, gamma) / efficiency);
}

/**
 * Power the compressor puts into the air.
 *
 * @formula P = m * cp * (T_out - T_in)
 * @symbol m - air through the compressor, kg/s
 * @symbol cp - specific heat of air, J/(kg K)
 * @symbol T_in - inlet temperature, K
 * @symbol T_out - outlet temperature by {@link compressorOutlet}, K
 * @returns power, W
 * @throws {@link OutOfRangeError} outside {@link COMPRESSOR_RANGE}
 * @source first law, steady flow
 * @example compressorPower({ T_in: 298.15, pressureRatio: 1.8, efficiency: 0.68, massFlow: 0.25, cp: 1005 }) // 20144.7
 */
export function compressorPower({
  massFlow,
  cp,
  ...compression
}: Compression & { massFlow: number; cp: number }): number {
  return massFlow * cp * (compressorOutlet(compression) - compression.T_in);
}

/**
 * Efficiency of a compressor from the temperatures at both ends.
 *
 * @formula eta = (PR^((gamma - 1)/gamma) - 1) / (T_out/T_in - 1)
 * @symbol PR - outlet over inlet pressure, absolute, 1
 * @symbol gamma - ratio of specific heats, 1
 * @symbol T_in - inlet temperature, K
 * @symbol T_out - outlet temperature, K
 * @returns efficiency, 1
 * @throws {@link OutOfRangeError} outside {@link COMPRESSOR_RANGE}, or when the air leaves colder than
 *   compression without loss allows (a probe is wrong)
 * @source any thermodynamics text
 * @example compressorEfficiency({ T_in: 298.15, T_out: 390, pressureRatio: 2 }) // 0.71093
 */
export function compressorEfficiency({
  T_in,
  T_out,
  pressureRatio,
  gamma = GAMMA_AIR,
}: {
  T_in: number;
  T_out: number;
  pressureRatio: number;
  gamma?: number;
}): number {
  const least = isentropicOutlet({ T_in, pressureRatio, gamma });
  if (!(T_out >= least && T_out > T_in)) {
    throw new OutOfRangeError('compressor efficiency', 'T_out', T_out, [least, Infinity]);
  }
  return (least - T_in) / (T_out - T_in);
}

/** Pressures that must be above zero, Pa. */
const PRESSURE_RANGE = { p_inlet: [1e3, 2e5], p_outlet: [1e3, 1e6] } as const;

/**
 * Pressure ratio across the compressor.
 *
 * @formula PR = (p_manifold_abs + dp_charge_cooler) / (p_ambient - dp_inlet)
 * @symbol p_ambient - barometric pressure, Pa
 * @symbol dp_inlet - lost before the compressor (filter, ducts), Pa
 * @symbol p_manifold_abs - in the manifold, absolute, Pa
 * @symbol dp_charge_cooler - lost by the charge air between compressor and manifold, Pa
 * @returns pressure ratio, 1
 * @throws {@link OutOfRangeError} when nothing is left at the inlet or no pressure is in the manifold
 * @source definition
 * @example pressureRatio({ p_ambient: 101325, dp_inlet: 2000, p_manifold_abs: 180000, dp_charge_cooler: 7000 }) // 1.88271
 */
export function pressureRatio({
  p_ambient,
  dp_inlet,
  p_manifold_abs,
  dp_charge_cooler,
}: {
  p_ambient: number;
  dp_inlet: number;
  p_manifold_abs: number;
  dp_charge_cooler: number;
}): number {
  const p_inlet = p_ambient - dp_inlet;
  const p_outlet = p_manifold_abs + dp_charge_cooler;
  requireWithin('pressure ratio', PRESSURE_RANGE, { p_inlet, p_outlet });
  return p_outlet / p_inlet;
}
