/** What the sheet asks the solver for, once per side. */
import type { Side } from '$lib/job/evaluate';
import { problemOf } from '$lib/job/problem';
import { toMeter, type MeterJob } from '$lib/job/models/toMeter';
import type { Outcome } from '$lib/job/types';
import { kFactor, type KFactor } from '$lib/solver/instruments/meter/kFactor';
import {
  linearAbove,
  readableRange,
  slipLine,
  type ReadableRange,
  type SlipLine,
} from '$lib/solver/instruments/meter/lowFlow';
import {
  meterInLoop,
  withoutMeter,
  type MeterInLoop,
} from '$lib/solver/instruments/meter/meterInLoop';
import { isFrontFirst, leavingFirstCore } from '$lib/solver/loop/order';
import type { DutyId, HoseId, LoopTemperatures } from '$lib/solver/loop/types';
import { dutyOf } from '../wiring/duty';

export interface Study {
  readonly meter: MeterJob;
  /** The liquid passes the front exchanger before the charge cooler. */
  readonly frontFirst: boolean;
  /** Null without a run. */
  readonly test: Outcome<KFactor> | null;
  readonly slip: SlipLine | null;
  /** Flow above which one K holds, m³/s; null where no slip stands out from its own ±. */
  readonly above: number | null;
  readonly range: ReadableRange;
  /** K that counts from here on: measured, else as set in the reader; 1/m³. */
  readonly K: number;
  readonly duty: DutyId;
  /** The meter in the loop as it settles; null where the loop has no solution or no flow. */
  readonly inLoop: MeterInLoop | null;
  /** Temperature of the liquid in its run, K. */
  readonly liquidTemperature: number | null;
}

/** Liquid as it enters each run, K; the suction run keeps what leaves the reservoir. */
const liquidIn = (run: HoseId, t: LoopTemperatures, loop: Side['loop']): number =>
  ({
    suction: t.pumpIn,
    delivery: isFrontFirst(loop) ? t.frontIn : t.chargeCoolerIn,
    transfer: leavingFirstCore(t, loop),
    back: t.returning,
  })[run];

const known = new WeakMap<Side, Study>();

export function studyOf(side: Side): Study {
  let found = known.get(side);
  if (!found) known.set(side, (found = study(side)));
  return found;
}

function attempt<T>(work: () => T): Outcome<T> {
  try {
    return { ok: true, value: work() };
  } catch (thrown) {
    return { ok: false, problem: problemOf(thrown, 'US') };
  }
}

/** The slip stands out from its own uncertainty. */
export const stands = (slip: SlipLine | null): slip is SlipLine =>
  slip !== null && slip.slip > 2 * slip.slipSigma;

function study(side: Side): Study {
  const meter = toMeter(side.values);
  // K belongs to the meter: it goes with it into a candidate.
  const test =
    meter.runs.length > 0 ? attempt(() => kFactor(meter.runs, meter.errors, meter.counting)) : null;
  const duty = dutyOf(side);
  const settled = side.steady[duty];
  const s = settled.ok && settled.value.operating.flow > 0 ? settled.value : null;
  const placed =
    s &&
    attempt(() =>
      meterInLoop(
        meter.fitted ? withoutMeter(side.loop, meter.run, meter.loss) : side.loop,
        meter.run,
        meter.loss,
        { rho: s.liquid.density, mu: s.liquid.viscosity },
        meter.among,
      ),
    );
  const slip = test?.ok ? slipLine(test.value) : null;
  const above = stands(slip) ? linearAbove(slip.slip, meter.errorAllowed) : null;
  const K = test?.ok ? test.value.K : meter.statedK;
  return {
    meter,
    frontFirst: isFrontFirst(side.loop),
    test,
    slip,
    above,
    range: readableRange(above, meter, meter.input, K),
    K,
    duty,
    inLoop: placed?.ok ? placed.value : null,
    liquidTemperature: s ? liquidIn(meter.run, s.temperatures, side.loop) : null,
  };
}
