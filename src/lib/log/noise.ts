/** How much the readings of a channel scatter by themselves, and how often they come. */

/** Standard deviation of what rounding to 1 leaves out, 1/sqrt(12). */
const COUNT = 0.2887;

/** Standard deviation of a reading by second differences, a few wild ones notwithstanding; of its rounding at least. */
export function noiseOf(x: Float64Array): number {
  const sizes: number[] = [];
  const stride = Math.max(1, Math.floor(x.length / 50_000));
  for (let i = 1; i < x.length - 1; i += stride) {
    const size = Math.abs(x[i - 1]! - 2 * x[i]! + x[i + 1]!);
    if (Number.isFinite(size)) sizes.push(size);
  }
  sizes.sort((a, b) => a - b);
  const byNeighbours = (1.4826 * (sizes[sizes.length >> 1] ?? 0)) / Math.sqrt(6);
  return Math.max(byNeighbours, COUNT * resolutionOf(x), 1e-12);
}

/** Least step between two readings. */
function resolutionOf(x: Float64Array): number {
  let least = Infinity;
  const stride = Math.max(1, Math.floor(x.length / 50_000));
  for (let i = 1; i < x.length; i += stride) {
    const step = Math.abs(x[i]! - x[i - 1]!);
    if (step > 0 && step < least) least = step;
  }
  return least < Infinity ? least : 0;
}

/** Usual time between readings. */
export function medianStep(times: Float64Array): number {
  const steps = times.slice(1, 20_000).map((t, i) => t - times[i]!);
  steps.sort();
  return steps[steps.length >> 1]!;
}
