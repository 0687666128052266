/** Which parameters the readings cannot tell apart. */
import { fold } from './factor';
import type { LeastSquaresFit } from './types';

/** A combination of parameters that may change together with hardly any trace in the readings. */
export interface WeakDirection {
  /** Names, the most affected first; one name alone: nothing in the readings depends on it. */
  readonly parameters: readonly string[];
  /** How each of them moves along it, as shares of their sizes; the largest is 1. */
  readonly moves: readonly number[];
  /** One standard deviation along it, as a share of the parameters' sizes. */
  readonly deviation: number;
}

export interface Separability {
  /** Weakest first; empty: every parameter can be told from the others. */
  readonly weak: readonly WeakDirection[];
  /** Strongest over weakest direction, parameters as shares of their sizes. */
  readonly condition: number;
}

/** Parameters that take less part than this in a direction are not named with it. */
const NAMED = 0.25;

/**
 * Singular values of the derivatives by the relative size of each parameter. A direction along which one
 * standard deviation is more than `limit` of the parameters themselves is one the readings do not hold.
 *
 * @param sizes - size of each parameter for which a change of 1 is a change by itself
 * @param noise - standard deviation of the residuals
 * @param limit - share above which a combination counts as not told
 */
export function separability(
  fit: Pick<LeastSquaresFit, 'names' | 'jacobian'>,
  { sizes, noise, limit = 0.25 }: { sizes: ArrayLike<number>; noise: number; limit?: number },
): Separability {
  const n = fit.names.length;
  const m = fit.jacobian.length / n;
  const J = fit.jacobian.slice();
  for (let j = 0; j < n; j++) for (let i = 0; i < m; i++) J[j * m + i] = J[j * m + i]! * sizes[j]!;
  const { s, v } = fold(J, m, n, new Float64Array(m));
  const weak: WeakDirection[] = [];
  for (let a = n - 1; a >= 0; a--) {
    const deviation = s[a]! > 1e-14 * s[0]! ? noise / s[a]! : Infinity;
    if (!(deviation > limit)) continue;
    const parts = fit.names
      .map((name, j) => ({ name, move: v[a * n + j]! }))
      .sort((p, q) => Math.abs(q.move) - Math.abs(p.move));
    const most = parts[0]!.move;
    const named = parts.filter(({ move }) => Math.abs(move / most) >= NAMED);
    weak.push({
      parameters: named.map(({ name }) => name),
      moves: named.map(({ move }) => move / most),
      deviation,
    });
  }
  return { weak, condition: s[n - 1]! > 0 ? s[0]! / s[n - 1]! : Infinity };
}
