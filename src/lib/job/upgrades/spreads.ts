/**
 * What the draws of several sides say together. Sides draw the same points, so draw i of one and draw i
 * of another are the same weather, engine and parts they share: differences are taken draw by draw.
 */
import { LEAST_GAIN } from '$lib/solver/loop/limiting';
import { spread, type Spread } from '$lib/solver/uncertainty/propagate';

/** Draws of one result, SI; NaN where a draw has none. */
export type Drawn = Float64Array;

/** Draws without an answer, as a share, above which the rest says too little: what 95 % leaves on a side. */
const MOST_MISSING = 0.025;
/** Narrower than this a range is not worth telling, SI: K, m, A, s. A draw is settled far more sharply. */
const LEAST = 5e-3;

/** Range of 95 in 100 draws; null where too many have no answer, or where nothing varies. */
export function rangeOf(draws: Drawn | null): Spread | null {
  const s = draws && spread(draws);
  if (!s || s.count < (1 - MOST_MISSING) * draws.length) return null;
  return s.high - s.low > 2 * LEAST ? s : null;
}

/** Degrees that one side takes off another, draw by draw; null where they cannot be paired. */
export function gains(now: Drawn | null, then: Drawn | null): Drawn | null {
  if (!now || !then || now.length !== then.length) return null;
  return now.map((T, i) => T - then[i]!);
}

/** What each degree costs, draw by draw; no answer in draws where none is taken off. */
export const costsPerDegree = (cost: number, taken: Drawn): Drawn =>
  taken.map((dT) => (dT > LEAST_GAIN ? cost / dT : NaN));

/** Draws for which something holds, and draws with an answer. */
export interface Counted {
  readonly n: number;
  readonly N: number;
}

/** Draws for which a statement holds; null without any. */
export function countOf(
  draws: Drawn,
  holds: (value: number, i: number) => boolean,
): Counted | null {
  let n = 0;
  let N = 0;
  draws.forEach((value, i) => {
    if (Number.isNaN(value)) return;
    N++;
    if (holds(value, i)) n++;
  });
  return N === 0 ? null : { n, N };
}

/** Closer than this two temperatures are the same, K: a draw is settled a hundred times as sharply. */
const EVEN = 1e-3;

/** How often one temperature is below another in the same draw; null without pairs. */
export function coolerThan(one: Drawn | null, other: Drawn | null): Counted | null {
  const by = gains(other, one);
  return by && countOf(by, (dT) => dT > EVEN);
}

/** A price, and the degrees it buys draw by draw. */
export interface Offer {
  readonly cost: number;
  readonly taken: Drawn;
}

/**
 * Share of the draws in which each offer costs least for a degree. A draw in which none takes any off
 * counts for none of them. Offers drawn differently cannot be paired: null.
 */
export function cheapest(offers: readonly Offer[]): readonly Counted[] | null {
  const N = offers[0]?.taken.length ?? 0;
  if (N === 0 || offers.some(({ taken }) => taken.length !== N)) return null;
  const wins = offers.map(() => 0);
  const prices = offers.map(({ cost, taken }) => costsPerDegree(cost, taken));
  for (let i = 0; i < N; i++) {
    let best = -1;
    for (let o = 0; o < offers.length; o++) {
      const price = prices[o]![i]!;
      if (!Number.isNaN(price) && (best < 0 || price < prices[best]![i]!)) best = o;
    }
    if (best >= 0) wins[best] = wins[best]! + 1;
  }
  return wins.map((n) => ({ n, N }));
}
