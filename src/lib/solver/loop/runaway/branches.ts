/** Branches of crossings along one knob, and what is read off them. */
import type { Trace } from '../../numerics/continuation';

export interface BranchPoint {
  readonly knob: number;
  readonly T: number;
  readonly stable: boolean;
  /** Boiling point less the hottest liquid of the loop, K. */
  readonly boilingMargin: number;
}

export interface Fold {
  readonly knob: number;
  readonly T: number;
}

export interface Branch {
  readonly points: readonly BranchPoint[];
  /** A stable and an unstable crossing meet here and vanish. */
  readonly folds: readonly Fold[];
  readonly ended: Trace['ended'];
}

/** The scale against which temperatures are measured along a branch, K. */
export const T_SCALE = 60;
/** On the same branch when this near, in knob spans and scales. */
const SAME = 2e-3;

/** Whether the branch passes through a place, knobs measured by `span`. */
export function passes(points: readonly BranchPoint[], { knob, T }: Fold, span: number): boolean {
  const seen = (p: Fold) => [(p.knob - knob) / span, (p.T - T) / T_SCALE] as const;
  return points.some((p, i) => {
    const [ax, ay] = seen(p);
    const next = points[i + 1];
    if (!next) return Math.hypot(ax, ay) < SAME;
    const [bx, by] = seen(next);
    const [dx, dy] = [bx - ax, by - ay];
    const along = dx * dx + dy * dy;
    const s = along > 0 ? Math.min(Math.max(-(ax * dx + ay * dy) / along, 0), 1) : 0;
    return Math.hypot(ax + s * dx, ay + s * dy) < SAME;
  });
}

/** Where the balance a loop sits in stops being one below boiling, as a knob is turned. */
export interface Edge {
  readonly knob: number;
  /** `end`: the temperature leaves the range in which the liquid is described. */
  readonly why: 'fold' | 'boils' | 'end';
}

/**
 * First setting, upwards or downwards of `start`, at which that balance ends: at a fold, because the
 * hottest liquid boils, or at the end of the liquid's range. Null: it lasts to the end of the knob
 * `[low, high]`, or `start` is on no branch or already boils.
 */
export function edgeOf(
  branches: readonly Branch[],
  start: Fold,
  direction: 1 | -1,
  [low, high]: readonly [number, number],
): Edge | null {
  const span = high - low;
  const branch = branches.find(({ points }) => passes(points, start, span));
  if (!branch) return null;
  const { points } = branch;
  const distance = (p: Fold) => Math.hypot((p.knob - start.knob) / span, (p.T - start.T) / T_SCALE);
  const nearest = points.reduce(
    (best, p, i) => (distance(p) < distance(points[best]!) ? i : best),
    0,
  );
  if (!(points[nearest]!.boilingMargin > 0) || !points[nearest]!.stable) return null;
  for (const walk of [1, -1] as const) {
    const next = points[nearest + walk];
    if (!next || Math.sign(next.knob - points[nearest]!.knob) !== direction) continue;
    return edgeAlong(points, nearest, walk, direction, [low, high]);
  }
  return null;
}

function edgeAlong(
  points: readonly BranchPoint[],
  from: number,
  walk: 1 | -1,
  direction: 1 | -1,
  [low, high]: readonly [number, number],
): Edge | null {
  let before = points[from]!;
  for (let i = from + walk; points[i]; i += walk) {
    const p = points[i]!;
    if (Math.sign(p.knob - before.knob) === -direction) return { knob: before.knob, why: 'fold' };
    if (p.boilingMargin <= 0) {
      const share = before.boilingMargin / (before.boilingMargin - p.boilingMargin);
      return { knob: before.knob + share * (p.knob - before.knob), why: 'boils' };
    }
    before = p;
  }
  const room = (direction > 0 ? high - before.knob : before.knob - low) / (high - low);
  return room > 1e-3 ? { knob: before.knob, why: 'end' } : null;
}
