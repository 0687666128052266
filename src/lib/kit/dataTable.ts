/** Rows and columns of a table of numbers already in words; see DataTable. */
import type { Words } from './types';

export interface DataColumn {
  readonly label: string;
  /** Numbers stand to the right unless told otherwise. */
  readonly right?: boolean;
}

/** A cell, with something smaller beneath. */
export type DataCell = string | { readonly text: string; readonly small: string };

export interface DataRow {
  readonly key: string;
  readonly head: Words;
  readonly cells: readonly DataCell[];
  /** Stands out, or back. */
  readonly weight?: 'strong' | 'soft';
  /** Said in brackets after the head. */
  readonly mark?: string;
}
