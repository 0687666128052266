/**
 * A drive with everything that may switch on the way: what is asked and what comes of it. SI; plain
 * data. Every feature is optional; with none the run is that of the plain warm-up.
 */
import type { ThermalBreaker } from '../../feed/breaker';
import type { Note } from '../../errors';
import type { Quantity } from '../../quantity';
import type { Segment, TransientState } from '../types';

/** The breaker in the pump's feed. */
export interface BreakerFeature {
  readonly breaker: ThermalBreaker;
  /** Current while the pump runs, A; absent: the pump's own, with the liquid as at the start. */
  readonly current?: number;
  /** What it sits in: bay air (default) or outside air. */
  readonly place?: 'bay' | 'outside';
  /** State at the start, 0 (cold, default) to 1 (about to open). */
  readonly start?: number;
  /** Times at which a manual one is pushed, s; refused while hotter than its reset state. */
  readonly pushedAt?: readonly number[];
}

/** The pump loses its prime: it turns, and moves nothing. */
export interface AirBoundFeature {
  /** When, s. */
  readonly at: number;
  /** Time the pump must stand still before the air has left it, s. */
  readonly restToPrime: number;
  /**
   * Current of the air-bound pump over that of the pump at work; default 0.55 (30 to 60 % below normal is
   * common practice, no source).
   */
  readonly currentShare?: number;
}

/** Fans that wait for heat. Those of the loop, at their stated volts, when on. */
export interface ThermostatFeature {
  readonly sensor: 'reservoir' | 'frontOut';
  /** K; on above, off below, the first above the second. */
  readonly onAt: number;
  readonly offAt: number;
}

/** Ice put into the reservoir at the start, on top of its liquid; plain water only. */
export interface IceFeature {
  readonly mass: number;
  /** Of the ice as it is put in, K; default the ice point. */
  readonly temperature?: number;
}

/** Bay air that follows its duty, and the liquid, with a lag; and warms the engine's inlet. */
export interface UnderhoodFeature {
  /** s */
  readonly timeConstant: number;
  /** Kelvin of bay air for each kelvin of the reservoir above ambient, on top of the duty's rise; 0 to 0.9. */
  readonly liquidGain: number;
  /** Share of the bay's departure from the duty's stated rise that reaches the compressor's inlet, 0 to 1. */
  readonly inletShare: number;
  /** Bay air at the start, K; default that of the first duty. */
  readonly start?: number;
}

/** Time the liquid takes through the hoses. */
export interface HoseFeature {
  /** Well-mixed cells in each of the four runs, 1 to 8. */
  readonly cells: number;
}

export interface EventRequest {
  readonly schedule: readonly Segment[];
  readonly start: TransientState;
  readonly rtol?: number;
  /** Overrides what the loop says of its pump; absent: as it says. */
  readonly cavitation?: 'counted' | 'ignored';
  /** Times during which the pump is switched off by hand, s. */
  readonly pumpOff?: readonly { readonly from: number; readonly until: number }[];
  readonly breaker?: BreakerFeature;
  readonly airBound?: AirBoundFeature;
  readonly thermostat?: ThermostatFeature;
  readonly ice?: IceFeature;
  /** Liquid that boils is held at its boiling point and steam leaves; else the run ends there. */
  readonly boiling?: boolean;
  readonly underhood?: UnderhoodFeature;
  readonly hoseDelay?: HoseFeature;
}

/** What may happen, and of what kind the number beside it is. */
export const EVENT_VALUE = {
  /** A segment begins: its place in the schedule, from 0. */
  segment: 'count',
  /** Current through it, A. */
  'breaker-trips': 'current',
  /** Share of the heat at which it opens. */
  'breaker-closes': 'ratio',
  'breaker-push-refused': 'ratio',
  'pump-switched-off': 'temperature', // of the reservoir, here and below
  'pump-switched-on': 'temperature',
  'prime-lost': 'temperature',
  'pump-primed': 'temperature',
  'fans-on': 'temperature', // at the sensor
  'fans-off': 'temperature',
  'ice-gone': 'temperature',
  'ice-forms': 'temperature',
  /** In the part named: boiling point, K. */
  'boiling-begins': 'temperature',
  'boiling-ends': 'temperature',
  /** The air shut in has reached the cap's pressure, Pa gauge. */
  'cap-lifts': 'gaugePressure',
} as const satisfies Record<string, Quantity>;

export type EventKind = keyof typeof EVENT_VALUE;

/** Liquid that can boil. */
export type LiquidPart = 'reservoir' | 'chargeLiquid' | 'frontLiquid';

export interface LoopEvent {
  /** s */
  readonly t: number;
  readonly kind: EventKind;
  readonly value: number;
  /** Where it boils; null otherwise. */
  readonly part: LiquidPart | null;
}

/** Parallel arrays over time. At an event both sides are given. */
export interface EventHistory {
  readonly t: Float64Array;
  readonly reservoir: Float64Array;
  readonly chargeLiquid: Float64Array;
  readonly chargeMetal: Float64Array;
  readonly frontLiquid: Float64Array;
  readonly frontMetal: Float64Array;
  /** Leaving the reservoir, entering charge cooler and front exchanger, arriving back at the reservoir, K. */
  readonly pumpIn: Float64Array;
  readonly chargeCoolerIn: Float64Array;
  readonly frontIn: Float64Array;
  readonly returning: Float64Array;
  /** Charge air to the engine, K; NaN where heat is stated. */
  readonly chargeOut: Float64Array;
  readonly bayAir: Float64Array;
  readonly flow: Float64Array;
  /** 1 or 0: the pump turns; the fans turn. */
  readonly pumpOn: Float64Array;
  readonly fansOn: Float64Array;
  /** 0 cold to 1 opening; NaN without a breaker. */
  readonly breakerState: Float64Array;
  /** kg */
  readonly iceMass: Float64Array;
  readonly vapourLost: Float64Array;
  /** W */
  readonly heatIn: Float64Array;
  readonly heatOut: Float64Array;
}

/** Where the heat of the run went, J. */
export interface EventLedger {
  readonly heatIn: number;
  readonly heatOut: number;
  /** By warmer liquid and metal, hoses with the parts they lead to unless followed by themselves. */
  readonly sensible: number;
  readonly hoses: number;
  /** By ice that melted (negative: formed). */
  readonly melting: number;
  /** Carried off by steam: its latent heat, and the warmth of that liquid above the ice point. */
  readonly steam: number;
  /** What is left over, J, and over the largest of the parts. */
  readonly residual: number;
  readonly relative: number;
}

export interface EventSolution {
  /**
   * `completed`; `boils` (where boiling is not followed, or past the end of the liquid's properties),
   * `freezes`, or `boiled-dry` (a tenth of the reservoir's liquid is left) at `endTime`.
   */
  readonly status: 'completed' | 'boils' | 'freezes' | 'boiled-dry';
  readonly endTime: number;
  readonly events: readonly LoopEvent[];
  readonly history: EventHistory;
  readonly segmentStarts: readonly number[];
  readonly end: TransientState;
  readonly peakCharge: { readonly t: number; readonly value: number } | null;
  readonly peakReservoir: { readonly t: number; readonly value: number };
  readonly trips: number;
  /** Time during which liquid was moved, s, and the fans turned. */
  readonly flowTime: number;
  readonly fanTime: number;
  /** kg */
  readonly iceLeft: number;
  readonly vapourLost: number;
  readonly ledger: EventLedger;
  readonly steps: number;
  readonly rejected: number;
  readonly notes: readonly Note[];
}
