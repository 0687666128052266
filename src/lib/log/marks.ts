/** Readings that look wrong. They are marked for the eye and left out of a fit if the user says so; never removed. */

export const MARK = { none: 0, outlier: 1, stuck: 2, beyond: 4 } as const;

export interface Marks {
  /** Sum of {@link MARK} at each row. */
  readonly flags: Uint8Array;
  readonly outliers: number;
  /** Stretches in which a channel that moves elsewhere does not. */
  readonly stuck: readonly { readonly from: number; readonly to: number }[];
  readonly beyond: number;
}

export interface MarkOptions {
  /** What the channel could read at all, in the values' unit. */
  readonly span?: readonly [low: number, high: number];
  /** So many standard deviations off its neighbours make an outlier. */
  readonly limit?: number;
  /** Least number of equal readings in a row that can count as stuck. */
  readonly stuckRows?: number;
}

/** Neighbours on each side that an outlier is compared with. */
const SIDE = 4;
/** Outliers in a row that are still no step of the channel itself. */
const RUN = 2;

/**
 * Mark a channel: outliers against the median of their neighbours (Hampel), stretches that stand still,
 * readings beyond what the channel could be. Gaps are passed over.
 *
 * @source Hampel's identifier; Davies & Gather, J. Am. Stat. Assoc. 88 (1993) 782-792 (from memory)
 */
export function markReadings(values: Float64Array, options: MarkOptions = {}): Marks {
  const { span, limit = 6, stuckRows = 30 } = options;
  const flags = new Uint8Array(values.length);
  // What was read, without the gaps, and where it stands.
  const x = new Float64Array(values.length);
  const rows = new Int32Array(values.length);
  let n = 0;
  let beyond = 0;
  for (let k = 0; k < values.length; k++) {
    const value = values[k]!;
    if (!Number.isFinite(value)) continue;
    if (span && (value < span[0] || value > span[1])) {
      flags[k] = MARK.beyond;
      beyond++;
    }
    x[n] = value;
    rows[n++] = k;
  }
  const read: Read = { x: x.subarray(0, n), rows: rows.subarray(0, n) };
  const stuck = markStuck(read, stuckRows, flags);
  return { flags, outliers: markOutliers(read, limit, flags), stuck, beyond };
}

interface Read {
  readonly x: Float64Array;
  /** Row of the log that each belongs to. */
  readonly rows: Int32Array;
}

/** More than this share is not off its neighbours: the channel itself jumps as often as it lies still. */
const MOST = 0.1;

function markOutliers(read: Read, limit: number, flags: Uint8Array): number {
  const outliers = markBeyond(read, limit * scatter(read.x, USUAL), flags);
  if (outliers <= MOST * read.x.length) return outliers;
  for (const row of read.rows) flags[row] = flags[row]! & ~MARK.outlier;
  return markBeyond(read, limit * scatter(read.x, LARGE), flags);
}

function markBeyond({ x, rows }: Read, off: number, flags: Uint8Array): number {
  const n = x.length;
  if (!(off > 0)) return 0;
  const around = new Float64Array(2 * SIDE);
  let outliers = 0;
  let before = false;
  for (let i = 0; i < n; i++) {
    const value = x[i]!;
    // Most readings lie near one of their neighbours and need no median.
    const near =
      (i > 0 && Math.abs(value - x[i - 1]!) <= off) ||
      (i < n - 1 && Math.abs(value - x[i + 1]!) <= off);
    if (near && !before) {
      // Two wild readings side by side agree with each other.
      const past = i >= RUN && i + RUN < n;
      if (!past || Math.abs(value - x[i - RUN]!) <= off || Math.abs(value - x[i + RUN]!) <= off)
        continue;
    }
    let count = 0;
    for (let j = Math.max(0, i - SIDE); j <= Math.min(n - 1, i + SIDE); j++) {
      if (j !== i && count < around.length) around[count++] = x[j]!;
    }
    const near8 = around.subarray(0, count).sort();
    const middle = near8[count >> 1]!;
    // Where the neighbours themselves spread the channel is moving, and a reading between them is none.
    const spread = near8[count - 1 - (count >> 2)]! - near8[count >> 2]!;
    before = Math.abs(value - middle) > off + 2 * spread;
    if (!before) continue;
    flags[rows[i]!] = flags[rows[i]!]! | MARK.outlier;
    outliers++;
  }
  return outliers;
}

/** A share of normal noise, and the standard deviations within which it lies: half, nine tenths. */
interface Quantile {
  readonly share: number;
  readonly sigmas: number;
}
const USUAL: Quantile = { share: 0.5, sigmas: 1 / 1.4826 };
const LARGE: Quantile = { share: 0.9, sigmas: 1.6449 };

/** Standard deviation of the noise by second differences of a sample; at least a third of the resolution. */
function scatter(x: Float64Array, { share, sigmas }: Quantile): number {
  const sizes: number[] = [];
  let resolution = Infinity;
  const stride = Math.max(1, Math.floor(x.length / 20_000));
  for (let i = 1; i < x.length - 1; i += stride) {
    sizes.push(Math.abs(x[i - 1]! - 2 * x[i]! + x[i + 1]!));
    const step = Math.abs(x[i]! - x[i - 1]!);
    if (step > 0) resolution = Math.min(resolution, step);
  }
  if (sizes.length === 0 || resolution === Infinity) return 0;
  sizes.sort((a, b) => a - b);
  const size = sizes[Math.floor(share * sizes.length)]!;
  return Math.max(size / (sigmas * Math.sqrt(6)), resolution / 3);
}

/** A stretch is stuck when it is longer than `least` rows and ten times the usual run of equal readings. */
function markStuck(
  { x, rows }: Read,
  least: number,
  flags: Uint8Array,
): { from: number; to: number }[] {
  const long = Math.max(least, 10 * usualRun(x));
  const stuck: { from: number; to: number }[] = [];
  eachRun(x, (from, end) => {
    if (end - from < long) return;
    for (let i = from; i < end; i++) flags[rows[i]!] = flags[rows[i]!]! | MARK.stuck;
    stuck.push({ from: rows[from]!, to: rows[end - 1]! });
  });
  return stuck;
}

/** Median length of the runs of equal readings. */
function usualRun(x: Float64Array): number {
  const counts = new Map<number, number>();
  let runs = 0;
  eachRun(x, (from, end) => {
    counts.set(end - from, (counts.get(end - from) ?? 0) + 1);
    runs++;
  });
  let passed = 0;
  for (const [length, count] of [...counts].sort(([a], [b]) => a - b)) {
    passed += count;
    if (passed > runs >> 1) return length;
  }
  return 1;
}

function eachRun(x: Float64Array, run: (from: number, end: number) => void): void {
  for (let from = 0; from < x.length;) {
    let end = from + 1;
    while (end < x.length && x[end] === x[from]) end++;
    run(from, end);
    from = end;
  }
}
