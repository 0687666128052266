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
  let beyond = 0;
  if (span) {
    values.forEach((x, k) => {
      if (x < span[0] || x > span[1]) {
        flags[k] = MARK.beyond;
        beyond++;
      }
    });
  }
  const rows = new Int32Array(values.length);
  let n = 0;
  values.forEach((x, k) => Number.isFinite(x) && (rows[n++] = k));
  const read = (i: number) => values[rows[i]!]!;
  const stuck = markStuck(read, rows, n, stuckRows, flags);
  return { flags, outliers: markOutliers(read, rows, n, limit, flags), stuck, beyond };
}

function markOutliers(
  read: (i: number) => number,
  rows: Int32Array,
  n: number,
  limit: number,
  flags: Uint8Array,
): number {
  const scale = scatter(read, n);
  if (!(scale > 0)) return 0;
  const around = new Float64Array(2 * SIDE);
  let outliers = 0;
  for (let i = 0; i < n; i++) {
    const x = read(i);
    // Most readings lie near one of their neighbours and need no median.
    const near = Math.min(
      i > 0 ? Math.abs(x - read(i - 1)) : Infinity,
      i < n - 1 ? Math.abs(x - read(i + 1)) : Infinity,
    );
    if (near <= limit * scale && !(i > 0 && flags[rows[i - 1]!]! & MARK.outlier)) {
      // Two wild readings side by side agree with each other.
      const past = i >= RUN && i + RUN < n;
      if (
        !past ||
        Math.abs(x - read(i - RUN)) <= limit * scale ||
        Math.abs(x - read(i + RUN)) <= limit * scale
      )
        continue;
    }
    let count = 0;
    for (let j = Math.max(0, i - SIDE); j <= Math.min(n - 1, i + SIDE); j++) {
      if (j !== i && count < around.length) around[count++] = read(j);
    }
    const near8 = around.slice(0, count).sort();
    const middle = near8[count >> 1]!;
    // Where the neighbours themselves spread the channel is moving, and a reading between them is none.
    const spread = near8[count - 1 - (count >> 2)]! - near8[count >> 2]!;
    if (Math.abs(x - middle) > limit * scale + 2 * spread) {
      flags[rows[i]!] = flags[rows[i]!]! | MARK.outlier;
      outliers++;
    }
  }
  return outliers;
}

/** Standard deviation of the noise by second differences of a sample; at least a third of the resolution. */
function scatter(read: (i: number) => number, n: number): number {
  const sizes: number[] = [];
  let resolution = Infinity;
  const stride = Math.max(1, Math.floor(n / 20_000));
  for (let i = 1; i < n - 1; i += stride) {
    sizes.push(Math.abs(read(i - 1) - 2 * read(i) + read(i + 1)));
    const step = Math.abs(read(i) - read(i - 1));
    if (step > 0) resolution = Math.min(resolution, step);
  }
  if (sizes.length === 0 || resolution === Infinity) return 0;
  sizes.sort((a, b) => a - b);
  return Math.max((1.4826 * sizes[sizes.length >> 1]!) / Math.sqrt(6), resolution / 3);
}

/** A stretch is stuck when it is longer than `least` rows and ten times the usual run of equal readings. */
function markStuck(
  read: (i: number) => number,
  rows: Int32Array,
  n: number,
  least: number,
  flags: Uint8Array,
): { from: number; to: number }[] {
  const runs: { from: number; to: number }[] = [];
  for (let i = 0; i < n;) {
    let end = i + 1;
    while (end < n && read(end) === read(i)) end++;
    runs.push({ from: i, to: end - 1 });
    i = end;
  }
  const lengths = runs.map(({ from, to }) => to - from + 1).sort((a, b) => a - b);
  const usual = lengths[lengths.length >> 1] ?? 1;
  const long = Math.max(least, 10 * usual);
  return runs
    .filter(({ from, to }) => to - from + 1 >= long)
    .map(({ from, to }) => {
      for (let i = from; i <= to; i++) flags[rows[i]!] = flags[rows[i]!]! | MARK.stuck;
      return { from: rows[from]!, to: rows[to]! };
    });
}
