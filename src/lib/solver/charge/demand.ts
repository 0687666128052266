import { requireWithin, type Interval } from '../errors';

/** Per kilowatt-hour: 0.15 kg (the best diesel) to 1.2 kg (alcohol, rich). Ours, to catch a wrong unit. */
export const POWER_DEMAND_RANGE = {
  power: [0, 3e6],
  fuelUse: [0.15 / 3.6e6, 1.2 / 3.6e6],
  airFuelRatio: [4, 60],
} as const satisfies Record<string, Interval>;

/**
 * Air an engine breathes, from its power.
 *
 * @formula m_air = P * b * AFR
 * @symbol P - power at the crankshaft, W
 * @symbol b - brake specific fuel consumption, kg/J
 * @symbol AFR - air over fuel by mass, 1
 * @returns air mass flow, kg/s
 * @throws {@link OutOfRangeError} outside {@link POWER_DEMAND_RANGE}
 * @source definition
 * @example airMassFlowFromPower({ power: 447420, fuelUse: 9.2932e-8, airFuelRatio: 11.8 }) // 0.49064
 */
export function airMassFlowFromPower({
  power,
  fuelUse,
  airFuelRatio,
}: {
  power: number;
  fuelUse: number;
  airFuelRatio: number;
}): number {
  requireWithin('air from power', POWER_DEMAND_RANGE, { power, fuelUse, airFuelRatio });
  return power * fuelUse * airFuelRatio;
}

/** Ours, to catch a wrong unit (litres for cubic metres, per minute for per second) or a NaN. */
export const SPEED_DENSITY_RANGE = {
  displacement: [5e-5, 0.05],
  rotation: [0, 350],
  volumetricEfficiency: [0.1, 1.6],
  p_manifold_abs: [5e3, 1e6],
  T_manifold: [200, 700],
  R: [280, 470],
  revsPerCycle: [1, 2],
} as const satisfies Record<string, Interval>;

/**
 * Air an engine breathes, by speed and density.
 *
 * @formula m_air = eta_v * V_d * N / n_r * p / (R * T)
 * @symbol eta_v - volumetric efficiency on manifold density, 1
 * @symbol V_d - displacement, m^3
 * @symbol N - revolutions per second, 1/s
 * @symbol n_r - revolutions per intake stroke of one cylinder (2: four-stroke), 1
 * @symbol p - manifold pressure, absolute, Pa
 * @symbol R - gas constant of the air, J/(kg K)
 * @symbol T - manifold temperature, K
 * @returns air mass flow, kg/s
 * @throws {@link OutOfRangeError} outside {@link SPEED_DENSITY_RANGE}
 * @source Heywood, Internal Combustion Engine Fundamentals, sec. 2.10
 * @example airMassFlowSpeedDensity({ displacement: 0.0062, rotation: 100, volumetricEfficiency: 0.95, p_manifold_abs: 170000, T_manifold: 323.15, R: 287.05 }) // 0.53972
 */
export function airMassFlowSpeedDensity({
  displacement,
  rotation,
  volumetricEfficiency,
  p_manifold_abs,
  T_manifold,
  R,
  revsPerCycle = 2,
}: {
  displacement: number;
  rotation: number;
  volumetricEfficiency: number;
  p_manifold_abs: number;
  T_manifold: number;
  R: number;
  revsPerCycle?: number;
}): number {
  requireWithin('speed-density', SPEED_DENSITY_RANGE, {
    displacement,
    rotation,
    volumetricEfficiency,
    p_manifold_abs,
    T_manifold,
    R,
    revsPerCycle,
  });
  return (
    ((volumetricEfficiency * displacement * rotation) / revsPerCycle) *
    (p_manifold_abs / (R * T_manifold))
  );
}
