/** Root of a function of one variable inside a bracket. */
import { NoRootError } from '../errors';

export interface BrentOptions {
  /** f(a) and f(b), when already known. */
  readonly fa?: number;
  readonly fb?: number;
  /** Half-width of the bracket at which to stop, in units of x; rounding of x is added to it. */
  readonly xtol?: number;
  /** Ample by default: a smooth crossing takes about 8, a ninth-order one some 120. */
  readonly maxIterations?: number;
}

export interface Root {
  readonly x: number;
  readonly fx: number;
  /** Times f was called after the two ends. */
  readonly iterations: number;
}

/**
 * Find where `f` changes sign between `a` and `b` (either order): Brent's method, which takes the
 * secant or inverse quadratic step when it helps and halves the bracket when it does not.
 *
 * @returns the point of the last bracket with the smaller |f|
 * @throws {@link NoRootError} when f(a) and f(b) have the same sign, when f gives NaN, or when the
 *   iterations run out (facts carry the best x as `value`)
 * @source Brent, Algorithms for Minimization without Derivatives, Prentice-Hall 1973, ch. 4
 * @example brent((x) => x * x - 2, 0, 2).x // 1.41421356
 */
export function brent(
  f: (x: number) => number,
  a: number,
  b: number,
  { fa, fb, xtol = 1e-12, maxIterations = 500 }: BrentOptions = {},
): Root {
  const at = (x: number, known?: number) => {
    const y = known ?? f(x);
    if (Number.isNaN(y)) {
      throw new NoRootError(`the function is not a number at ${x}`, { law: 'brent', value: x });
    }
    return y;
  };
  // b: best point so far; a: the one before it; c: the other end of the bracket.
  let ya = at(a, fa);
  let yb = at(b, fb);
  if (ya === 0) return { x: a, fx: 0, iterations: 0 };
  if (yb === 0) return { x: b, fx: 0, iterations: 0 };
  if (ya > 0 === yb > 0) {
    throw new NoRootError(`no change of sign: f(${a}) = ${ya}, f(${b}) = ${yb}`, {
      law: 'brent',
      range: a < b ? [a, b] : [b, a],
    });
  }
  let c = a;
  let yc = ya;
  let step = b - a;
  let stepBefore = step;

  for (let iterations = 0; iterations <= maxIterations; iterations++) {
    if (Math.abs(yc) < Math.abs(yb)) {
      a = b;
      b = c;
      c = a;
      ya = yb;
      yb = yc;
      yc = ya;
    }
    const tolerance = 2 * Number.EPSILON * Math.abs(b) + xtol / 2;
    const half = (c - b) / 2;
    if (Math.abs(half) <= tolerance || yb === 0) return { x: b, fx: yb, iterations };

    const proposed =
      Math.abs(stepBefore) >= tolerance && Math.abs(ya) > Math.abs(yb)
        ? interpolated(a, b, c, ya, yb, yc)
        : NaN;
    // Taken only if it stays in the bracket and shrinks faster than halving every second step.
    const inside = proposed / half > 0 && Math.abs(proposed) < 1.5 * Math.abs(half) - tolerance / 2;
    if (inside && Math.abs(proposed) < Math.abs(stepBefore / 2)) {
      stepBefore = step;
      step = proposed;
    } else {
      stepBefore = step = half;
    }

    a = b;
    ya = yb;
    b += Math.abs(step) > tolerance ? step : Math.sign(half) * tolerance;
    yb = at(b);
    if (yb > 0 === yc > 0) {
      c = a;
      yc = ya;
      stepBefore = step = b - a;
    }
  }
  throw new NoRootError(`no root within ${maxIterations} iterations`, { law: 'brent', value: b });
}

/** Step from b by inverse quadratic interpolation, or by the secant when only two points differ. */
function interpolated(a: number, b: number, c: number, ya: number, yb: number, yc: number): number {
  const s = yb / ya;
  if (a === c) return ((c - b) * s) / (s - 1);
  const q = ya / yc;
  const r = yb / yc;
  const p = s * ((c - b) * q * (q - r) - (b - a) * (r - 1));
  return -p / ((q - 1) * (r - 1) * (s - 1));
}
