/** What a flow meter takes from the loop it measures, and where it may sit. */
import { requireWithin, type Interval } from '../../errors';
import type { FlowingLiquid } from '../../hydraulics/hose';
import { hydraulicModel } from '../../hydraulics/operatingPoint';
import type { HoseId, Loop } from '../../loop/types';

export interface MeterLoss {
  /** Flow of the maker's rating, m³/s, with cold water. */
  readonly ratedFlow: number;
  /** Pressure lost there, Pa. */
  readonly ratedLoss: number;
}

export const METER_LOSS_RANGE = {
  ratedFlow: [1e-6, 0.02],
  ratedLoss: [0, 1e6],
} as const satisfies Record<string, Interval>;

/** Density of the water of a maker's rating, kg/m³, at 20 °C (IAPWS). */
export const RATING_DENSITY = 998.2;

/**
 * Pressure lost in the meter: as the square of the flow, and as the density.
 *
 * @formula dp = dp_r * (Q / Q_r)^2 * rho / rho_r
 * @symbol dp_r - loss at the rated flow with water, Pa
 * @symbol Q - flow, m³/s
 * @symbol Q_r - rated flow, m³/s
 * @symbol rho - density of the liquid, kg/m³
 * @symbol rho_r - density of water, 998.2 kg/m³
 * @returns Pa
 * @throws {@link OutOfRangeError} outside {@link METER_LOSS_RANGE}
 * @source Darcy-Weisbach, turbulent, one rating point
 * @example meterLoss({ ratedFlow: 5e-4, ratedLoss: 2e4 }, 2.5e-4, 998.2) // 5000
 */
export function meterLoss({ ratedFlow, ratedLoss }: MeterLoss, flow: number, rho: number): number {
  requireWithin('flow meter', METER_LOSS_RANGE, { ratedFlow, ratedLoss });
  return ratedLoss * (flow / ratedFlow) ** 2 * (rho / RATING_DENSITY);
}

/**
 * Loss coefficient of the meter on a bore: what makes its rated loss with water in that hose.
 *
 * @formula k = 2 * dp_r * (pi * d^2 / 4)^2 / (rho_r * Q_r^2)
 * @symbol d - bore of the hose, m
 * @returns k, 1
 */
export function meterK({ ratedFlow, ratedLoss }: MeterLoss, bore: number): number {
  requireWithin('flow meter', METER_LOSS_RANGE, { ratedFlow, ratedLoss });
  const area = (Math.PI / 4) * bore * bore;
  return (2 * ratedLoss * area * area) / (RATING_DENSITY * ratedFlow * ratedFlow);
}

/** The loop with the meter in one of its runs. */
export const withMeter = (loop: Loop, run: HoseId, loss: MeterLoss): Loop =>
  withMoreK(loop, run, meterK(loss, loop.hoses[run].bore));

/** The loop that {@link withMeter} was given. */
export const withoutMeter = (loop: Loop, run: HoseId, loss: MeterLoss): Loop =>
  withMoreK(loop, run, -meterK(loss, loop.hoses[run].bore));

function withMoreK(loop: Loop, run: HoseId, k: number): Loop {
  const hose = loop.hoses[run];
  // Taking off what was put on may leave a rounding below nothing.
  const otherK = Math.max(0, hose.otherK + k);
  return { ...loop, hoses: { ...loop.hoses, [run]: { ...hose, otherK } } };
}

/** What the meter does to the loop, the liquid as warm as it is. */
export interface MeterInLoop {
  /** Flow without the meter, m³/s. */
  readonly without: number;
  /** Flow with it, m³/s. */
  readonly with: number;
  /** Lost in it at that flow, Pa. */
  readonly loss: number;
  readonly density: number;
}

/**
 * Flow with and without the meter.
 * @param among - its loss is already among those of the loop described, so that loop is the one with it
 * @throws {@link OutOfRangeError} outside {@link METER_LOSS_RANGE}
 */
export function meterInLoop(
  loop: Loop,
  run: HoseId,
  loss: MeterLoss,
  liquid: FlowingLiquid,
  among: boolean,
): MeterInLoop {
  const described = hydraulicModel(loop).flowAt(liquid);
  const flow = among ? described : hydraulicModel(withMeter(loop, run, loss)).flowAt(liquid);
  return {
    without: described,
    with: flow,
    loss: meterLoss(loss, flow, liquid.rho),
    density: liquid.rho,
  };
}

/** Straight hose a turbine wants, in bores (common practice, no source; the maker's sheet goes first). */
export const STRAIGHT = { before: 10, after: 5 } as const;

/**
 * Straight length, m.
 * @formula L = n * d
 * @symbol n - bores wanted, 1
 * @symbol d - bore, m
 */
export const straightLength = (bores: number, bore: number): number => bores * bore;
