/** The pump, or two of them: head against flow at the speed its voltage gives. */
import { InvalidInputError, type Note } from '../errors';
import { AFRESH, type Kept } from '../kept';
import type { Pump } from '../loop/types';
import { fallingCurve, type FallingCurve } from './fallingCurve';

export interface PumpModel {
  /** Head of the whole set at the flow through the loop, m; negative past run-out. */
  head(flow: number): number;
  /** d(head)/d(flow), s/m². */
  slope(flow: number): number;
  /** Head without flow, m. */
  readonly shutOff: number;
  /** Flow at which the set lifts nothing, m³/s. */
  readonly runOut: number;
  /** On the plug. */
  readonly volts: number;
  readonly speedRatio: number;
  /** Electrical input of the set at this speed, W. */
  readonly electricPower: number;
  /** Part of it that warms the liquid, W. */
  readonly heatToLiquid: number;
  /** The curve of one pump at rated speed. */
  readonly rated: FallingCurve;
  /** Pumps sharing the flow, pumps adding their head. */
  readonly inParallel: number;
  readonly inSeries: number;
  /** What must be told of the head at this flow. */
  notesAt(flow: number): readonly Note[];
}

/** Affinity is trusted within these ratios of speed; outside, the result says so. */
export const AFFINITY_TRUST = [0.5, 1.25] as const;

/**
 * Speed over rated speed.
 * Brushed motors follow their voltage; a held-speed motor runs at rated speed from its cut-out
 * voltage up and not at all below.
 *
 * @source Common practice for brushed motors; cut-out of controlled motors from memory
 * @example speedRatio({ motor: 'brushed', volts: 11, ratedVolts: 13.75, cutoutVolts: 0 }) // 0.8
 */
export function speedRatio({
  motor,
  volts,
  ratedVolts,
  cutoutVolts,
}: Pick<Pump, 'motor' | 'volts' | 'ratedVolts' | 'cutoutVolts'>): number {
  if (motor === 'brushed') return volts / ratedVolts;
  return volts > 0 && volts >= cutoutVolts ? 1 : 0;
}

/** What a feed has to say about the pump behind it. */
export interface OnFeed {
  /** Electrical input of the set, W, where it is not that of the affinity laws. */
  readonly electricPower?: number;
  /** Why it stands still. */
  readonly stopped?: string;
}

/** One pump, or a set, at any volts on its plug. */
export type PumpAt = (volts: number, onFeed?: OnFeed) => PumpModel;

/**
 * Prepare the pump of a loop at the volts stated for its plug; see {@link pumpAt}.
 * @throws as {@link pumpAt}
 */
export const pumpModel = (pump: Pump): PumpModel => pumpAt(pump)(pump.volts);

/**
 * Prepare the pump of a loop for any volts.
 *
 * Head of one pump at speed s: H_s(Q) = s² H(Q/s). Two in series add heads at one flow, two in
 * parallel add flows at one head. H runs through the points by shape-preserving cubics
 * (Fritsch-Carlson), flat before the first point, straight on with the end slope after the last;
 * {@link PumpModel.notesAt} tells when the flow lies there. Electrical power goes with s³.
 *
 * @throws {@link InvalidInputError} `pump.curve` for a single point, points out of order or doubled,
 *   a head that rises or is negative; `pump.…` for an impossible motor
 * @source Affinity laws; ISO 9906:2012
 */
export function pumpAt(pump: Pump, kept: Kept = AFRESH): PumpAt {
  checkMotor(pump);
  const rated = kept.of('pump.curve', [pump.curve], () =>
    fallingCurve(
      pump.curve.map((p) => ({ flow: p.flow, lift: p.head })),
      'pump.curve',
      'head',
    ),
  );
  const inSeries = pump.arrangement === 'two-in-series' ? 2 : 1;
  const inParallel = pump.arrangement === 'two-in-parallel' ? 2 : 1;

  return (volts, onFeed = {}) => {
    const s = speedRatio({ ...pump, volts });
    const running = s > 0;
    const electricPower =
      onFeed.electricPower ?? pump.electricPower * inSeries * inParallel * s ** 3;
    /** The flow of the rated curve that is similar to `flow` through the loop. */
    const similar = (flow: number) => flow / (inParallel * s);
    return {
      rated,
      inParallel,
      inSeries,
      volts,
      speedRatio: s,
      shutOff: inSeries * s * s * rated.shutOff,
      runOut: inParallel * s * rated.runOut,
      electricPower,
      heatToLiquid: electricPower * pump.heatShare,
      head: (flow) => (running ? inSeries * s * s * rated.value(similar(flow)) : 0),
      slope: (flow) => (running ? ((inSeries * s) / inParallel) * rated.slope(similar(flow)) : 0),
      notesAt: (flow) =>
        running
          ? runningNotes(rated, s, similar(flow))
          : [stoppedNote(pump, volts, onFeed.stopped)],
    };
  };
}

function checkMotor(pump: Pump): void {
  const refuse = (field: keyof Pump, message: string) => {
    throw new InvalidInputError(`pump.${field}`, message, pump[field] as number);
  };
  const notNegative = (x: number) => x >= 0 && x < Infinity;
  if (!(pump.ratedVolts > 0 && pump.ratedVolts < Infinity)) {
    refuse('ratedVolts', 'the rated voltage must be above zero');
  }
  if (!notNegative(pump.volts)) refuse('volts', 'the voltage cannot be negative');
  if (!notNegative(pump.cutoutVolts)) refuse('cutoutVolts', 'the voltage cannot be negative');
  if (!notNegative(pump.electricPower)) refuse('electricPower', 'the power cannot be negative');
  if (!(pump.heatShare >= 0 && pump.heatShare <= 1)) {
    refuse('heatShare', 'the share of heat runs from 0 to 1');
  }
}

function stoppedNote(pump: Pump, volts: number, why?: string): Note {
  const message =
    why ??
    (pump.motor === 'held-speed' && volts > 0
      ? 'the voltage at the pump is below its cut-out: it does not run'
      : 'no voltage at the pump: it does not run');
  return { code: 'pump.stopped', message, quantity: 'pump.volts', value: volts };
}

function runningNotes(rated: FallingCurve, s: number, similar: number): Note[] {
  const notes: Note[] = [];
  const range = [rated.firstFlow, rated.lastFlow] as const;
  if (similar > rated.lastFlow) {
    const message =
      'the flow lies beyond the last point of the pump curve, which is continued straight with its end slope';
    notes.push({
      code: 'pump.beyond-curve',
      message,
      quantity: 'pump.curve',
      value: similar,
      range,
    });
  }
  if (similar < rated.firstFlow) {
    const message =
      'the flow lies before the first point of the pump curve, whose head is held there';
    notes.push({
      code: 'pump.before-curve',
      message,
      quantity: 'pump.curve',
      value: similar,
      range,
    });
  }
  if (!(s >= AFFINITY_TRUST[0] && s <= AFFINITY_TRUST[1])) {
    const message = 'the pump runs far from its rated speed, where the affinity laws are rough';
    const quantity = 'pump.volts';
    notes.push({ code: 'pump.far-from-rated', message, quantity, value: s, range: AFFINITY_TRUST });
  }
  return notes;
}
