/** How noisy each channel is: before the fit from the readings alone, after it from what is left. */

/** Makes a median of sizes the standard deviation of a normal. */
const NORMAL = 1.4826;

export function median(values: ArrayLike<number>): number {
  const sorted = Float64Array.from(values).sort();
  const n = sorted.length;
  if (n === 0) return NaN;
  return n % 2 ? sorted[(n - 1) / 2]! : 0.5 * (sorted[n / 2 - 1]! + sorted[n / 2]!);
}

/** Standard deviation by the median of sizes; a few wild values do not move it. */
export function robustDeviation(values: ArrayLike<number>): number {
  return NORMAL * median(Array.from(values, Math.abs));
}

/**
 * Noise of readings taken in order, by their second differences: what moves slowly drops out, and
 * independent noise of deviation s leaves √6 s.
 */
export function differenceNoise(values: ArrayLike<number>): number {
  const second: number[] = [];
  for (let i = 2; i < values.length; i++)
    second.push(values[i]! - 2 * values[i - 1]! + values[i - 2]!);
  return robustDeviation(second) / Math.sqrt(6);
}

/** Correlation of each value with the next; near 0 where nothing is left that a model could explain. */
export function nextCorrelation(values: ArrayLike<number>): number {
  let products = 0;
  let squares = 0;
  for (let i = 0; i < values.length; i++) {
    squares += values[i]! * values[i]!;
    if (i > 0) products += values[i]! * values[i - 1]!;
  }
  return squares > 0 ? products / squares : 0;
}
