/** Well-mixed parts in a closed chain, with the metal of both cores, advanced from row to row. */

/**
 * Places in the order of the flow; the last of the chain leads to the first. Hoses are liquid by
 * themselves, that between the cores in two parts: what passes it moves the probes most.
 */
export const AT = {
  reservoir: 0,
  suction: 1,
  delivery: 2,
  first: 3,
  transfer: 4,
  arriving: 5,
  second: 6,
  back: 7,
  firstMetal: 8,
  secondMetal: 9,
} as const;
export const CHAIN = 8;
export const STATES = 10;

/**
 * Coefficients over one row: x_i' = own_i x_i + before_i x_(i-1) + b_i + c_i t. A metal has before it what
 * enters its core, and acts on its liquid; a short circuit brings the last of the chain to the suction run.
 */
export interface ChainRates {
  readonly own: Float64Array;
  readonly before: Float64Array;
  readonly b: Float64Array;
  readonly c: Float64Array;
  firstByMetal: number;
  secondByMetal: number;
  shortCircuit: number;
}

/** Most of the fastest time constants in one part of a row: beyond it the terms grow before they fall. */
const REACH = 4;
const MOST_PARTS = 20_000;
/** The first term left out, as a share of the first: so small that a fit's differences do not see where it changes. */
const LEFT_OUT = 1e-11;
const MOST_TERMS = 32;
/** How far each number of terms reaches: z where z^(n+1) / (n+1)! is what may be left out. */
const REACH_OF_TERMS = Float64Array.from({ length: MOST_TERMS }, (_, n) => {
  let logFactorial = 0;
  for (let k = 2; k <= n + 1; k++) logFactorial += Math.log(k);
  return Math.exp((Math.log(LEFT_OUT) + logFactorial) / (n + 1));
});

/** Terms of the series for a part of so many of the fastest time constants. */
function termsFor(z: number): number {
  let n = 2; // the slope of what drives enters in the second
  while (n < MOST_TERMS - 1 && REACH_OF_TERMS[n]! < z) n++;
  return n;
}

/**
 * Advance `x` over `h` by the Taylor series of the exact solution, in parts short enough for it to
 * converge soon: x^(1) = A x + b + c t, x^(2) = A x^(1) + c, x^(k+1) = A x^(k). Written out because a
 * fit runs it a million times.
 * @returns false where the rates are so fast that the row would take too long
 */
export function advanceChain(rates: ChainRates, h: number, x: Float64Array): boolean {
  const { own, before, b, c } = rates;
  let fastest = 0;
  for (let i = 0; i < STATES; i++) {
    const rate = Math.abs(own[i]!) + Math.abs(before[i]!);
    if (!(rate <= fastest)) fastest = rate;
  }
  const parts = Math.max(1, Math.ceil((fastest * h) / REACH));
  if (!(parts <= MOST_PARTS)) return false;
  const s = h / parts;
  const terms = termsFor(fastest * s);
  const [o0, o1, o2, o3, o4] = [own[0]! * s, own[1]! * s, own[2]! * s, own[3]! * s, own[4]! * s];
  const [o5, o6, o7, o8, o9] = [own[5]! * s, own[6]! * s, own[7]! * s, own[8]! * s, own[9]! * s];
  const [p0, p1, p2, p3, p4] = [
    before[0]! * s,
    before[1]! * s,
    before[2]! * s,
    before[3]! * s,
    before[4]! * s,
  ];
  const [p5, p6, p7, p8, p9] = [
    before[5]! * s,
    before[6]! * s,
    before[7]! * s,
    before[8]! * s,
    before[9]! * s,
  ];
  const q1 = rates.shortCircuit * s;
  const q3 = rates.firstByMetal * s;
  const q6 = rates.secondByMetal * s;
  let [x0, x1, x2, x3, x4] = [x[0]!, x[1]!, x[2]!, x[3]!, x[4]!];
  let [x5, x6, x7, x8, x9] = [x[5]!, x[6]!, x[7]!, x[8]!, x[9]!];
  for (let part = 0; part < parts; part++) {
    const t = part * s;
    // First terms: what drives the parts enters here, its slope in the second and nowhere later.
    let y0 = o0 * x0 + p0 * x7 + (b[0]! + c[0]! * t) * s;
    let y1 = o1 * x1 + p1 * x0 + q1 * x7 + (b[1]! + c[1]! * t) * s;
    let y2 = o2 * x2 + p2 * x1 + (b[2]! + c[2]! * t) * s;
    let y3 = o3 * x3 + p3 * x2 + q3 * x8 + (b[3]! + c[3]! * t) * s;
    let y4 = o4 * x4 + p4 * x3 + (b[4]! + c[4]! * t) * s;
    let y5 = o5 * x5 + p5 * x4 + (b[5]! + c[5]! * t) * s;
    let y6 = o6 * x6 + p6 * x5 + q6 * x9 + (b[6]! + c[6]! * t) * s;
    let y7 = o7 * x7 + p7 * x6 + (b[7]! + c[7]! * t) * s;
    let y8 = o8 * x8 + p8 * x2 + (b[8]! + c[8]! * t) * s;
    let y9 = o9 * x9 + p9 * x5 + (b[9]! + c[9]! * t) * s;
    for (let k = 2; k <= terms; k++) {
      x0 += y0;
      x1 += y1;
      x2 += y2;
      x3 += y3;
      x4 += y4;
      x5 += y5;
      x6 += y6;
      x7 += y7;
      x8 += y8;
      x9 += y9;
      const share = 1 / k;
      const slope = k === 2 ? s * s : 0;
      const z0 = share * (o0 * y0 + p0 * y7 + slope * c[0]!);
      const z1 = share * (o1 * y1 + p1 * y0 + q1 * y7 + slope * c[1]!);
      const z2 = share * (o2 * y2 + p2 * y1 + slope * c[2]!);
      const z3 = share * (o3 * y3 + p3 * y2 + q3 * y8 + slope * c[3]!);
      const z4 = share * (o4 * y4 + p4 * y3 + slope * c[4]!);
      const z5 = share * (o5 * y5 + p5 * y4 + slope * c[5]!);
      const z6 = share * (o6 * y6 + p6 * y5 + q6 * y9 + slope * c[6]!);
      const z7 = share * (o7 * y7 + p7 * y6 + slope * c[7]!);
      const z8 = share * (o8 * y8 + p8 * y2 + slope * c[8]!);
      const z9 = share * (o9 * y9 + p9 * y5 + slope * c[9]!);
      y0 = z0;
      y1 = z1;
      y2 = z2;
      y3 = z3;
      y4 = z4;
      y5 = z5;
      y6 = z6;
      y7 = z7;
      y8 = z8;
      y9 = z9;
    }
    x0 += y0;
    x1 += y1;
    x2 += y2;
    x3 += y3;
    x4 += y4;
    x5 += y5;
    x6 += y6;
    x7 += y7;
    x8 += y8;
    x9 += y9;
  }
  x.set([x0, x1, x2, x3, x4, x5, x6, x7, x8, x9]);
  return true;
}
