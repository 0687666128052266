/** Four well-mixed masses in a ring, advanced exactly from row to row. */

/**
 * Coefficients over one row, masses in the order the liquid passes them:
 * x_i' = own_i x_i + before_i x_(i-1) + b_i + c_i t, the first preceded by the last.
 */
export interface Coefficients {
  readonly own: Float64Array;
  readonly before: Float64Array;
  readonly b: Float64Array;
  readonly c: Float64Array;
}

/** Longest share of the fastest time constant in one part. */
const REACH = 0.5;
const MOST_PARTS = 40_000;
/** Terms of the series: at that reach the next one is below 1e-15 of the first. */
const TERMS = 14;

/**
 * Advance `x` over `h` by the Taylor series of the exact solution, in parts short enough for it to
 * converge at once: x^(1) = A x + b + c t, x^(2) = A x^(1) + c, x^(k+1) = A x^(k). Written out for four
 * masses because a fit runs it a million times.
 * @returns false where the coefficients are so fast that the row would take too long
 */
export function advance({ own, before, b, c }: Coefficients, h: number, x: Float64Array): boolean {
  let fastest = 0;
  for (let i = 0; i < 4; i++) {
    const rate = Math.abs(own[i]!) + Math.abs(before[i]!);
    if (!(rate <= fastest)) fastest = rate;
  }
  const parts = Math.max(1, Math.ceil((fastest * h) / REACH));
  if (!(parts <= MOST_PARTS)) return false;
  const s = h / parts;
  const [o0, o1, o2, o3] = [own[0]! * s, own[1]! * s, own[2]! * s, own[3]! * s];
  const [p0, p1, p2, p3] = [before[0]! * s, before[1]! * s, before[2]! * s, before[3]! * s];
  let [x0, x1, x2, x3] = [x[0]!, x[1]!, x[2]!, x[3]!];
  for (let part = 0; part < parts; part++) {
    const t = part * s;
    let y0 = o0 * x0 + p0 * x3 + (b[0]! + c[0]! * t) * s;
    let y1 = o1 * x1 + p1 * x0 + (b[1]! + c[1]! * t) * s;
    let y2 = o2 * x2 + p2 * x1 + (b[2]! + c[2]! * t) * s;
    let y3 = o3 * x3 + p3 * x2 + (b[3]! + c[3]! * t) * s;
    // Second terms: the slope of what drives it enters here and nowhere later.
    let z0 = 0.5 * (o0 * y0 + p0 * y3 + c[0]! * s * s);
    let z1 = 0.5 * (o1 * y1 + p1 * y0 + c[1]! * s * s);
    let z2 = 0.5 * (o2 * y2 + p2 * y1 + c[2]! * s * s);
    let z3 = 0.5 * (o3 * y3 + p3 * y2 + c[3]! * s * s);
    for (let k = 3; k <= TERMS; k++) {
      x0 += y0;
      x1 += y1;
      x2 += y2;
      x3 += y3;
      const share = 1 / k;
      y0 = z0;
      y1 = z1;
      y2 = z2;
      y3 = z3;
      z0 = share * (o0 * y0 + p0 * y3);
      z1 = share * (o1 * y1 + p1 * y0);
      z2 = share * (o2 * y2 + p2 * y1);
      z3 = share * (o3 * y3 + p3 * y2);
    }
    x0 += y0 + z0;
    x1 += y1 + z1;
    x2 += y2 + z2;
    x3 += y3 + z3;
  }
  x[0] = x0;
  x[1] = x1;
  x[2] = x2;
  x[3] = x3;
  return true;
}
