/** How sure a ± is that was read from so many draws. */
import { requireWithin } from '../errors';
import { normalQuantile } from './distributions';
import { STUDY_RANGE } from './propagate';

/** Left out on either side of the range that is told. */
const TAIL = 0.025;

/**
 * Relative standard error of half the middle 95 % of N draws of a normal value: of two order statistics.
 * Of random draws and for many of them; measured on lattice points, 32 to 512 a run, it was much the same.
 * @formula u/h = sqrt(2 p (1 - 2 p) / N) / (2 z phi(z)), p = 0.025, z its quantile, phi the normal density
 * @param samples - draws, 1 to 2^20
 * @returns share of the half-width h, 1
 * @throws {@link OutOfRangeError} for no draws or too many
 * @source H. A. David, H. N. Nagaraja, Order Statistics, 3rd ed., 10.2 (asymptotic covariance of quantiles;
 *   from memory)
 */
export function rangeError(samples: number): number {
  requireWithin('error of a range', { samples: STUDY_RANGE.samples }, { samples });
  const z = normalQuantile(1 - TAIL);
  const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
  return Math.sqrt((2 * TAIL * (1 - 2 * TAIL)) / samples) / (2 * z * density);
}
