/** Channels brought to one pace. */

/** Times from `from` to `to` at one pace, s. */
export function evenTimes(from: number, to: number, step: number): Float64Array {
  const count = Math.floor((to - from) / step + 1e-9) + 1;
  return Float64Array.from({ length: Math.max(0, count) }, (_, k) => from + k * step);
}

/**
 * Mean of the readings from half a step before each time to half a step after; NaN where there is none.
 * @param skip - readings not to count
 */
export function meanAt(
  t: Float64Array,
  values: Float64Array,
  at: Float64Array,
  step: number,
  skip?: (row: number) => boolean,
): Float64Array {
  const sums = new Float64Array(at.length);
  const counts = new Uint32Array(at.length);
  const first = at[0] ?? 0;
  for (let row = 0; row < t.length; row++) {
    const k = Math.floor((t[row]! - first) / step + 0.5);
    if (k < 0 || k >= at.length || !Number.isFinite(values[row]!) || skip?.(row)) continue;
    sums[k] = sums[k]! + values[row]!;
    counts[k] = counts[k]! + 1;
  }
  return sums.map((sum, k) => (counts[k]! > 0 ? sum / counts[k]! : NaN));
}

/** Gaps filled by straight lines between readings, and at the ends by the nearest; for what drives a model. */
export function filled(values: Float64Array, t: Float64Array): Float64Array {
  const out = values.slice();
  let before = -1;
  for (let k = 0; k < out.length; k++) {
    if (!Number.isFinite(values[k]!)) continue;
    for (let i = before + 1; i < k; i++) {
      if (before < 0) out[i] = values[k]!;
      else {
        const share = (t[i]! - t[before]!) / (t[k]! - t[before]!);
        out[i] = values[before]! + share * (values[k]! - values[before]!);
      }
    }
    before = k;
  }
  if (before >= 0) out.fill(values[before]!, before + 1);
  return out;
}
