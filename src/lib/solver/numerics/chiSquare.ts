/** Chance that a sum of squares of normal errors is as large as one found. */
import { OutOfRangeError } from '../errors';

/** Beyond so many terms a series or a fraction has not converged. */
const MOST_TERMS = 1000;
/** Lanczos' coefficients, g = 7, nine terms: Numerical Recipes and others (from memory; tested). */
const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313,
  -176.61502916214059, 12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6,
  1.5056327351493116e-7,
] as const;

/** Natural logarithm of the gamma function for `x` above zero, to about 1e-14. */
export function logGamma(x: number): number {
  if (!(x > 0)) throw new OutOfRangeError('gamma function', 'x', x, [0, Infinity]);
  // Below one half the series is reached by one step of the recurrence.
  if (x < 0.5) return logGamma(x + 1) - Math.log(x);
  const z = x - 1;
  const t = z + 7.5;
  const sum = LANCZOS.slice(1).reduce<number>((s, c, i) => s + c / (z + i + 1), LANCZOS[0]);
  return 0.5 * Math.log(2 * Math.PI) + (z + 0.5) * Math.log(t) - t + Math.log(sum);
}

/**
 * Probability that chi-square with `freedom` degrees of freedom is at or above `x`.
 *
 * The upper regularised gamma function Q(freedom/2, x/2): by its series below the middle, by its
 * continued fraction (modified Lentz) above.
 *
 * @throws {@link OutOfRangeError} for x below zero or freedom not above zero, NaN included
 * @source Abramowitz & Stegun 26.4.19, 6.5.29 and 6.5.31
 * @example chiSquareAbove(3.841459, 1) // 0.05
 */
export function chiSquareAbove(x: number, freedom: number): number {
  if (!(x >= 0)) throw new OutOfRangeError('chi-square', 'x', x, [0, Infinity]);
  if (!(freedom > 0)) throw new OutOfRangeError('chi-square', 'freedom', freedom, [0, Infinity]);
  if (x === 0) return 1;
  const a = freedom / 2;
  const h = x / 2;
  const front = Math.exp(a * Math.log(h) - h - logGamma(a));
  return h < a + 1 ? 1 - front * lowerSeries(a, h) : front * upperFraction(a, h);
}

function lowerSeries(a: number, h: number): number {
  let term = 1 / a;
  let sum = term;
  for (let n = 1; n < MOST_TERMS && term > sum * 1e-17; n++) {
    term *= h / (a + n);
    sum += term;
  }
  return sum;
}

function upperFraction(a: number, h: number): number {
  const tiny = 1e-300;
  let b = h + 1 - a;
  let c = 1 / tiny;
  let d = 1 / b;
  let f = d;
  for (let n = 1; n < MOST_TERMS; n++) {
    const an = -n * (n - a);
    b += 2;
    d = an * d + b;
    if (Math.abs(d) < tiny) d = tiny;
    c = b + an / c;
    if (Math.abs(c) < tiny) c = tiny;
    d = 1 / d;
    const step = d * c;
    f *= step;
    if (Math.abs(step - 1) < 1e-16) break;
  }
  return f;
}
