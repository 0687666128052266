/** A tall system folded into a small one of the same least squares, so that no digits are squared away. */
import { singularValues, type Svd } from './svd';

export interface Folded extends Svd {
  /** Uᵀ Qᵀ r: what the columns see of the residuals. */
  readonly seen: Float64Array;
}

/**
 * Fold J (m × n, one column after the other) and r by Householder reflections, then J = Q U diag(s) Vᵀ.
 * Both arrays are used up.
 */
export function fold(J: Float64Array, m: number, n: number, r: Float64Array): Folded {
  const R = new Float64Array(n * n);
  for (let k = 0; k < n; k++) {
    const column = J.subarray(k * m, k * m + m);
    const alpha = k < m ? reflector(column, k) : 0;
    if (alpha !== 0) {
      for (let j = k + 1; j < n; j++) reflect(column, k, J.subarray(j * m, j * m + m));
      reflect(column, k, r);
    }
    R[k * n + k] = alpha;
    for (let i = 0; i < k; i++) R[k * n + i] = column[i]!;
  }
  const svd = singularValues(R, n);
  const seen = new Float64Array(n);
  for (let j = 0; j < n; j++) {
    let sum = 0;
    for (let i = 0; i < n && i < m; i++) sum += svd.u[j * n + i]! * r[i]!;
    seen[j] = sum;
  }
  return { ...svd, seen };
}

/** Make of `x` below `k` the unit vector of its reflection; returns what stands on the diagonal after it. */
function reflector(x: Float64Array, k: number): number {
  const m = x.length;
  let norm = 0;
  for (let i = k; i < m; i++) norm += x[i]! * x[i]!;
  norm = Math.sqrt(norm);
  if (!(norm > 0)) return 0;
  const alpha = x[k]! > 0 ? -norm : norm;
  x[k] = x[k]! - alpha;
  let length = 0;
  for (let i = k; i < m; i++) length += x[i]! * x[i]!;
  length = Math.sqrt(length);
  for (let i = k; i < m; i++) x[i] = x[i]! / length;
  return alpha;
}

function reflect(v: Float64Array, k: number, y: Float64Array): void {
  let dot = 0;
  for (let i = k; i < y.length; i++) dot += v[i]! * y[i]!;
  dot *= 2;
  for (let i = k; i < y.length; i++) y[i] = y[i]! - dot * v[i]!;
}
