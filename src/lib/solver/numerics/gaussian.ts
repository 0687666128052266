/** Density of residuals whose errors are partly their own and partly shared. */
import { SolverError } from '../errors';

const LOG_2PI = Math.log(2 * Math.PI);

/**
 * Logarithm of the normal density of residuals r with covariance D + Σ u uᵀ: D diagonal (`variances`),
 * one vector u for every error that moves several residuals together (`shared`).
 *
 * By the lemma of Woodbury and the determinant lemma only a matrix as large as the number of shared
 * errors is factored: M = 1 + Uᵀ D⁻¹ U, r·Σ⁻¹·r = r·D⁻¹·r − |L⁻¹ Uᵀ D⁻¹ r|² with M = L Lᵀ.
 *
 * @throws {@link SolverError} where a variance is not above zero
 * @source Golub & Van Loan, Matrix Computations, 4th ed., sec. 2.1.4 (from memory)
 * @example logDensity([0], [1], []) // -0.9189
 */
export function logDensity(
  residuals: readonly number[],
  variances: readonly number[],
  shared: readonly (readonly number[])[],
): number {
  let square = 0;
  let logDeterminant = 0;
  residuals.forEach((r, i) => {
    const v = variances[i]!;
    if (!(v > 0)) {
      throw new SolverError('a variance must be above zero', { code: 'variance', value: v });
    }
    square += (r * r) / v;
    logDeterminant += Math.log(v);
  });
  const k = shared.length;
  const dot = (a: readonly number[], b: readonly number[]) => {
    let sum = 0;
    for (let i = 0; i < a.length; i++) sum += (a[i]! * b[i]!) / variances[i]!;
    return sum;
  };

  // Cholesky row by row, with the right side solved on the way.
  const L: number[][] = [];
  const y: number[] = [];
  for (let i = 0; i < k; i++) {
    const row: number[] = [];
    for (let j = 0; j <= i; j++) {
      let m = (i === j ? 1 : 0) + dot(shared[i]!, shared[j]!);
      for (let p = 0; p < j; p++) m -= row[p]! * (L[j]?.[p] ?? row[p]!);
      row.push(i === j ? Math.sqrt(m) : m / L[j]![j]!);
    }
    L.push(row);
    let right = dot(shared[i]!, residuals);
    for (let p = 0; p < i; p++) right -= row[p]! * y[p]!;
    y.push(right / row[i]!);
    logDeterminant += 2 * Math.log(row[i]!);
    square -= y[i]! * y[i]!;
  }
  return -0.5 * (square + logDeterminant + residuals.length * LOG_2PI);
}

/** Logarithm of a sum of exponentials, without overflow; -Infinity for nothing. */
export function logSum(terms: readonly number[]): number {
  const top = Math.max(...terms);
  if (top === -Infinity) return top;
  return top + Math.log(terms.reduce((sum, t) => sum + Math.exp(t - top), 0));
}
