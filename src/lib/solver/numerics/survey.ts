/** A function looked at over a whole range: where it exists, which way it goes, where it meets a level. */
import { NoRootError } from '../errors';
import { maximum } from './maximum';
import { brent } from './root';

export interface Look {
  readonly x: number;
  /** NaN where the function does not exist. */
  readonly y: number;
}

export interface SurveyOptions {
  /** Where to look, rising; first and last are the ends of the range. */
  readonly places: readonly number[];
  /** Changes of y below this are none. */
  readonly noise: number;
  /** Share of a step between two looks to which edges and turns are placed. */
  readonly sharp?: number;
  /** What lies between two looks: a curve, steps of y (no turn is sought), or nothing (no edge either). */
  readonly between?: 'curve' | 'steps' | 'nothing';
}

export interface Survey {
  /** Rising in x, with the edges of stretches where the function does not exist, and its turns. */
  readonly looks: readonly Look[];
  /** `turns`: neither rising nor falling all the way, or in pieces that disagree; `none`: exists nowhere. */
  readonly shape: 'rising' | 'falling' | 'flat' | 'turns' | 'none';
  /** Least and greatest y seen; null where there is none. */
  readonly least: Look | null;
  readonly greatest: Look | null;
}

const SHARP = 1e-4;

/**
 * Look at `f` over its range. Between two looks, one with a value and one without, the edge is halved
 * down; where three looks show a turn, it is searched to its tip, so that a level just short of it is
 * neither missed nor invented.
 *
 * @param f - gives NaN where it does not exist
 * @example survey((x) => x * x, { places: [-1, 0.1, 2], noise: 1e-9 }).shape // 'turns'
 */
export function survey(f: (x: number) => number, options: SurveyOptions): Survey {
  const { places, noise, sharp = SHARP, between = 'curve' } = options;
  const looks: Look[] = [];
  const at = (x: number): Look => ({ x, y: f(x) });
  for (const x of places) {
    const here = at(x);
    const before = looks.at(-1);
    if (before && between !== 'nothing' && Number.isNaN(before.y) !== Number.isNaN(here.y)) {
      looks.push(edge(at, before, here, sharp));
    }
    looks.push(here);
  }
  const turns = between !== 'curve' ? [] : tips(f, looks, noise, sharp);
  const all = [...looks, ...turns].toSorted((p, q) => p.x - q.x);
  const there = all.filter(({ y }) => !Number.isNaN(y));
  const by = (better: (p: Look, q: Look) => boolean) =>
    there.reduce<Look | null>((best, look) => (!best || better(look, best) ? look : best), null);
  return {
    looks: all,
    shape: shapeOf(there, noise),
    least: by((p, q) => p.y < q.y),
    greatest: by((p, q) => p.y > q.y),
  };
}

/** Last place that exists between one that does and one that does not. */
function edge(at: (x: number) => Look, p: Look, q: Look, sharp: number): Look {
  let [is, not] = Number.isNaN(p.y) ? [q, p.x] : [p, q.x];
  const enough = sharp * Math.abs(q.x - p.x);
  while (Math.abs(not - is.x) > enough) {
    const middle = at(is.x + (not - is.x) / 2);
    if (Number.isNaN(middle.y)) not = middle.x;
    else is = middle;
  }
  return is;
}

/** Tips of the humps and hollows that three neighbouring looks show. */
function tips(f: (x: number) => number, looks: readonly Look[], noise: number, sharp: number) {
  return looks.flatMap((here, i): Look[] => {
    const [before, next] = [looks[i - 1], looks[i + 1]];
    if (!before || !next) return [];
    const [rise, fall] = [here.y - before.y, here.y - next.y];
    // Two looks equally high may have the tip between them. NaN fails both.
    const hump = Math.max(rise, fall) > noise && Math.min(rise, fall) >= -noise;
    const hollow = Math.min(rise, fall) < -noise && Math.max(rise, fall) <= noise;
    if (!hump && !hollow) return [];
    const sign = hump ? 1 : -1;
    const looked = (x: number) => {
      const y = sign * f(x);
      return Number.isNaN(y) ? -Infinity : y;
    };
    const tip = maximum(looked, before.x, next.x, sharp * (next.x - before.x));
    return Number.isFinite(tip.value) && tip.x !== here.x
      ? [{ x: tip.x, y: sign * tip.value }]
      : [];
  });
}

