/** Errors of "a level, then a change" for every place the change could begin and every pace it could have. */

/** Places at which a change may begin, with the best there of all shapes tried. */
export interface PlaceFits {
  /** Times, rising: {@link SUB} from each row to the next. */
  readonly at: Float64Array;
  /** Least sum of squares, and the level before with it. */
  readonly errors: Float64Array;
  readonly levels: Float64Array;
}

const SUB = 3;
/** Pace from a small part of a row, which is a step, to many times the stretch, which is a ramp. */
const QUICKEST = 1 / 32;
const SLOWEST = 16;
/** Paces tried first, a factor apart; then so many between the neighbours of the best, again and again. */
const FACTOR = 2;
const FINER = 3;
const ROUNDS = 3;
/** A second lag as a share of the first: none, that of a probe. */
const LAGS = [0, 0.25];

/**
 * x = a + b g(t - t0), where g is what follows a step with one lag τ or with a second one behind it:
 * 1 - (exp(-u/τ) - r exp(-u/(rτ))) / (1 - r). Each pace takes one pass over the rows, from the last to the
 * first, whatever the number of places.
 *
 * @param least - fewest rows on either side of a place
 */
export function placeFits(t: ArrayLike<number>, x: ArrayLike<number>, least: number): PlaceFits {
  const n = t.length;
  const places = (n - 2 * least + 1) * SUB;
  const at = new Float64Array(places);
  const errors = new Float64Array(places).fill(Infinity);
  const levels = new Float64Array(places);
  let mid = 0;
  for (let i = 0; i < n; i++) mid += x[i]! / n;
  const y = Float64Array.from({ length: n }, (_, i) => x[i]! - mid);
  const all = y.reduce((sum, v) => sum + v * v, 0);
  const span = t[n - 1]! - t[0]!;
  const quickest = (QUICKEST * span) / (n - 1);

  for (const lag of LAGS) {
    let best = { tau: quickest, error: Infinity };
    const attempt = (tau: number) => {
      const error = pass(tau, lag);
      if (error < best.error) best = { tau, error };
    };
    for (let tau = quickest; tau < SLOWEST * span; tau *= FACTOR) attempt(tau);
    for (let factor = FACTOR, round = 0; round < ROUNDS; round++, factor **= 1 / FINER) {
      const { tau } = best;
      for (let i = 1 - FINER; i < FINER; i++) if (i !== 0) attempt(tau * factor ** (i / FINER));
    }
  }
  return { at, errors, levels };

  /** @returns the least error of all places */
  function pass(tau: number, lag: number): number {
    let lowest = Infinity;
    const [c1, c2] = [1 / (1 - lag), lag / (1 - lag)];
    // Sums over the rows from k on of the two exponentials since row k, their products, and theirs with y.
    let [count, sy, p, q, pp, pq, qq, py, qy] = [0, 0, 0, 0, 0, 0, 0, 0, 0];
    let [d, s, gap] = [0, 0, NaN];
    const a = new Float64Array(SUB);
    const b = new Float64Array(SUB);
    for (let k = n - 1; k >= least; k--) {
      p = 1 + d * p;
      q = 1 + s * q;
      pp = 1 + d * d * pp;
      pq = 1 + d * s * pq;
      qq = 1 + s * s * qq;
      py = y[k]! + d * py;
      qy = y[k]! + s * qy;
      sy += y[k]!;
      count++;
      // Most rows come evenly, and exponentials cost more than all the rest.
      if (!(Math.abs(t[k]! - t[k - 1]! - gap) < 1e-9 * gap)) {
        gap = t[k]! - t[k - 1]!;
        d = Math.exp(-gap / tau);
        s = lag > 0 ? Math.exp(-gap / (lag * tau)) : 0;
        for (let sub = 0; sub < SUB; sub++) {
          a[sub] = c1 * d ** (1 - sub / SUB);
          b[sub] = c2 * s ** (1 - sub / SUB);
        }
      }
      if (k > n - least) continue;
      for (let sub = 0; sub < SUB; sub++) {
        const [f, h] = [a[sub]!, b[sub]!];
        const lacks = f * p - h * q;
        const g = count - lacks;
        const gg = count - 2 * lacks + f * f * pp - 2 * f * h * pq + h * h * qq;
        // So small a part of the change that digits are lost: another pace shows it as well.
        if (!(gg > 1e-7 * count)) continue;
        const gy = sy - f * py + h * qy;
        // Sum of y is nothing, so the normal equations are short.
        const size = (n * gy) / (n * gg - g * g);
        const error = Math.max(0, all - size * gy);
        const place = (k - least) * SUB + sub;
        if (error < lowest) lowest = error;
        if (!(error < errors[place]!)) continue;
        at[place] = t[k - 1]! + (gap * sub) / SUB;
        errors[place] = error;
        levels[place] = mid - (size * g) / n;
      }
    }
    return lowest;
  }
}
