/** What the job knows of its fields, and of a candidate that changes some of them. */
import type { Part } from './file/parts';

export type Row = readonly string[];

/** What is typed into a field: one text (or the value of a choice), or the rows of a table. */
export type Typed = string | readonly Row[];

/** What the job knows about one field. Text as typed is the truth; SI values are derived. */
export interface Entry {
  /** Accepted. Without it the field uses its default. */
  readonly is?: Typed;
  /** Half width of the uncertainty, as typed. */
  readonly pm?: string;
  /** What kind of statement the ± is; absent: normal, the ± two standard deviations. */
  readonly spread?: Spread;
  /** Coverage factor of a calibration's ±, as typed; absent: 2. */
  readonly k?: string;
  /** Where the value came from. */
  readonly from?: string;
  /** Typed last but refused; kept so that nothing typed is lost. */
  readonly draft?: Typed;
  /** Why `draft` was refused. */
  readonly why?: string;
}

/** Kinds of a ±. `calibration` is a certificate's expanded uncertainty with its coverage factor. */
export const SPREADS = ['normal', 'interval', 'triangular', 'calibration'] as const;
export type Spread = (typeof SPREADS)[number];

export type Entries = Readonly<Record<string, Entry>>;

export interface Candidate {
  readonly name: string;
  /** Only what differs from the loop as found. */
  readonly changes: Entries;
  /** What must be bought or made for it; absent: nothing listed. */
  readonly parts?: readonly Part[];
}
