/** How sure a fit is where its residuals hang together: variance counted by blocks, not by readings. */
import { covarianceOf } from './estimates';
import { lossSlopes } from './loss';
import type { LeastSquaresFit } from './types';

/**
 * Standard deviation of each parameter from the scatter of whole blocks of residuals. With H = (JᵀJ)⁻¹ and
 * g_b the gradient's part of block b, cov = H (Σ g_b g_bᵀ) H · B/(B - 1): what hangs together within a
 * block counts once, and a model that misses in one stretch shows as scatter between blocks.
 *
 * @param block - of each residual, from 0; Infinity comes back with fewer than two blocks
 * @source Liang & Zeger, Biometrika 73 (1986) 13-22, the cluster-robust form of Huber's sandwich (from memory)
 */
export function clusteredDeviations(fit: LeastSquaresFit, block: ArrayLike<number>): number[] {
  const { jacobian, residuals, loss } = fit;
  const n = fit.parameters.length;
  const m = residuals.length;
  const { covariance: H } = covarianceOf(jacobian, n, 1);
  const gradients = new Map<number, Float64Array>();
  let slopes = 0;
  for (let i = 0; i < m; i++) {
    const r = residuals[i]!;
    const [first, second] = lossSlopes(r, loss);
    const z = loss.kind === 'squares' ? 0 : (r / loss.scale) ** 2;
    slopes += first + 2 * z * second;
    const own = gradients.get(block[i]!) ?? new Float64Array(n);
    for (let j = 0; j < n; j++) own[j] = own[j]! + jacobian[j * m + i]! * r * first;
    gradients.set(block[i]!, own);
  }
  const blocks = gradients.size;
  if (blocks < 2) return Array.from({ length: n }, () => Infinity);
  const small = blocks / (blocks - 1) / (slopes / m) ** 2;
  return Array.from({ length: n }, (_, j) => {
    let sum = 0;
    for (const g of gradients.values()) {
      let moved = 0;
      for (let i = 0; i < n; i++) moved += H[j * n + i]! * g[i]!;
      sum += moved * moved;
    }
    return Number.isFinite(sum) ? Math.sqrt(small * sum) : Infinity;
  });
}
