/**
 * Factor the square matrix `a` (row-major, `n` × `n`) in place, with row pivoting.
 * @returns false where a pivot is zero or not a number: the matrix is singular as far as doubles can tell
 */
export function luFactor(a: Float64Array, n: number, pivot: Int32Array): boolean {
  for (let k = 0; k < n; k++) {
    let p = k;
    let largest = Math.abs(a[k * n + k]!);
    for (let i = k + 1; i < n; i++) {
      const size = Math.abs(a[i * n + k]!);
      if (size > largest) {
        largest = size;
        p = i;
      }
    }
    pivot[k] = p;
    // Written with "not" so that NaN counts as singular too.
    if (!(largest > 0)) return false;
    if (p !== k) {
      for (let j = 0; j < n; j++) {
        const swap = a[k * n + j]!;
        a[k * n + j] = a[p * n + j]!;
        a[p * n + j] = swap;
      }
    }
    const inverse = 1 / a[k * n + k]!;
    for (let i = k + 1; i < n; i++) {
      const factor = a[i * n + k]! * inverse;
      a[i * n + k] = factor;
      if (factor === 0) continue;
      for (let j = k + 1; j < n; j++) a[i * n + j] = a[i * n + j]! - factor * a[k * n + j]!;
    }
  }
  return true;
}

/** Solve with the factors of {@link luFactor}; `b` becomes the solution. */
export function luSolve(
  a: Float64Array,
  n: number,
  pivot: Int32Array,
  b: Float64Array,
  offset = 0,
): void {
  // Whole rows were swapped while factoring, so all swaps come before the forward pass.
  for (let k = 0; k < n; k++) {
    const p = pivot[k]!;
    if (p !== k) {
      const swap = b[offset + k]!;
      b[offset + k] = b[offset + p]!;
      b[offset + p] = swap;
    }
  }
  for (let i = 1; i < n; i++) {
    let sum = b[offset + i]!;
    for (let j = 0; j < i; j++) sum -= a[i * n + j]! * b[offset + j]!;
    b[offset + i] = sum;
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = b[offset + i]!;
    for (let j = i + 1; j < n; j++) sum -= a[i * n + j]! * b[offset + j]!;
    b[offset + i] = sum / a[i * n + i]!;
  }
}
