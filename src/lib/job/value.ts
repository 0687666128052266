/** What a field is worth: its text with the value the models take, how sure, and where from. */
import type { Meaning } from './check';
import type { Spread, Typed } from './entries';

export interface Value extends Meaning {
  /** As accepted: what the value was made from. */
  readonly text: Typed;
  /** Nobody has given a value; the default stands in. */
  readonly assumed: boolean;
  /** What the reader must be told: a unit assumed, a dash size interpreted. */
  readonly note?: string;
  /** Half width of the uncertainty, SI; upwards, where {@link pmDown} differs from it. */
  readonly pm?: number;
  readonly pmDown?: number;
  readonly pmText?: string;
  readonly pmMessage?: string;
  /** What kind of statement the ± is; absent: two standard deviations. */
  readonly spread?: Spread;
  /** Coverage factor of a calibration's ±. */
  readonly k?: number;
  readonly kText?: string;
  /** Why the coverage factor was refused; the ± then counts for nothing. */
  readonly kMessage?: string;
  readonly from?: string;
  /** Typed last but refused, and why. */
  readonly draft?: Typed;
  readonly why?: string;
  /** On the candidate: differs from the loop as found. */
  readonly changed?: boolean;
}

export type Values = Readonly<Record<string, Value>>;
