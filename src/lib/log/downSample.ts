/** A long channel thinned for a plot so that nothing that stands out is lost. */

/**
 * First, least, greatest and last reading of each pixel's share of the time, in order: drawn as a line
 * they cover the same pixels as all readings would. A gap is kept as one row that holds NaN.
 *
 * @param t - rising
 * @param pixels - width of the plot
 * @param gaps - rows before which time leaps, rising: the line is parted there too
 * @returns rows of the log; a row with a minus sign stands for a leap of time that ends at it
 * @source Jugel et al., M4, Proc. VLDB 7 (2014) 797-808 (from memory)
 */
export function plotRows(
  t: Float64Array,
  values: Float64Array,
  {
    from,
    to,
    pixels,
    gaps = NO_GAPS,
  }: { from: number; to: number; pixels: number; gaps?: Int32Array },
): Int32Array {
  // One row beyond each edge, so that the line enters and leaves the plot.
  const first = Math.max(0, firstAt(t, from) - 1);
  const last = Math.min(t.length - 1, firstAt(t, to) + 1);
  const out: number[] = [];
  const width = (to - from) / Math.max(1, pixels);
  let k = first;
  let leap = firstAt(gaps, first + 1);
  while (k <= last) {
    const edge = from + (Math.floor((t[k]! - from) / width) + 1) * width;
    let [low, high, begin, end, gap] = [-1, -1, -1, -1, -1];
    do {
      const x = values[k]!;
      if (Number.isNaN(x)) {
        if (gap < 0) gap = k;
        continue;
      }
      if (begin < 0) begin = k;
      if (low < 0 || x < values[low]!) low = k;
      if (high < 0 || x > values[high]!) high = k;
      end = k;
    } while (++k <= last && t[k]! < edge);
    const rows = [begin, low, high, end].filter((row) => row >= 0);
    // A gap shows only where nothing was read in the pixel's whole share.
    if (rows.length === 0 && gap >= 0) rows.push(gap);
    rows.sort((a, b) => a - b);
    // Likewise time that leaps: no line leads across what was not logged.
    for (; leap < gaps.length && gaps[leap]! <= rows[0]!; leap++) {
      const row = gaps[leap]!;
      if (t[row]! - t[row - 1]! > width) out.push(-row);
    }
    for (const row of rows) if (row !== out.at(-1)) out.push(row);
  }
  return Int32Array.from(out);
}

const NO_GAPS = new Int32Array();

/** First row not before `time`. */
export function firstAt(t: Float64Array | Int32Array, time: number): number {
  let low = 0;
  let high = t.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (t[middle]! < time) low = middle + 1;
    else high = middle;
  }
  return low;
}
