/**
 * The reference states pumps and systems as polynomials; the solver takes points. Points lie so close
 * here that what the interpolation adds is far below the tolerance of the cases.
 */
import { pumpModel, type PumpModel } from '$lib/solver/hydraulics/pump';
import { ratedLoss, type LossCurve } from '$lib/solver/hydraulics/ratedLoss';
import type { Pump } from '$lib/solver/loop/types';
import { Unsupported, type Given } from '../given';

/** H = shutOff - a1 Q - a2 Q². */
export interface HeadCurve {
  readonly shutOff: number;
  readonly a1: number;
  readonly a2: number;
}

export const quadraticHead = (given: Given): HeadCurve => ({
  shutOff: given.number('H_shutoff'),
  a1: 0,
  a2: given.number('a'),
});

export const headAt = ({ shutOff, a1, a2 }: HeadCurve, Q: number): number =>
  shutOff - a1 * Q - a2 * Q * Q;

/** Flow at which the curve lifts nothing. */
export const runOut = ({ shutOff, a1, a2 }: HeadCurve): number =>
  (2 * shutOff) / (a1 + Math.sqrt(a1 * a1 + 4 * a2 * shutOff));

const POINTS = 4000;

export interface SetOptions {
  readonly speedRatio?: number;
  readonly arrangement?: Pump['arrangement'];
}

/** The solver's pump with this head at full speed. */
export function pumpSet(
  curve: HeadCurve,
  { speedRatio = 1, arrangement = 'one' }: SetOptions = {},
): PumpModel {
  const end = runOut(curve);
  const points = Array.from({ length: POINTS + 1 }, (_, i) => {
    const flow = (end * i) / POINTS;
    return { flow, head: i === POINTS ? 0 : headAt(curve, flow) };
  });
  return pumpModel({
    curve: points,
    ratedVolts: 1,
    volts: speedRatio,
    motor: 'brushed',
    cutoutVolts: 0,
    arrangement,
    electricPower: 0,
    heatShare: 0,
    npshRequired: 0,
  });
}

/** The solver offers one pump or two of a kind. */
export function severalPumps(
  given: Given,
  way: 'two-in-series' | 'two-in-parallel',
): Pump['arrangement'] {
  const number = given.number('number');
  if (number === 1) return 'one';
  if (number !== 2) throw new Unsupported(`${number} pumps`);
  return way;
}

const FLUID = { rho: 1, mu: 1 };

/** The solver's restriction c Q + b Q². */
export function twoPartLoss(c: number, b: number, Q: number): LossCurve {
  const point = (flow: number) => ({ flow, loss: c * flow + b * flow * flow });
  return ratedLoss({ points: [point(Q), point(Q / 2)], exponent: 2 }, FLUID, 'system').for(FLUID);
}

/** The solver's restriction b Q^n. */
export function powerLoss(b: number, n: number, Q: number): LossCurve {
  const points = [{ flow: Q, loss: b * Q ** n }];
  return ratedLoss({ points, exponent: n }, FLUID, 'system').for(FLUID);
}
