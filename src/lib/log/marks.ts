/** Readings that look wrong. They are marked for the eye and left out of a fit if the user says so; never removed. */
import { stuckRuns } from './stuck';

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
  /** What it measures may stand still for long: within one count of a coarse reader nothing is stuck. */
  readonly slow?: boolean;
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
  const { span, limit = 6, stuckRows = 30, slow = false } = options;
  const flags = new Uint8Array(values.length);
  // What was read, without the gaps, and where it stands.
  const x = new Float64Array(values.length);
  const rows = new Int32Array(values.length);
  let n = 0;
  for (let k = 0; k < values.length; k++) {
    const value = values[k]!;
    if (!Number.isFinite(value)) continue;
    x[n] = value;
    rows[n++] = k;
  }
  const read: Read = { x: x.subarray(0, n), rows: rows.subarray(0, n) };
  const beyond = span ? markBeyond(read, span, limit, flags) : 0;
  const stuck = stuckRuns(read.x, stuckRows, slow).map(({ from, end }) => {
    for (let i = from; i < end; i++) flags[read.rows[i]!] = flags[read.rows[i]!]! | MARK.stuck;
    return { from: read.rows[from]!, to: read.rows[end - 1]! };
  });
  return { flags, outliers: markOutliers(read, limit, flags), stuck, beyond };
}

interface Read {
  readonly x: Float64Array;
  /** Row of the log that each belongs to. */
  readonly rows: Int32Array;
}

/** Where nothing is less than nothing, a reading about it still scatters by its noise. */
function markBeyond(
  { x, rows }: Read,
  [low, high]: readonly [number, number],
  limit: number,
  flags: Uint8Array,
): number {
  const least = low === 0 ? -limit * scatter(x, LARGE) : low;
  let beyond = 0;
  for (let i = 0; i < x.length; i++) {
    if (x[i]! >= least && x[i]! <= high) continue;
    flags[rows[i]!] = MARK.beyond;
    beyond++;
  }
  return beyond;
}

/** More than this share is not off its neighbours: the channel itself jumps as often as it lies still. */
const MOST = 0.1;

function markOutliers(read: Read, limit: number, flags: Uint8Array): number {
  const outliers = markOff(read, limit * scatter(read.x, USUAL), flags);
  if (outliers <= MOST * read.x.length) return outliers;
  for (const row of read.rows) flags[row] = flags[row]! & ~MARK.outlier;
  return markOff(read, limit * scatter(read.x, LARGE), flags);
}

function markOff({ x, rows }: Read, off: number, flags: Uint8Array): number {
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
