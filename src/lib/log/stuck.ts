/** Stretches in which a channel that moves elsewhere does not. */

interface Run {
  readonly from: number;
  /** First row after it. */
  readonly end: number;
}

/** A stretch that long, in usual runs of equal readings, is no chance. */
const LONG = 10;
/** In runs of a coarse reader, which are longer in the middle of a count than between two. */
const LONG_COARSE = 25;
/** Jumps mostly of one count: the reader is as coarse as the readings scatter, or coarser. */
const ONE_COUNT = 1.5;
/** Share of readings that differ from the one before; below, one count holds the noise as a rule. */
const LIVELY = 0.25;
/** As many times longer than any that ended by one count. */
const LONGER = 3;
/** Jumps looked at. */
const SAMPLE = 20_000;

/**
 * Fine readers never repeat a reading for long. A coarse one does while a slow quantity stays inside one
 * count, which it leaves by one count: it is stuck only where it stays far longer than it ever did so and then
 * leaps, or never leaves.
 *
 * @param least - fewest equal readings; @param slow - what it measures may stand still
 */
export function stuckRuns(x: Float64Array, least: number, slow: boolean): Run[] {
  const starts = startsOf(x);
  const n = starts.length - 1;
  // A channel that never moves is none that stopped.
  if (n < 2) return [];
  const size = (i: number) => starts[i + 1]! - starts[i]!;
  const jump = (i: number) => Math.abs(x[starts[i + 1]!]! - x[starts[i]!]!);
  const longer = (rows: number, also: (i: number) => boolean = () => true) => {
    const found: Run[] = [];
    for (let i = 0; i < n; i++)
      if (size(i) >= rows && also(i)) found.push({ from: starts[i]!, end: starts[i + 1]! });
    return found;
  };

  const stride = Math.ceil(n / SAMPLE);
  const jumps = Float64Array.from({ length: Math.floor((n - 1) / stride) }, (_, i) =>
    jump(i * stride),
  ).sort();
  const leap = ONE_COUNT * jumps[0]!;
  const counts = new Map<number, number>();
  for (let i = 0; i < n; i++) counts.set(size(i), (counts.get(size(i)) ?? 0) + 1);
  const sorted = [...counts].sort(([a], [b]) => a - b);
  if (jumps[jumps.length >> 1]! > leap) return longer(Math.max(least, LONG * middle(sorted, n)));
  if (slow) return [];
  // In the middle of a count a run is long: the one that the middle reading lies in is the usual.
  const usual = middle(
    sorted.map(([rows, runs]) => [rows, rows * runs]),
    x.length,
  );
  const long = Math.max(least, LONG_COARSE * usual);
  if (n > LIVELY * (x.length - sorted.at(-1)![0])) return longer(long);
  const leaps = (i: number) => i === n - 1 || jump(i) > leap;
  let still = 0;
  for (let i = 0; i < n; i++) if (!leaps(i)) still = Math.max(still, size(i));
  return longer(Math.max(long, LONGER * still), leaps);
}

/** First rows of the runs of equal readings, and the end of the last. */
function startsOf(x: Float64Array): Int32Array {
  const starts = new Int32Array(x.length + 1);
  let count = 0;
  for (let i = 0; i < x.length; i++) if (i === 0 || x[i] !== x[i - 1]) starts[count++] = i;
  starts[count] = x.length;
  return starts.subarray(0, count + 1);
}

/** Length at which half of the whole weight is passed. */
function middle(lengths: readonly (readonly [length: number, weight: number])[], whole: number) {
  let passed = 0;
  for (const [length, weight] of lengths) {
    passed += weight;
    if (2 * passed > whole) return length;
  }
  return 1;
}