function shapeOf(there: readonly Look[], noise: number): Survey['shape'] {
  if (there.length === 0) return 'none';
  let [up, down] = [0, 0];
  for (let i = 1; i < there.length; i++) {
    const step = there[i]!.y - there[i - 1]!.y;
    if (step > noise) up++;
    if (step < -noise) down++;
  }
  const ys = there.map(({ y }) => y);
  // Many steps below the noise may still add up to something.
  if (Math.max(...ys) - Math.min(...ys) <= noise) return 'flat';
  if (up > 0 && down > 0) return 'turns';
  if (up === 0 && down === 0) return there.at(-1)!.y > there[0]!.y ? 'rising' : 'falling';
  return down === 0 ? 'rising' : 'falling';
}

/** Where a function meets a level; at a jump it passes the level without taking it. */
export interface Crossing {
  readonly x: number;
  readonly jump: boolean;
}

/** A stretch on which the function lies on the wanted side of a level. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly fromEnd: StretchEnd;
  readonly toEnd: StretchEnd;
}

/** What ends a stretch: the range, a crossing of the level, a jump over it, or that nothing exists beyond. */
export type StretchEnd = 'range' | 'crossing' | 'jump' | 'edge';

export interface LevelOptions {
  readonly stepped?: boolean;
  /** Half-width of the bracket at which a crossing counts as found, as a share of |x|. */
  readonly xtol?: number;
  /** y is taken as the level when this near. */
  readonly noise: number;
}

const XTOL = 1e-13;

/**
 * Every place where the surveyed function crosses `level`, rising. Two crossings between the same two
 * looks are found only where a turn between them was seen.
 *
 * @throws {@link NoRootError} with the place as `value`, where between two looks nothing exists: look there
 */
export function crossings(
  f: (x: number) => number,
  { looks }: Survey,
  level: number,
  { stepped = false, xtol = XTOL, noise }: LevelOptions,
): Crossing[] {
  const found: Crossing[] = [];
  looks.forEach((here, i) => {
    const off = here.y - level;
    if (off === 0) {
      // A flat stretch on the level begins and ends there.
      const around = [looks[i - 1], looks[i + 1]].some((l) => !l || l.y - level !== 0);
      if (around) found.push({ x: here.x, jump: false });
      return;
    }
    const next = looks[i + 1];
    if (!next || !opposite(off, next.y - level)) return;
    const x = stepped
      ? stepBetween(f, here, next, level, xtol)
      : brent((at) => f(at) - level, here.x, next.x, {
          fa: off,
          fb: next.y - level,
          xtol: xtol * Math.max(Math.abs(here.x), Math.abs(next.x)),
        }).x;
    found.push({ x, jump: stepped || !(Math.abs(f(x) - level) <= noise) });
  });
  return found;
}

const opposite = (p: number, q: number): boolean => (p < 0 && q > 0) || (p > 0 && q < 0);

/** Least place past a step, seen from the low end of x. */
function stepBetween(f: (x: number) => number, p: Look, q: Look, level: number, xtol: number) {
  let [a, b] = [p.x, q.x];
  const above = p.y > level;
  while (b - a > Math.max(xtol, Number.EPSILON) * Math.max(Math.abs(a), Math.abs(b)) * 4) {
    const middle = a + (b - a) / 2;
    const y = f(middle);
    if (Number.isNaN(y)) {
      throw new NoRootError(`the function is not a number at ${middle}`, { value: middle });
    }
    if (y > level === above) a = middle;
    else b = middle;
  }
  return b;
}

/** Stretches of the range on the wanted side of `level`, the level itself included. */
export function stretches(
  { looks }: Survey,
  found: readonly Crossing[],
  level: number,
  side: 'below' | 'above',
  noise: number,
): Stretch[] {
  const meets = ({ y }: Look) => (side === 'below' ? y <= level + noise : y >= level - noise);
  const all: Stretch[] = [];
  let open: { from: number; fromEnd: StretchEnd } | null = null;
  const between = (p: Look, q: Look) => found.find(({ x }) => x >= p.x && x <= q.x);
  looks.forEach((here, i) => {
    const before = looks[i - 1];
    const next = looks[i + 1];
    if (!meets(here)) return;
    if (!open) {
      if (!before) open = { from: here.x, fromEnd: 'range' };
      else if (Number.isNaN(before.y)) open = { from: here.x, fromEnd: 'edge' };
      else {
        const at = between(before, here);
        open = { from: at?.x ?? here.x, fromEnd: at?.jump ? 'jump' : 'crossing' };
      }
    }
    if (next && meets(next)) return;
    const at = next && !Number.isNaN(next.y) ? between(here, next) : undefined;
    const toEnd: StretchEnd = !next
      ? 'range'
      : Number.isNaN(next.y)
        ? 'edge'
        : at?.jump
          ? 'jump'
          : 'crossing';
    all.push({ ...open, to: at?.x ?? here.x, toEnd });
    open = null;
  });
  return all;
}
