/** Words of the diagnosis: what can be measured, what can be wrong, what follows. SI throughout. */
import type { Quantity } from '../quantity';
import type { DutyId, Loop } from '../loop/types';

/** Duties that last long enough for readings to settle; a pull does not. */
export const SETTLED_DUTIES = ['traffic', 'cruise'] as const satisfies readonly DutyId[];
export type SettledDuty = (typeof SETTLED_DUTIES)[number];

/** What is read in one duty. */
export type DutyChannel =
  | 'reservoir'
  | 'frontIn'
  | 'frontOut'
  | 'flow'
  | 'bucket'
  | 'volts'
  | 'amps'
  | 'pumpRise'
  | 'charge'
  | 'faceAir';

/** What is tried once, whatever the duty. */
export type OnceChannel = 'soak' | 'paper' | 'volume';
export type Channel = DutyChannel | OnceChannel;

/** Where a channel is read: in a duty, or once. */
export type Place = SettledDuty | 'once';

/** One measurement. `sigma` is one standard deviation of the instrument. */
export interface Reading {
  readonly channel: Channel;
  readonly place: Place;
  readonly value: number;
  readonly sigma: number;
}

/** Ambient and vehicle speed as they were when the readings were taken. */
export interface Conditions {
  readonly ambient?: number;
  /** One standard deviation of the ambient reading, K: shared by every temperature. */
  readonly ambientSigma: number;
  readonly speed: Readonly<Partial<Record<SettledDuty, number>>>;
}

/** Every channel at one place; NaN where it does not exist (heat stated outright has no charge air). */
export type Predicted = Readonly<Record<DutyChannel, number>> & { readonly ambient: number };

export type FaultId =
  | 'as-described'
  | 'supply-drop'
  | 'breaker-cycling'
  | 'no-supply'
  | 'pump-rubbing'
  | 'air-bound'
  | 'cavitation'
  | 'hose-collapsed'
  | 'core-blocked-inside'
  | 'core-blocked-outside'
  | 'exchanger-small'
  | 'fan-dead'
  | 'fan-reversed'
  | 'fan-misplaced'
  | 'hot-face-air'
  | 'hot-intake'
  | 'short-circuit'
  | 'charge-cooler-fouled'
  | 'reservoir-probe'
  | 'front-probe'
  | 'charge-probe'
  | 'flow-meter';

/** What a fault does besides changing the loop: to instruments and to the motor. */
export interface SideEffects {
  /** Added to what a channel shows, K. */
  readonly bias?: Readonly<Partial<Record<DutyChannel, number>>>;
  /** Times what a channel shows. */
  readonly factor?: Readonly<Partial<Record<DutyChannel, number>>>;
  /** Shown whatever the rest does. */
  readonly fixed?: Readonly<Partial<Record<DutyChannel, number>>>;
  /** What the checks done once come to; absent: as on a loop that is as described. */
  readonly once?: Readonly<Partial<Record<OnceChannel, number>>>;
}

/** A loop at work, as a fault finds it. */
export interface Baseline {
  readonly loop: Loop;
  /** On the pump's plug, V, and drawn there by the loop as described, A. */
  readonly volts: number;
  readonly amps: number;
}

export interface Fault {
  readonly id: FaultId;
  /** As a technician would say it. */
  readonly name: string;
  /** What it looks like and how it is found, one sentence. */
  readonly sign: string;
  /** Weight before any measurement, relative to the others (common practice, no source). */
  readonly weight: number;
  /** What its severity is, from slight to worst; every value between is equally likely beforehand. */
  readonly severity: {
    readonly name: string;
    readonly quantity: Quantity;
    readonly from: number;
    readonly to: number;
  } | null;
  /** The loop with the fault in it, in one duty. */
  apply(base: Baseline, severity: number, duty: SettledDuty): Loop;
  /** What it does to instruments and motor. */
  side?(severity: number, base: Baseline): SideEffects;
}
