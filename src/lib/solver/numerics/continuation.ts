/** Follows a curve f(x, y) = 0 through its folds, by pseudo-arclength. */
import { brent } from './root';

export type Place = readonly [x: number, y: number];

export interface TraceOptions {
  /** Lengths by which x and y are measured against each other. */
  readonly scale: Place;
  /** Longest step along the curve, in those lengths; it is shortened where the curve bends. */
  readonly longest?: number;
  /** The trace ends where this is false; `f` giving NaN ends it too. */
  readonly inside: (x: number, y: number) => boolean;
  readonly most?: number;
}

export interface Trace {
  readonly points: readonly Place[];
  /** Where the curve turns back in x. */
  readonly folds: readonly Place[];
  /** `left`: the allowed region; `closed`: back at the start; `lost`: no step short enough goes on. */
  readonly ended: 'left' | 'closed' | 'lost' | 'too-long';
}

/** Half-width of the difference quotients, in scaled lengths. */
const DELTA = 1e-4;
const SHORTEST = 1e-7;
/** Cosines of the turn in one step that calls for a shorter step, and that allows a longer one. */
const BENT = Math.cos(0.25);
const STRAIGHT = Math.cos(0.08);
const CORRECTED = 1e-9;

interface State {
  readonly z: Place;
  /** Unit tangent in scaled lengths. */
  readonly t: Place;
}

/**
 * Trace from a point on the curve. Each step goes along the tangent, then back to the curve at right
 * angles to it (the pseudo-arclength condition), so a fold in x is passed like any other place.
 *
 * @param start - a point with f = 0
 * @param direction - sign of the first step in x; where the tangent has no x, in y
 * @source Keller, in: Applications of Bifurcation Theory, Academic Press 1977 (from memory)
 * @example traceCurve((x, y) => y * y + x, [-1, -1], 1, { scale: [1, 1], inside: (x) => x >= -1 }).folds // [[0, 0]]
 */
export function traceCurve(
  f: (x: number, y: number) => number,
  start: Place,
  direction: 1 | -1,
  { scale: [sx, sy], longest = 0.05, inside, most = 400 }: TraceOptions,
): Trace {
  const g = ([u, v]: Place) => (inside(u * sx, v * sy) ? f(u * sx, v * sy) : NaN);
  /** Without the fence: a difference quotient may reach a hair outside. */
  const free = (u: number, v: number) => f(u * sx, v * sy);
  const out = ([u, v]: Place): Place => [u * sx, v * sy];
  const tangentAt = ([u, v]: Place, along: Place): Place | null => {
    const gu = slope((d) => free(u + d, v));
    const gv = slope((d) => free(u, v + d));
    const size = Math.hypot(gu, gv);
    if (!(size > 0)) return null;
    const t: Place = [-gv / size, gu / size];
    return dot(t, along) < 0 ? [-t[0], -t[1]] : t;
  };
  const stepped = ({ z, t }: State, s: number): State | null => {
    const w = corrected((x) => g([z[0] + s * t[0] - x * t[1], z[1] + s * t[1] + x * t[0]]), s);
    if (w === null) return null;
    const next: Place = [z[0] + s * t[0] - w * t[1], z[1] + s * t[1] + w * t[0]];
    const tangent = tangentAt(next, t);
    return tangent && { z: next, t: tangent };
  };

  const z0: Place = [start[0] / sx, start[1] / sy];
  const first = tangentAt(z0, [direction, direction * 1e-9]);
  if (!first) return { points: [start], folds: [], ended: 'lost' };
  let state: State = { z: z0, t: first };
  const points: Place[] = [start];
  const folds: Place[] = [];
  let s = longest / 4;
  while (points.length < most) {
    const next = stepped(state, s);
    const turn = next ? dot(next.t, state.t) : -1;
    if (!next || turn < BENT) {
      s /= 2;
      if (s > SHORTEST) continue;
      const { z, t } = state;
      // Nothing beyond: the region ends here, or the curve does.
      const beyond = Number.isNaN(g([z[0] + 4 * s * t[0], z[1] + 4 * s * t[1]]));
      return { points, folds, ended: beyond ? 'left' : 'lost' };
    }
    if (state.t[0] * next.t[0] < 0) {
      const from = state;
      const at = brent((x) => (x === 0 ? from.t[0] : (stepped(from, x)?.t[0] ?? NaN)), 0, s, {
        fa: from.t[0],
        fb: next.t[0],
        xtol: 1e-6,
      }).x;
      const fold = at === 0 ? from : stepped(from, at)!;
      folds.push(out(fold.z));
      points.push(out(fold.z));
    }
    points.push(out(next.z));
    const home = Math.hypot(next.z[0] - z0[0], next.z[1] - z0[1]);
    if (points.length > 4 && home < s && dot(next.t, first) > 0) {
      return { points, folds, ended: 'closed' };
    }
    state = next;
    if (turn > STRAIGHT) s = Math.min(2 * s, longest);
  }
  return { points, folds, ended: 'too-long' };
}

const dot = (a: Place, b: Place) => a[0] * b[0] + a[1] * b[1];

/** Central where both sides exist, else one-sided. */
function slope(g: (d: number) => number): number {
  const [below, above] = [g(-DELTA), g(DELTA)];
  const central = (above - below) / (2 * DELTA);
  if (!Number.isNaN(central)) return central;
  const here = g(0);
  return Number.isNaN(above) ? (here - below) / DELTA : (above - here) / DELTA;
}

/** Root of `g` near zero within the step's length: secant; brackets where that leaves or stalls. */
function corrected(g: (w: number) => number, reach: number): number | null {
  let a = 0;
  let ga = g(a);
  if (ga === 0) return 0;
  let b = 1e-3 * reach;
  let gb = g(b);
  for (let i = 0; i < 12; i++) {
    if (gb === ga) break;
    const c = b - (gb * (b - a)) / (gb - ga);
    if (!(Math.abs(c) <= reach)) break;
    [a, ga] = [b, gb];
    [b, gb] = [c, g(c)];
    if (Math.abs(b - a) < CORRECTED || gb === 0) return Number.isNaN(gb) ? null : b;
  }
  const [low, high] = [g(-reach), g(reach)];
  return low * high < 0 ? brent(g, -reach, reach, { fa: low, fb: high, xtol: 1e-11 }).x : null;
}
