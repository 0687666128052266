/** Student's t: how much wider an interval is because the scatter itself was estimated. */
import { requireWithin, type Interval } from '../errors';

export const STUDENT_RANGE = {
  /** Two-sided. */
  confidence: [0.5, 0.9999],
  freedom: [1, 1e9],
} as const satisfies Record<string, Interval>;

/**
 * Half width of a two-sided interval in standard deviations.
 *
 * @param freedom - degrees of freedom: readings less parameters
 * @throws {@link OutOfRangeError} outside {@link STUDENT_RANGE}
 * @source Abramowitz & Stegun, Handbook of Mathematical Functions, 26.7.1; incomplete beta by its
 *   continued fraction, 26.5.8 (Lentz's method)
 * @example studentHalfWidth(0.95, 10) // 2.2281
 */
export function studentHalfWidth(confidence: number, freedom: number): number {
  requireWithin('Student t', STUDENT_RANGE, { confidence, freedom });
  const outside = 1 - confidence;
  let low = 0;
  let high = 1;
  while (twoTails(high, freedom) > outside) high *= 2;
  for (let i = 0; i < 200 && high - low > 1e-13 * high; i++) {
    const middle = 0.5 * (low + high);
    if (twoTails(middle, freedom) > outside) low = middle;
    else high = middle;
  }
  return 0.5 * (low + high);
}

/** Chance of |t| or more: the regularised incomplete beta I_x(ν/2, 1/2) at x = ν/(ν + t²). */
function twoTails(t: number, freedom: number): number {
  const t2 = t * t;
  return incompleteBeta(freedom / (freedom + t2), t2 / (freedom + t2), freedom / 2, 0.5);
}

/** I_x(a, b); `y` is 1 - x, given apart so that it stays exact near x = 1. */
function incompleteBeta(x: number, y: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (y <= 0) return 1;
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(y, x, b, a);
  const front = Math.exp(a * Math.log(x) + b * Math.log(y) - logBeta(a, b)) / a;
  const tiny = 1e-300;
  let c = 1;
  let d = 1 / orTiny(1 - ((a + b) * x) / (a + 1), tiny);
  let value = d;
  for (let m = 1; m < 500; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / orTiny(1 + even * d, tiny);
    c = orTiny(1 + even / c, tiny);
    value *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / orTiny(1 + odd * d, tiny);
    c = orTiny(1 + odd / c, tiny);
    const change = d * c;
    value *= change;
    if (Math.abs(change - 1) < 1e-16) break;
  }
  return front * value;
}

const orTiny = (x: number, tiny: number) => (Math.abs(x) < tiny ? tiny : x);

/** ln B(a, b); the difference of the two large terms is taken by series where a is large. */
function logBeta(a: number, b: number): number {
  if (a > 1e4) {
    // ln Γ(a+b) - ln Γ(a) = b ln a + b(b-1)/(2a) - b(b-1)(2b-1)/(12a²) + ...
    const ratio =
      b * Math.log(a) + (b * (b - 1)) / (2 * a) - (b * (b - 1) * (2 * b - 1)) / (12 * a * a);
    return logGamma(b) - ratio;
  }
  return logGamma(a) + logGamma(b) - logGamma(a + b);
}

/** ln Γ(x), x > 0: Stirling's series after stepping up. @source Abramowitz & Stegun 6.1.41 */
function logGamma(x: number): number {
  let shift = 0;
  let z = x;
  while (z < 12) shift += Math.log(z++);
  const w = 1 / (z * z);
  const series = (1 / 12 - w * (1 / 360 - w * (1 / 1260 - w * (1 / 1680 - w / 1188)))) / z;
  return (z - 0.5) * Math.log(z) - z + 0.5 * Math.log(2 * Math.PI) + series - shift;
}
