/** What can be moved and switched to see why a loop settles, or does not. SI; plain data. */
import type { Interval } from '../../errors';
import type { HeatLedger, LoopTemperatures } from '../types';

/** Departures from the loop as described; neutral: none. */
export interface Knobs {
  /** Flow over that of the loop described. Pump and passages grow alike, so heads and suction stay. */
  readonly flow: number;
  /** Volts at the fans over those described. */
  readonly fan: number;
  /** Ambient above the one described, K. Temperatures stated outright (the engine's) stay. */
  readonly ambientShift: number;
  /** Charge air flow over that of the duty; heat stated outright over that stated. */
  readonly load: number;
}

export type Knob = keyof Knobs;
export const KNOBS: readonly Knob[] = ['flow', 'fan', 'ambientShift', 'load'];

export const NEUTRAL: Knobs = Object.freeze({ flow: 1, fan: 1, ambientShift: 0, load: 1 });

/** Enforced; also the ends of the sliders and of the continuation. */
export const KNOB_RANGE = {
  flow: [0.05, 2],
  fan: [0.1, 1.5],
  ambientShift: [-25, 25],
  load: [0.1, 3],
} as const satisfies Record<Knob, Interval>;

/** Bay and inlet air that follow the liquid; as in a drive with events, without its lag. */
export interface UnderhoodGain {
  /** Kelvin of bay air for each kelvin of the liquid above ambient, on top of the duty's rise. */
  readonly liquidGain: number;
  /** Share of that which reaches the compressor's inlet. */
  readonly inletShare: number;
}

export const UNDERHOOD_RANGE = {
  liquidGain: [0, 0.9],
  inletShare: [0, 1],
} as const satisfies Record<string, Interval>;

/** What answers to the liquid's temperature, besides the properties of the liquid. */
export interface Feedbacks {
  /** Vapour pressure takes suction head, and that takes the pump's head and the flow. */
  readonly suction: boolean;
  /** A breaker that opens at the pump's current leaves the share of the flow for which it is closed. */
  readonly breaker: boolean;
  /** Null: off. */
  readonly underhood: UnderhoodGain | null;
}

export interface WhatIf {
  readonly knobs: Knobs;
  readonly feedbacks: Feedbacks;
  /** The cap holds its pressure, or is open to the air. */
  readonly cap: 'as-found' | 'open';
}

/** Both heats with the liquid at one temperature. */
export interface HeatsAt {
  /** Leaving the reservoir, K. */
  readonly T: number;
  /** Every heat but the front exchanger's, W. */
  readonly entering: number;
  /** Given off by the front exchanger, W. */
  readonly leaving: number;
  /** Entering less leaving, W: what warms the liquid. */
  readonly left: number;
  /** Mean over the breaker's cycles, m³/s. */
  readonly flow: number;
  /** Share of the time for which the pump runs. */
  readonly running: number;
  readonly heats: HeatLedger;
  readonly temperatures: LoopTemperatures;
  /** Drop of the liquid across the front exchanger, K. */
  readonly drop: number;
  /** Heat the liquid carries per kelvin, W/K, and the liquid it is made of. */
  readonly capacityRate: number;
  readonly density: number;
  readonly specificHeat: number;
  /** Flow of pump and loop before knob and breaker, m³/s. */
  readonly pumpFlow: number;
  /** Heat the front exchanger gives off per kelvin between its liquid inlet and ambient, W/K. */
  readonly conductance: number;
  /** Charge air after the cooler, K; null where heat is stated outright. */
  readonly chargeOut: number | null;
}

/** A temperature at which as much heat enters as leaves. */
export interface Crossing extends HeatsAt {
  /** Of heat entering and of heat leaving against the liquid's temperature, W/K. */
  readonly slopeIn: number;
  readonly slopeOut: number;
  /** Pushed off, the liquid comes back: heat leaving rises faster than heat entering. */
  readonly stable: boolean;
  /** Boiling point at the reservoir's pressure less the hottest liquid, K. */
  readonly boilingMargin: number;
}

/** What the search met at the hot end of the liquid's range. */
export type HotEnd =
  /** Heat still flows in: liquid that comes here goes on to boil. */
  | 'boils'
  /** The liquid boils ahead of the pump, which moves nothing any more. */
  | 'starved'
  /** The breaker opens and stays open. */
  | 'stopped'
  /** Heat flows out: liquid that comes here falls back. */
  | 'falls-back';
