import { fallingCurve } from '$lib/solver/hydraulics/fallingCurve';
import { intersection } from '$lib/solver/hydraulics/intersection';
import type { PumpModel } from '$lib/solver/hydraulics/pump';
import type { LossCurve } from '$lib/solver/hydraulics/ratedLoss';
import { pchip } from '$lib/solver/numerics/interpolate';
import type { Adapter } from '../harness';
import {
  headAt,
  powerLoss,
  pumpSet,
  quadraticHead,
  runOut,
  severalPumps,
  twoPartLoss,
} from './curves';

function meet(pump: PumpModel, system: LossCurve, H_static = 0) {
  const point = intersection(pump.head, (Q) => H_static + system.loss(Q), pump.runOut);
  return { Q: point.flow, H: point.lift };
}

export const operatingPointAdapters: Record<string, Adapter> = {
  'quadratic-quadratic': (given) => {
    const pump = pumpSet(quadraticHead(given));
    return meet(pump, powerLoss(given.number('b'), 2, pump.runOut), given.numberOr('H_static', 0));
  },
  'quadratic-linear-quadratic': (given) => {
    const pump = pumpSet(quadraticHead(given));
    return meet(pump, twoPartLoss(given.number('c'), given.number('b'), pump.runOut));
  },
  'power-law-system': (given) => {
    const pump = pumpSet(quadraticHead(given));
    return meet(pump, powerLoss(given.number('b'), given.number('exponent'), pump.runOut));
  },
  'at-speed': (given) => {
    const pump = pumpSet(quadraticHead(given), { speedRatio: given.number('speed_ratio') });
    return meet(pump, powerLoss(given.number('b'), 2, pump.runOut));
  },
  'pumps-in-parallel': (given) => {
    const arrangement = severalPumps(given, 'two-in-parallel');
    const pump = pumpSet(quadraticHead(given), { arrangement });
    return meet(pump, powerLoss(given.number('b'), 2, pump.runOut));
  },
  'pumps-in-series': (given) => {
    const arrangement = severalPumps(given, 'two-in-series');
    const pump = pumpSet(quadraticHead(given), { arrangement });
    return meet(pump, powerLoss(given.number('b'), 2, pump.runOut));
  },
  // A head that first rises is no pump the solver accepts from a user, but its root and slope are.
  'sagging-curve': (given) => {
    const curve = {
      shutOff: given.number('H_shutoff'),
      a1: given.number('a1'),
      a2: given.number('a2'),
    };
    const end = runOut(curve);
    const flows = Array.from({ length: 4001 }, (_, i) => (end * i) / 4000);
    const pump = pchip(
      flows,
      flows.map((Q) => headAt(curve, Q)),
    );
    const system = powerLoss(given.number('b'), 2, end);
    const { flow, lift } = intersection(pump.value, system.loss, end);
    return { Q: flow, H: lift, slope_pump: pump.slope(flow), slope_system: system.slope(flow) };
  },
  'fan-straight-line': (given) => {
    const Q_free = given.number('Q_free');
    const ends = [
      { flow: 0, lift: given.number('dp_shutoff') },
      { flow: Q_free, lift: 0 },
    ];
    const fan = fallingCurve(ends, 'fans.curve', 'pressure');
    const core = twoPartLoss(given.number('k1'), given.number('k2'), Q_free);
    const { flow, lift } = intersection(fan.value, core.loss, Q_free);
    return { Q: flow, dp: lift };
  },
};
