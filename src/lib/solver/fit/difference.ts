/** Derivatives of residuals by differences. */
import type { LeastSquaresProblem } from './types';

export type Difference = 'forward' | 'central';

/** Shares of a parameter's size by which it is moved: roots of the rounding error of a double. */
const STEP = { forward: Math.sqrt(Number.EPSILON), central: Math.cbrt(Number.EPSILON) } as const;

export interface DifferenceRequest {
  readonly p: Float64Array;
  /** Residuals at `p`. */
  readonly at: Float64Array;
  readonly lower: ArrayLike<number>;
  readonly upper: ArrayLike<number>;
  readonly typical: ArrayLike<number>;
  readonly by: Difference;
}

/**
 * Fill `out` (one column after the other). A move that would pass a bound goes the other way; a central
 * one becomes one-sided there.
 * @returns how many times the residuals were evaluated
 */
export function differences(
  problem: LeastSquaresProblem,
  { p, at, lower, upper, typical, by }: DifferenceRequest,
  out: Float64Array,
): number {
  const m = at.length;
  const moved = p.slice();
  const above = new Float64Array(m);
  const below = new Float64Array(m);
  let evaluations = 0;
  const evaluate = (j: number, value: number, to: Float64Array) => {
    moved[j] = value;
    problem.residuals(moved, to);
    evaluations++;
    moved[j] = p[j]!;
    return value - p[j]!; // as rounded, which is what the residuals saw
  };
  for (let j = 0; j < p.length; j++) {
    const h = STEP[by] * Math.max(Math.abs(p[j]!), 1e-3 * typical[j]!);
    const column = out.subarray(j * m, j * m + m);
    const up = p[j]! + h <= upper[j]!;
    const down = p[j]! - h >= lower[j]!;
    if (by === 'central' && up && down) {
      const width = evaluate(j, p[j]! + h, above) - evaluate(j, p[j]! - h, below);
      for (let i = 0; i < m; i++) column[i] = (above[i]! - below[i]!) / width;
    } else {
      const width = evaluate(j, up ? p[j]! + h : p[j]! - h, above);
      for (let i = 0; i < m; i++) column[i] = (above[i]! - at[i]!) / width;
    }
  }
  return evaluations;
}
