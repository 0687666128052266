/** Rating points of a restriction as one law. */
import type { LossPoint } from '../loop/types';

/** dp = a Q + b Q², with its fit's largest miss. */
export interface LinearQuadratic {
  readonly a: number;
  readonly b: number;
  /** Largest |fit − point| over the largest point's loss, 1. */
  readonly miss: number;
  readonly clamped: 'a' | 'b' | null;
}

/**
 * Non-negative least squares of dp = a Q + b Q². Exact for two points that a and b of one sign can
 * meet; else the one that would be negative is zero and the other is fitted alone.
 *
 * @example fitLinearQuadratic([{ flow: 1, loss: 3 }, { flow: 2, loss: 10 }]).b // 2
 */
export function fitLinearQuadratic(points: readonly LossPoint[]): LinearQuadratic {
  // Scaled by the largest flow and loss, so that the sums keep their digits.
  const q = Math.max(...points.map((p) => p.flow));
  const y = Math.max(...points.map((p) => p.loss)) || 1;
  let s2 = 0;
  let s3 = 0;
  let s4 = 0;
  let t1 = 0;
  let t2 = 0;
  for (const p of points) {
    const x = p.flow / q;
    const z = p.loss / y;
    s2 += x * x;
    s3 += x ** 3;
    s4 += x ** 4;
    t1 += x * z;
    t2 += x * x * z;
  }
  const fit = (a: number, b: number, clamped: LinearQuadratic['clamped']) => {
    const misses = points.map((p) => (a + (b * p.flow) / q) * (p.flow / q) - p.loss / y);
    const miss = Math.max(...misses.map(Math.abs));
    const squares = misses.reduce((sum, m) => sum + m * m, 0);
    return { law: { a: (a * y) / q, b: (b * y) / (q * q), miss, clamped }, squares };
  };
  const det = s2 * s4 - s3 * s3;
  const a = (t1 * s4 - t2 * s3) / det;
  const b = (s2 * t2 - s3 * t1) / det;
  const rounding = 1e-12 * (Math.abs(a) + Math.abs(b));
  if (a >= -rounding && b >= -rounding) return fit(Math.max(a, 0), Math.max(b, 0), null).law;
  const quadratic = fit(0, t2 / s4, 'a');
  const linear = fit(t1 / s2, 0, 'b');
  return quadratic.squares <= linear.squares ? quadratic.law : linear.law;
}
