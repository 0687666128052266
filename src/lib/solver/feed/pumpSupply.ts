/** How a pump is fed, as it is described. */
import type { ThermalBreaker } from './breaker';
import type { FeedCircuit } from './circuit';
import type { LoadPoint } from './motor';

/** How the current of the pump answers to volts. Its rated current is rated power over rated volts. */
export type PumpDraw =
  /** By the affinity laws: power with the cube of speed. A controller that holds speed holds power. */
  | { readonly kind: 'pump-law' }
  /** One current whatever the volts. */
  | { readonly kind: 'constant-torque' }
  /** One power whatever the volts. */
  | { readonly kind: 'constant-power' }
  /** Measured: current of all pumps on this feed, rising volts. */
  | { readonly kind: 'table'; readonly points: readonly LoadPoint[] };

/** A thermal breaker where it sits. */
export interface PlacedBreaker {
  readonly thermal: ThermalBreaker;
  /** Temperature round it, K. */
  readonly ambient: number;
}

/** Everything between the battery and the pump, and how the pump draws from it. */
export interface PumpSupply {
  readonly circuit: FeedCircuit;
  readonly draw: PumpDraw;
  /**
   * Power with the flow shut off over power at the pump curve's end, where the rated power then
   * belongs, 0.2 to 1. One: the flow does not change the power. A table of currents ignores it.
   */
  readonly shutOffShare: number;
  /** Between the two pins of one brushed pump standing still, ohm; 0 when not known. */
  readonly armatureResistance: number;
  /** Null: a fuse. */
  readonly breaker: PlacedBreaker | null;
}
