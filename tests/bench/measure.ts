/** Timing, by the clock and by what the processor worked, and the figures that matter of it. */

export interface Entry {
  readonly name: string;
  /** Which sheet or page, where the entry is measured on several. */
  readonly of?: string;
  readonly unit: 'ms' | 'kB';
  /** Least, middle, and what one in twenty exceeds; of times, by the clock. */
  readonly min: number;
  readonly median: number;
  readonly p95: number;
  /** The same of processor time, which other work on the machine disturbs less; null where not read. */
  readonly cpu: Pick<Entry, 'min' | 'median' | 'p95'> | null;
  readonly runs: number;
  /** What was done in one run, where it can be counted. */
  readonly work: string | null;
  /** What a figure should not exceed, and which; null where nothing was set. */
  readonly aim: Aim | null;
}

export interface Aim {
  readonly of: 'median' | 'p95';
  readonly limit: number;
}

type About = Pick<Entry, 'name' | 'unit' | 'aim'> & Partial<Pick<Entry, 'of' | 'work'>>;

/** Figures of a list of measured values, and of the processor times that go with them. */
export function entry(about: About, values: readonly number[], cpu?: readonly number[]): Entry {
  const work = about.work ?? null;
  const runs = values.length;
  return { ...about, ...figures(values), cpu: cpu ? figures(cpu) : null, runs, work };
}

function figures(values: readonly number[]) {
  const sorted = [...values].sort((a, b) => a - b);
  return { min: sorted[0] ?? NaN, median: quantile(sorted, 0.5), p95: quantile(sorted, 0.95) };
}

/** One value is `batch` calls together, of what is too short for the processor's clock. */
interface Runs {
  readonly runs: number;
  readonly warmUp: number;
  readonly batch?: number;
}

/** Time `run` after it has been warmed up, so that the engine has compiled it. */
export function timed(about: About, run: () => void, { runs, warmUp, batch = 1 }: Runs): Entry {
  for (let i = 0; i < warmUp; i++) run();
  const wall: number[] = [];
  const cpu: number[] = [];
  for (let i = 0; i < runs; i++) {
    const used = process.cpuUsage();
    const start = performance.now();
    for (let j = 0; j < batch; j++) run();
    wall.push((performance.now() - start) / batch);
    const { user, system } = process.cpuUsage(used);
    cpu.push((user + system) / 1000 / batch);
  }
  return entry(about, wall, cpu);
}

/** The middle of a list that is in no order. */
export const middle = (values: readonly number[]): number =>
  quantile(
    [...values].sort((a, b) => a - b),
    0.5,
  );

/** Nearest rank: a value that was measured, never one between two. */
function quantile(sorted: readonly number[], share: number): number {
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? NaN;
}
