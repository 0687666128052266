/** When a channel began to change, and how surely that is known. */

export interface Onset {
  /** s */
  readonly at: number;
  /** The change began within, with 95 % confidence; never narrower than the rows either side. */
  readonly earliest: number;
  readonly latest: number;
  /** Level before, and at the end of the stretch looked at. */
  readonly before: number;
  readonly after: number;
  readonly shape: 'step' | 'ramp';
}

/** Rise of χ² with one parameter that leaves 95 % (from any table). */
const CHI2_95 = 3.841;
/** Fewest readings on either side of an onset. */
const LEAST = 4;

/**
 * Level, then either another level or an even change from the level: the least squares of both over every
 * place the change could begin. What fits within χ² of the best is where it may have begun.
 *
 * @param t - times of the readings, rising; @param x - readings, no gaps
 * @param noise - standard deviation of a reading
 * @returns null where there are too few readings
 */
export function onset(t: ArrayLike<number>, x: ArrayLike<number>, noise: number): Onset | null {
  const n = t.length;
  if (n < 2 * LEAST) return null;
  const fits = [stepFits(x, n), rampFits(t, x, n)] as const;
  const least = fits.map(({ errors }) => Math.min(...errors.subarray(LEAST, n - LEAST + 1)));
  const which = least[0]! <= least[1]! ? 0 : 1;
  const { errors, levels } = fits[which];
  const limit = least[which]! + CHI2_95 * noise * noise;
  let best = LEAST;
  let first = -1;
  let last = -1;
  for (let k = LEAST; k <= n - LEAST; k++) {
    if (errors[k]! < errors[best]!) best = k;
    if (errors[k]! > limit) continue;
    if (first < 0) first = k;
    last = k;
  }
  // Row k is the first of the change: it began after row k - 1.
  return {
    at: which === 0 ? 0.5 * (t[best - 1]! + t[best]!) : t[best - 1]!,
    earliest: t[Math.max(0, first - (which === 0 ? 1 : 2))]!,
    latest: t[Math.min(n - 1, last)]!,
    before: levels[best]!,
    after: mean(x, n - LEAST, n),
    shape: which === 0 ? 'step' : 'ramp',
  };
}

interface Fits {
  /** Sum of squares when the change begins at row k. */
  readonly errors: Float64Array;
  /** Level before it. */
  readonly levels: Float64Array;
}

function stepFits(x: ArrayLike<number>, n: number): Fits {
  const errors = new Float64Array(n + 1).fill(Infinity);
  const levels = new Float64Array(n + 1);
  const mid = mean(x, 0, n);
  let [before, beforeSquares, all, allSquares] = [0, 0, 0, 0];
  for (let i = 0; i < n; i++) {
    const v = x[i]! - mid; // small numbers, so that no digits are lost in the squares
    all += v;
    allSquares += v * v;
  }
  for (let k = 1; k < n; k++) {
    const v = x[k - 1]! - mid;
    before += v;
    beforeSquares += v * v;
    const after = all - before;
    errors[k] =
      beforeSquares -
      (before * before) / k +
      (allSquares - beforeSquares) -
      (after * after) / (n - k);
    levels[k] = mid + before / k;
  }
  return { errors, levels };
}

/** x = a + b max(0, t - t_(k-1)): two columns, solved for each k. */
function rampFits(t: ArrayLike<number>, x: ArrayLike<number>, n: number): Fits {
  const errors = new Float64Array(n + 1).fill(Infinity);
  const levels = new Float64Array(n + 1);
  const mid = mean(x, 0, n);
  let allSquares = 0;
  for (let i = 0; i < n; i++) allSquares += (x[i]! - mid) ** 2;
  for (let k = 1; k < n; k++) {
    let [su, suu, sux] = [0, 0, 0];
    for (let i = k; i < n; i++) {
      const u = t[i]! - t[k - 1]!;
      su += u;
      suu += u * u;
      sux += u * (x[i]! - mid);
    }
    // Sum of x - mid is nothing, so the normal equations are short.
    const determinant = n * suu - su * su;
    if (!(determinant > 0)) continue;
    const slope = (n * sux) / determinant;
    const level = (-su * slope) / n;
    errors[k] = allSquares - slope * sux;
    levels[k] = mid + level;
  }
  return { errors, levels };
}

function mean(x: ArrayLike<number>, from: number, to: number): number {
  let sum = 0;
  for (let i = from; i < to; i++) sum += x[i]!;
  return sum / (to - from);
}
