/**
 * A function on -1 to 1 from its values at nine Chebyshev points, ends included.
 * Source: Trefethen, Approximation Theory and Approximation Practice, SIAM 2013, ch. 2-4 (from memory).
 */

const DEGREE = 8;
/** Points, and terms. */
export const COUNT = DEGREE + 1;

/** From -1 up; ends and middle exact. */
export const NODES: readonly number[] = [-1, ...inner(-1), 0, ...inner(1).reverse(), 1];

function inner(sign: -1 | 1): number[] {
  return [1, 2, 3].map((k) => sign * Math.cos((k * Math.PI) / DEGREE));
}

/** Terms from values, row by row: c_j = 2/8 sum'' f_k T_j(x_k), halved for the last. */
const TERMS = Float64Array.from({ length: COUNT * COUNT }, (_, i) => {
  const j = Math.floor(i / COUNT);
  const k = i % COUNT;
  const halved = (at: number) => (at === 0 || at === DEGREE ? 0.5 : 1);
  return (2 / DEGREE) * halved(j) * halved(k) * Math.cos((j * (DEGREE - k) * Math.PI) / DEGREE);
});

/** Coefficient of x^p in T_j, row by row. */
const POLYNOMIALS = polynomials();

function polynomials(): Float64Array {
  const T = new Float64Array(COUNT * COUNT);
  T[0] = 1;
  T[COUNT + 1] = 1;
  for (let j = 2; j < COUNT; j++) {
    for (let p = 0; p < COUNT; p++) {
      const raised = p > 0 ? 2 * T[(j - 1) * COUNT + p - 1]! : 0;
      T[j * COUNT + p] = raised - T[(j - 2) * COUNT + p]!;
    }
  }
  return T;
}

/** Chebyshev terms of the polynomial through `values` at {@link NODES}. */
export function series(values: Float64Array): Float64Array {
  const terms = new Float64Array(COUNT);
  for (let j = 0; j < COUNT; j++) {
    let sum = 0;
    for (let k = 0; k < COUNT; k++) sum += TERMS[j * COUNT + k]! * values[k]!;
    terms[j] = sum;
  }
  return terms;
}

/** The same polynomial in powers, ascending, written into `out` from `offset` on. */
export function powers(terms: Float64Array, out: Float64Array, offset: number): void {
  for (let p = 0; p < COUNT; p++) {
    let sum = 0;
    for (let j = p; j < COUNT; j++) sum += terms[j]! * POLYNOMIALS[j * COUNT + p]!;
    out[offset + p] = sum;
  }
}
