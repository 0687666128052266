/** What of a parts list can be added up, where some prices or masses are not known. */
import type { PartRow } from './partsList';

/** One row's price or mass, SI; null where it is not known. */
export const rowSum = (row: PartRow, key: 'price' | 'mass'): number | null =>
  row.count === null || row[key] === null ? null : row.count * row[key];

export interface KnownSum {
  /** Sum of the rows that are known, SI. */
  readonly sum: number;
  readonly known: number;
  readonly unknown: number;
}

export function knownSum(rows: readonly PartRow[], key: 'price' | 'mass'): KnownSum {
  const sums = rows.map((row) => rowSum(row, key)).filter((sum) => sum !== null);
  return {
    sum: sums.reduce((total, sum) => total + sum, 0),
    known: sums.length,
    unknown: rows.length - sums.length,
  };
}
