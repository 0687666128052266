/** Affinity laws of pumps, fan laws, hydraulic and shaft power. */
import { requireWithin, type Interval } from '../errors';

/** Standard gravity, m/s² (exact by definition). */
export const g = 9.80665;

/** Enforced by {@link shaftPower}; the lowest efficiency only catches a slip of the unit. */
export const SHAFT_RANGE = {
  P_hydraulic: [0, 1e7],
  efficiency: [1e-3, 1],
} as const satisfies Record<string, Interval>;

export interface PumpState {
  /** Flow, m³/s. */
  readonly Q: number;
  /** Head, m. */
  readonly H: number;
  /** Power, W. */
  readonly P: number;
}

/**
 * The similar point of a pump at another speed: flow with speed, head with its square, power with
 * its cube.
 *
 * @symbol speedRatio - speed over the speed of the point given, 1
 * @source Affinity laws; ISO 9906:2012
 * @example pumpAffinity({ Q: 0.001, H: 6, P: 100 }, 0.8).H // 3.84
 */
export function pumpAffinity({ Q, H, P }: PumpState, speedRatio: number): PumpState {
  return { Q: Q * speedRatio, H: H * speedRatio ** 2, P: P * speedRatio ** 3 };
}

export interface FanState {
  /** Flow, m³/s. */
  readonly Q: number;
  /** Pressure, Pa. */
  readonly dp: number;
  /** Power, W. */
  readonly P: number;
}

/**
 * The similar point of a fan at another speed and air density.
 *
 * @symbol speedRatio - speed over the speed of the point given, 1
 * @symbol densityRatio - air density over that of the point given, 1
 * @source Fan laws; ISO 5801:2017
 * @example fanLaws({ Q: 0.8, dp: 200, P: 240 }, { speedRatio: 0.9, densityRatio: 1 }).dp // 162
 */
export function fanLaws(
  { Q, dp, P }: FanState,
  { speedRatio, densityRatio }: { speedRatio: number; densityRatio: number },
): FanState {
  return {
    Q: Q * speedRatio,
    dp: dp * speedRatio ** 2 * densityRatio,
    P: P * speedRatio ** 3 * densityRatio,
  };
}

/**
 * Power that ends up in the liquid as head and flow, W.
 *
 * @formula P = rho * g * Q * H
 * @symbol rho - density, kg/m^3
 * @symbol g - standard gravity 9.80665 m/s^2
 * @symbol Q - flow, m^3/s
 * @symbol H - head, m
 * @source Definition
 * @example hydraulicPower({ rho: 1040, Q: 0.001, H: 5 }) // 50.99458
 */
export function hydraulicPower({ rho, Q, H }: { rho: number; Q: number; H: number }): number {
  return rho * g * Q * H;
}

/**
 * Power at the pump's shaft, W: of it the share `efficiency` ends up as head and flow.
 *
 * @formula P = P_hydraulic / efficiency
 * @symbol P_hydraulic - power that ends up as head and flow, W
 * @symbol efficiency - of the pump, shaft to liquid, 1
 * @throws {@link OutOfRangeError} for an efficiency not above 0 or above 1
 * @source Definition
 * @example shaftPower({ P_hydraulic: 50, efficiency: 0.4 }) // 125
 */
export function shaftPower({
  P_hydraulic,
  efficiency,
}: {
  P_hydraulic: number;
  efficiency: number;
}): number {
  requireWithin('shaft power', SHAFT_RANGE, { P_hydraulic, efficiency });
  return P_hydraulic / efficiency;
}

/**
 * What the pump loses inside, W: shaft power that never becomes head and flow. All of it warms the
 * liquid where the casing gives nothing away; head and flow themselves warm it too, round the loop.
 *
 * @formula P_loss = P_hydraulic * (1 / efficiency - 1)
 * @symbol P_hydraulic - power that ends up as head and flow, W
 * @symbol efficiency - of the pump, shaft to liquid, 1
 * @throws {@link OutOfRangeError} for an efficiency not above 0 or above 1
 * @source Definition
 * @example pumpLoss({ P_hydraulic: 50, efficiency: 0.4 }) // 75
 */
export function pumpLoss(shaft: { P_hydraulic: number; efficiency: number }): number {
  return shaftPower(shaft) - shaft.P_hydraulic;
}

/**
 * Head of a pressure, m of the liquid.
 *
 * @formula h = dp / (rho * g)
 * @symbol dp - pressure, Pa
 * @symbol rho - density, kg/m^3
 * @source Definition
 * @example headOf({ dp: 9806.65, rho: 1000 }) // 1
 */
export function headOf({ dp, rho }: { dp: number; rho: number }): number {
  return dp / (rho * g);
}
