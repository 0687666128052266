/** What stands on a shared time axis. SI; times in seconds from the start. */
import type { Quantity } from '../types';

export interface TimeCurve {
  readonly id: string;
  readonly name: string;
  /** Rising. */
  readonly t: Float64Array;
  /** NaN parts the line. */
  readonly x: Float64Array;
  /** Bits of {@link DOUBT} at each reading. */
  readonly doubt?: Uint8Array;
}

/** How a reading is marked: off its neighbours, standing still, beyond what could be. */
export const DOUBT = { wild: 1, still: 2, beyond: 4 } as const;

/** Curves of one kind of quantity in one plot. */
export interface TimeGroup {
  readonly id: string;
  readonly title: string;
  readonly quantity: Quantity;
  readonly curves: readonly TimeCurve[];
}

export interface TimeStretch {
  readonly from: number;
  readonly to: number;
}

/** A stretch with a meaning, washed behind the curves. */
export interface TimeSpan extends TimeStretch {
  readonly label: string;
  /** The second kind is hatched, so that black and white is enough. */
  readonly kind: 'first' | 'second';
}

/** A moment worth a mark. */
export interface TimeFlag {
  readonly t: number;
  readonly label: string;
}
