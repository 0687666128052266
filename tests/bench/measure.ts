/** Timing and its two figures that matter: the middle, and what one in twenty exceeds. */

export interface Entry {
  readonly name: string;
  /** Which sheet or page, where the entry is measured on several. */
  readonly of?: string;
  readonly unit: 'ms' | 'kB';
  readonly median: number;
  readonly p95: number;
  readonly runs: number;
  /** What the figure at p95 should not exceed; null where none was set. */
  readonly aim: number | null;
}

/** Figures of a list of measured values. */
export function entry(
  name: string,
  unit: Entry['unit'],
  values: readonly number[],
  aim: number | null,
): Entry {
  const sorted = [...values].sort((a, b) => a - b);
  return {
    name,
    unit,
    median: quantile(sorted, 0.5),
    p95: quantile(sorted, 0.95),
    runs: sorted.length,
    aim,
  };
}

/** Time `run` after it has been warmed up, so that the engine has compiled it. */
export function timed(
  name: string,
  run: () => void,
  { runs, warmUp, aim }: { runs: number; warmUp: number; aim: number | null },
): Entry {
  for (let i = 0; i < warmUp; i++) run();
  const values = Array.from({ length: runs }, () => {
    const start = performance.now();
    run();
    return performance.now() - start;
  });
  return entry(name, 'ms', values, aim);
}

/** Nearest rank: a value that was measured, never one between two. */
function quantile(sorted: readonly number[], share: number): number {
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? NaN;
}
