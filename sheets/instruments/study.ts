/** What the sheet asks the solver for, once per side. */
import type { Side } from '$lib/job/evaluate';
import { problemOf } from '$lib/job/problem';
import { toMeter } from '$lib/job/models/toMeter';
import { toBarometer } from '$lib/job/models/toProbe';
import { toReadings } from '$lib/job/models/toReadings';
import type { Outcome } from '$lib/job/types';
import { CHANNELS } from '$lib/solver/diagnosis/channels';
import { heatShare, probeWanted, shareOf } from '$lib/solver/instruments/plan/accuracy';
import { AIR_PLUS_MINUS } from '$lib/solver/instruments/plan/checks';
import * as plan from '$lib/solver/instruments/plan/formulas';
import { kFactor, readingFactor, type KFactor } from '$lib/solver/instruments/meter/kFactor';
import { airPressureOf, boilPoint, type Barometer } from '$lib/solver/instruments/probe/boilPoint';
import type { SteadySolution } from '$lib/solver/loop/types';
import { settledOf } from '../wiring/duty';
import { checksOf, type Check } from './checks';

/** The heat as flow and drop will show it, where the loop settles. */
export interface HeatReading {
  readonly settled: SteadySolution;
  readonly drop: number;
  /** ± of the heat, share. */
  readonly share: number;
  /** ± that each probe may have; null: the flow alone is less sure than wanted. */
  readonly wanted: number | null;
}

export interface Air {
  readonly barometer: Barometer;
  readonly pressure: number;
  readonly plusMinus: number;
  readonly boilPoint: number;
  /** ± of the boil point, K. */
  readonly boilPlusMinus: number;
}

export interface Study {
  readonly air: Outcome<Air>;
  readonly probe: number;
  readonly airProbe: number;
  /** ± of a drop, K: the spread found in one bath, else by two independent probes. */
  readonly pair: number;
  readonly pairFound: boolean;
  readonly flowShare: number;
  readonly flowBy: 'stated' | 'bucket' | 'usual';
  readonly heatWanted: number;
  readonly bore: number;
  readonly meterBore: number;
  /** Null where nothing flows, or no drop is to be seen. */
  readonly heat: HeatReading | null;
  readonly checks: readonly Check[];
  /** Channels of which the job holds a reading. */
  readonly read: ReadonlySet<string>;
}

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

function study(side: Side): Study {
  const { values } = side;
  const si = (path: string) => values[path]!.si!;
  const probe = si('instruments.probePlusMinus');
  const spread = values['instruments.bathSpread']!.si;
  const independent = plan.pairPlusMinus.value({ u_T: probe });
  const pair = spread ?? independent;
  const air = attempt(() => airOf(toBarometer(values)));
  const meter = toMeter(values);
  const test =
    meter.runs.length > 0 ? attempt(() => kFactor(meter.runs, meter.errors, meter.counting)) : null;
  const factor = test?.ok ? test.value : null;
  const flow = flowShareOf(values['instruments.flowPlusMinus']!.si, factor);
  const heatWanted = si('instruments.heatWanted');
  const boil = air.ok
    ? {
        value: air.value.boilPoint,
        plusMinus: plan.boilReadingPlusMinus.value({ u_T: probe, u_b: air.value.boilPlusMinus }),
      }
    : null;
  return {
    air,
    probe,
    airProbe: si('instruments.airPlusMinus'),
    pair,
    pairFound: spread !== undefined,
    ...flow,
    heatWanted,
    bore: side.loop.hoses.back.bore,
    meterBore: meter.bore,
    heat: heatOf(settledOf(side), pair, flow.flowShare, heatWanted),
    checks: checksOf(values, {
      probe,
      pair: independent,
      boil,
      meterError: meter.errorAllowed,
      meterShows: factor && readingFactor(factor.K, meter.statedK),
    }),
    read: new Set(toReadings(values).map((r) => r.channel)),
  };
}

function airOf(barometer: Barometer): Air {
  const pressure = airPressureOf(barometer);
  const plusMinus = AIR_PLUS_MINUS[barometer.by];
  return {
    barometer,
    pressure,
    plusMinus,
    boilPoint: boilPoint(pressure),
    boilPlusMinus: plan.boilPlusMinus.value({ p_a: pressure, u_p: plusMinus }),
  };
}

function flowShareOf(
  stated: number | undefined,
  factor: KFactor | null,
): Pick<Study, 'flowShare' | 'flowBy'> {
  if (stated !== undefined) return { flowShare: stated, flowBy: 'stated' };
  if (factor) return { flowShare: shareOf(factor.plusMinus, factor.K), flowBy: 'bucket' };
  return { flowShare: CHANNELS.flow.plusMinusShare, flowBy: 'usual' };
}

function heatOf(
  settled: SteadySolution | null,
  pair: number,
  flowShare: number,
  wanted: number,
): HeatReading | null {
  if (settled?.status !== 'balanced') return null;
  const { liquidIn, liquidOut, airIn } = settled.front;
  if (!(liquidIn > liquidOut && liquidOut > airIn)) return null;
  const drop = plan.expectedDrop.value({ T_in: liquidIn, T_out: liquidOut });
  return {
    settled,
    drop,
    share: heatShare({ flowShare, u_drop: pair, drop }),
    wanted: probeWanted({ wanted, flowShare, drop }),
  };
}
