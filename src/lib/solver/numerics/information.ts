/** How much an outcome tells about which of several causes it comes from. */

/** One normal part of a mixture; the shares of a mixture sum to 1. */
export interface NormalPart {
  readonly share: number;
  readonly mean: number;
  readonly sigma: number;
}

/** Beyond so many standard deviations an outcome does not happen. */
const TAIL = 5;
/** Outcomes over which the expectation is summed, at least and at most. */
const OUTCOMES = [40, 160] as const;

/**
 * Mutual information, in nat, of which mixture is at work and the number it gives:
 * Σ w_c ∫ p(y|c) ln(p(y|c) / p(y)) dy, by the trapezoidal rule at steps of the sharpest part's sigma
 * (coarser where that would take more than 160 steps).
 *
 * @param weights - of the mixtures, sum 1
 * @returns between 0 and the entropy of `weights`
 * @source Shannon, Bell Syst. Tech. J. 27 (1948) 379-423
 */
export function mutualInformation(
  mixtures: readonly (readonly NormalPart[])[],
  weights: readonly number[],
): number {
  const all = mixtures.flat();
  const low = Math.min(...all.map((p) => p.mean - TAIL * p.sigma));
  const high = Math.max(...all.map((p) => p.mean + TAIL * p.sigma));
  const finest = Math.min(...all.map((p) => p.sigma));
  const [least, most] = OUTCOMES;
  const n = Math.min(Math.max(least, Math.ceil((high - low) / finest)), most);
  const step = (high - low) / n;
  let information = 0;
  for (let i = 0; i <= n; i++) {
    const y = low + i * step;
    const densities = mixtures.map((parts) => density(parts, y));
    const mean = densities.reduce((sum, d, c) => sum + weights[c]! * d, 0);
    densities.forEach((d, c) => {
      if (d > 0) information += weights[c]! * d * Math.log(d / mean);
    });
  }
  return Math.max(0, (information * step) / Math.sqrt(2 * Math.PI));
}

/** Density of a mixture times √(2π). */
function density(parts: readonly NormalPart[], y: number): number {
  let sum = 0;
  for (const { share, mean, sigma } of parts) {
    const z = (y - mean) / sigma;
    if (z * z < 60) sum += (share * Math.exp(-0.5 * z * z)) / sigma;
  }
  return sum;
}
