/** How large a log may be: what a browser holds at ease, and far more than a drive writes. */
export const LIMITS = {
  bytes: 500e6,
  rows: 2_000_000,
  columns: 200,
  /** Numbers held in all, 8 bytes each. */
  cells: 30_000_000,
  /** Characters of one row; longer, a quote was never closed. */
  row: 200_000,
} as const;
