/** Every root of a function on an interval, down to a stated distance between two of them. */
import { brent } from './root';
import { maximum } from './maximum';

/** Halvings that find where a function begins or ends to exist. */
const HALVINGS = 24;
/** A dip towards zero is searched down to this share of the resolution. */
const DIP = 1e-3;

/**
 * All roots of `f` in `[a, b]`, rising. `f` gives NaN where it does not exist.
 *
 * The interval is walked in steps no longer than `resolution`, so two roots farther apart than that
 * always have a look between them and cannot be missed. Closer pairs are still found where three looks
 * show the function dipping towards zero: the dip is then searched to its bottom.
 *
 * @param xtol - half-width of the bracket at which a root counts as found
 * @example allRoots((x) => (x - 1) * (x - 2), [0, 5], 0.5) // [1, 2]
 */
export function allRoots(
  f: (x: number) => number,
  [a, b]: readonly [number, number],
  resolution: number,
  xtol = 1e-12,
): number[] {
  if (!(b > a)) return [];
  const looks = sampled(f, a, b, resolution);
  const roots: number[] = [];
  const between = (p: Look, q: Look) =>
    roots.push(brent(f, p.x, q.x, { fa: p.y, fb: q.y, xtol }).x);
  looks.forEach((here, i) => {
    if (here.y === 0) roots.push(here.x);
    const next = looks[i + 1];
    if (next && opposite(here.y, next.y)) between(here, next);
    const before = looks[i - 1];
    if (!before || !next || !dips(before.y, here.y, next.y)) return;
    const away = Math.sign(here.y);
    const bottom = maximum((x) => -away * f(x), before.x, next.x, DIP * resolution);
    if (!(bottom.value > 0)) return;
    const look = { x: bottom.x, y: -away * bottom.value };
    between(before, look);
    between(look, next);
  });
  return roots.toSorted((p, q) => p - q);
}

interface Look {
  readonly x: number;
  readonly y: number;
}

/** Multiples of the resolution with both ends, and the edges of stretches where `f` does not exist. */
function sampled(f: (x: number) => number, a: number, b: number, resolution: number): Look[] {
  const xs = [a];
  // Multiples, not steps from `a`: looks of a shifted interval then fall on the same places.
  for (let k = Math.floor(a / resolution) + 1; k * resolution < b; k++) xs.push(k * resolution);
  xs.push(b);
  const looks: Look[] = [];
  xs.forEach((x, i) => {
    const here = { x, y: f(x) };
    const before = looks.at(-1);
    if (i > 0 && before && Number.isNaN(before.y) !== Number.isNaN(here.y)) {
      looks.push(edge(f, before, here));
    }
    looks.push(here);
  });
  return looks;
}

/** Last place that exists between one that does and one that does not. */
function edge(f: (x: number) => number, p: Look, q: Look): Look {
  let [is, not] = Number.isNaN(p.y) ? [q, p.x] : [p, q.x];
  for (let i = 0; i < HALVINGS; i++) {
    const x = is.x + (not - is.x) / 2;
    const y = f(x);
    if (Number.isNaN(y)) not = x;
    else is = { x, y };
  }
  return is;
}

/** By sign, not by product: that of two small numbers may vanish. */
const opposite = (p: number, q: number): boolean => (p < 0 && q > 0) || (p > 0 && q < 0);

/** Three values of one sign, the middle one nearest to zero. */
const dips = (left: number, middle: number, right: number): boolean =>
  ((left > 0 && middle > 0 && right > 0) || (left < 0 && middle < 0 && right < 0)) &&
  Math.abs(middle) <= Math.abs(left) &&
  Math.abs(middle) <= Math.abs(right);
