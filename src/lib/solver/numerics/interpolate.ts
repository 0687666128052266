/** A curve through points that never overshoots them. */
import { InvalidInputError, OutOfRangeError, type Interval } from '../errors';

/** A function of one variable on a closed interval. */
export interface Curve {
  /** @throws {@link OutOfRangeError} outside `domain`, NaN included */
  value(x: number): number;
  /** First derivative; continuous. @throws {@link OutOfRangeError} outside `domain` */
  slope(x: number): number;
  readonly domain: Interval;
}

/**
 * Piecewise cubic through the points, monotone wherever the points are: no bump between two readings
 * that the readings do not show. A straight line comes back as a straight line.
 *
 * Slopes at inner points are the weighted harmonic mean of the two neighbouring secants (zero at a
 * turning point); at the ends a three-point slope, held to the monotone region. Two points give a line.
 *
 * @param x - strictly increasing
 * @param y - as many values
 * @throws {@link InvalidInputError} on fewer than two points, unequal lengths, values that are not
 *   finite, or x that does not increase
 * @source Fritsch & Carlson, SIAM J. Numer. Anal. 17 (1980) 238-246; slopes by Fritsch & Butland,
 *   SIAM J. Sci. Stat. Comput. 5 (1984) 300-304
 * @example pchip([0, 1, 2], [0, 1, 4]).value(1) // 1
 */
export function pchip(x: readonly number[], y: readonly number[]): Curve {
  requirePoints(x, y);
  const xs = Float64Array.from(x);
  const ys = Float64Array.from(y);
  const last = xs.length - 1;
  const d = slopes(xs, ys);
  const domain: Interval = [xs[0]!, xs[last]!];

  /** Index of the piece that holds v. */
  const piece = (v: number): number => {
    if (!(v >= domain[0] && v <= domain[1])) {
      throw new OutOfRangeError('curve through points', 'x', v, domain);
    }
    let low = 0;
    let high = last;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (xs[middle]! <= v) low = middle;
      else high = middle;
    }
    return low;
  };

  return {
    domain,
    value(v) {
      const i = piece(v);
      const h = xs[i + 1]! - xs[i]!;
      const t = (v - xs[i]!) / h;
      const u = 1 - t;
      // Hermite form written about both ends, so that each end comes back exactly.
      return (
        u * u * ((1 + 2 * t) * ys[i]! + t * h * d[i]!) +
        t * t * ((1 + 2 * u) * ys[i + 1]! - u * h * d[i + 1]!)
      );
    },
    slope(v) {
      const i = piece(v);
      const h = xs[i + 1]! - xs[i]!;
      const t = (v - xs[i]!) / h;
      const secant = (ys[i + 1]! - ys[i]!) / h;
      return 6 * t * (1 - t) * secant + (1 - t) * (1 - 3 * t) * d[i]! + t * (3 * t - 2) * d[i + 1]!;
    },
  };
}

function requirePoints(x: readonly number[], y: readonly number[]): void {
  if (x.length !== y.length || x.length < 2) {
    throw new InvalidInputError(
      'curve',
      `a curve needs two points or more, got ${x.length} x and ${y.length} y`,
    );
  }
  for (let i = 0; i < x.length; i++) {
    const bad = [x[i]!, y[i]!].find((v) => !Number.isFinite(v));
    if (bad !== undefined)
      throw new InvalidInputError('curve', `point ${i + 1} is not a number`, bad);
    if (i > 0 && !(x[i]! > x[i - 1]!)) {
      throw new InvalidInputError('curve', `x must increase, but point ${i + 1} does not`, x[i]);
    }
  }
}

function slopes(x: Float64Array, y: Float64Array): Float64Array {
  const n = x.length;
  const d = new Float64Array(n);
  const h = (i: number) => x[i + 1]! - x[i]!;
  const secant = (i: number) => (y[i + 1]! - y[i]!) / h(i);
  if (n === 2) return d.fill(secant(0));
  for (let i = 1; i < n - 1; i++) {
    const before = secant(i - 1);
    const after = secant(i);
    if (before * after <= 0) continue; // turning point or flat: slope zero
    const w1 = 2 * h(i) + h(i - 1);
    const w2 = h(i) + 2 * h(i - 1);
    d[i] = (w1 + w2) / (w1 / before + w2 / after);
  }
  d[0] = endSlope(h(0), h(1), secant(0), secant(1));
  d[n - 1] = endSlope(h(n - 2), h(n - 3), secant(n - 2), secant(n - 3));
  return d;
}

/** Three-point slope at an end, pulled back to what keeps the end piece monotone. */
function endSlope(h0: number, h1: number, s0: number, s1: number): number {
  const slope = ((2 * h0 + h1) * s0 - h0 * s1) / (h0 + h1);
  if (slope * s0 <= 0) return 0;
  if (s0 * s1 < 0 && Math.abs(slope) > 3 * Math.abs(s0)) return 3 * s0;
  return slope;
}
