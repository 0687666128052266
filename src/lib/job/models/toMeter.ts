/** From the blanks of a flow meter to its bucket test, its figures and its place. */
import type { BucketErrors, BucketRun, Counting } from '$lib/solver/instruments/meter/kFactor';
import type { PulseInput } from '$lib/solver/instruments/meter/lowFlow';
import type { MeterLoss } from '$lib/solver/instruments/meter/meterInLoop';
import type { HoseId } from '$lib/solver/loop/types';
import type { Values } from '../values';

/** A flow meter as entered. */
export interface MeterJob {
  readonly runs: readonly BucketRun[];
  readonly errors: BucketErrors;
  readonly counting: Counting;
  /** K-factor the reader divides by, 1/m³. */
  readonly statedK: number;
  readonly lowest: number;
  readonly highest: number;
  /** Share. */
  readonly errorAllowed: number;
  readonly hottest: number;
  readonly input: PulseInput;
  readonly gate: number;
  readonly run: HoseId;
  /** Its loss is added to the run it sits in. */
  readonly fitted: boolean;
  /** Its loss was entered among those of the loop. */
  readonly among: boolean;
  readonly bore: number;
  readonly straightBefore: number;
  readonly straightAfter: number;
  readonly loss: MeterLoss;
}

/** Never throws: what cannot be is refused where it is used. */
export function toMeter(values: Values): MeterJob {
  const si = (path: string) => values[`meter.${path}`]!.si!;
  const choice = (path: string) => values[`meter.${path}`]!.choice!;
  return {
    runs: values['meter.runs']!.rows!.map(({ volume, time, pulses }) => ({
      volume: volume as number,
      time: time as number,
      pulses: pulses as number,
    })),
    errors: {
      volume: si('volumePlusMinus'),
      time: si('timePlusMinus'),
      pulses: si('pulsesPlusMinus'),
      bucket: si('bucketPlusMinus'),
    },
    counting: choice('counting') as Counting,
    statedK: si('statedK'),
    lowest: si('lowest'),
    highest: si('highest'),
    errorAllowed: si('errorAllowed'),
    hottest: si('hottest'),
    input: { highest: si('inputHighest'), lowest: si('inputLowest') },
    gate: si('gate'),
    run: choice('run') as HoseId,
    fitted: choice('fitted') === 'fitted',
    among: choice('fitted') === 'among',
    bore: si('bore'),
    straightBefore: si('straightBefore'),
    straightAfter: si('straightAfter'),
    loss: { ratedFlow: si('ratedFlow'), ratedLoss: si('ratedLoss') },
  };
}
