/** Singular values of a small square matrix. */

export interface Svd {
  /** Left and right vectors, one column after the other. */
  readonly u: Float64Array;
  readonly v: Float64Array;
  /** Singular values, largest first. */
  readonly s: Float64Array;
}

const SWEEPS = 60;

/**
 * A = U diag(s) Vᵀ by rotating pairs of columns until all are at right angles; small singular values
 * come out as exactly as large ones, which is why identifiability is read off here.
 *
 * @param a - n × n, one column after the other; not changed
 * @source one-sided Jacobi: Golub & Van Loan, Matrix Computations, 4th ed., sec. 8.6.3 (from memory)
 */
export function singularValues(a: Float64Array, n: number): Svd {
  const u = a.slice();
  const v = new Float64Array(n * n);
  for (let i = 0; i < n; i++) v[i * n + i] = 1;
  for (let sweep = 0, turned = true; turned && sweep < SWEEPS; sweep++) {
    turned = false;
    for (let p = 0; p < n - 1; p++) {
      for (let q = p + 1; q < n; q++) if (rotate(u, v, n, p, q)) turned = true;
    }
  }
  return sorted(u, v, n);
}

function rotate(u: Float64Array, v: Float64Array, n: number, p: number, q: number): boolean {
  let pp = 0;
  let qq = 0;
  let pq = 0;
  for (let i = 0; i < n; i++) {
    const a = u[p * n + i]!;
    const b = u[q * n + i]!;
    pp += a * a;
    qq += b * b;
    pq += a * b;
  }
  if (!(Math.abs(pq) > 1e-15 * Math.sqrt(pp * qq))) return false;
  const zeta = (qq - pp) / (2 * pq);
  const t = Math.sign(zeta || 1) / (Math.abs(zeta) + Math.hypot(1, zeta));
  const c = 1 / Math.hypot(1, t);
  const s = c * t;
  for (const m of [u, v]) {
    for (let i = 0; i < n; i++) {
      const a = m[p * n + i]!;
      const b = m[q * n + i]!;
      m[p * n + i] = c * a - s * b;
      m[q * n + i] = s * a + c * b;
    }
  }
  return true;
}

function sorted(u: Float64Array, v: Float64Array, n: number): Svd {
  const norms = Array.from({ length: n }, (_, j) => Math.hypot(...u.subarray(j * n, j * n + n)));
  const order = norms.map((_, j) => j).sort((a, b) => norms[b]! - norms[a]!);
  const out = { u: new Float64Array(n * n), v: new Float64Array(n * n), s: new Float64Array(n) };
  order.forEach((from, to) => {
    const size = norms[from]!;
    out.s[to] = size;
    for (let i = 0; i < n; i++) {
      out.u[to * n + i] = size > 0 ? u[from * n + i]! / size : 0;
      out.v[to * n + i] = v[from * n + i]!;
    }
  });
  return out;
}
