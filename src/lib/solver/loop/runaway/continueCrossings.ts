/** How the crossings move as one knob is turned: branches, folds, where they reach boiling. */
import { SolverError } from '../../errors';
import { traceCurve, type Place } from '../../numerics/continuation';
import type { Balance, RunawayModel } from './balanceAt';
import { crossingAt, crossings } from './crossings';
import { passes, T_SCALE, type Branch, type BranchPoint } from './branches';
import { KNOB_RANGE, NEUTRAL, type Knob, type Knobs } from './types';

/** Where the pump is starved the last flow is lost within less than this, K; the trace ends before it. */
const STARVED = 0.05;

/**
 * Follow every crossing while one knob goes from one end to the other, the others held.
 *
 * Branches are started from all crossings at both ends and at the neutral setting, and traced by
 * pseudo-arclength, so the result does not depend on where that knob stands. A closed branch that touches none of the three would not be seen. Where a law ends
 * on the way (an ambient too cold for it), the branch ends.
 */
export function continueCrossings(
  model: RunawayModel,
  knobs: Knobs,
  knob: Knob,
  [from, to]: readonly [number, number] = KNOB_RANGE[knob],
): Branch[] {
  const span = to - from;
  const at = (value: number) => model.tabled.with({ ...knobs, [knob]: value });
  const { coldest, movedUpTo, hottest: last } = model.prepared;
  const hottest = movedUpTo < last ? movedUpTo - STARVED : last;
  const inside = (value: number, T: number) =>
    value >= from && value <= to && T >= coldest && T <= hottest;
  const left = (value: number, T: number) => {
    const within = Math.min(Math.max(value, from), to);
    return known(() => at(within).at(T)?.left) ?? NaN;
  };
  const trace = (start: Place, direction: 1 | -1) =>
    traceCurve(left, start, direction, { scale: [span, T_SCALE], inside, most: 300 });

  const branches: Branch[] = [];
  const seen = ([value, T]: Place) =>
    branches.some(({ points }) => passes(points, { knob: value, T }, span));
  for (const value of new Set([from, to, NEUTRAL[knob]])) {
    for (const { T } of known(() => crossings(at(value)).all) ?? []) {
      const start: Place = [value, T];
      if (seen(start)) continue;
      const ahead = value < to ? trace(start, 1) : null;
      const back = value > from && ahead?.ended !== 'closed' ? trace(start, -1) : null;
      const points = [...(back?.points.slice(1).toReversed() ?? []), ...(ahead?.points ?? [start])];
      branches.push({
        points: points.map((place) => branchPoint(at, place)),
        folds: [...(back?.folds ?? []), ...(ahead?.folds ?? [])].map(([k, t]) => ({
          knob: k,
          T: t,
        })),
        ended: (ahead ?? back)?.ended ?? 'left',
      });
    }
  }
  return branches;
}

function branchPoint(at: (knob: number) => Balance, [knob, T]: Place): BranchPoint {
  const c = crossingAt(at(knob), T);
  return { knob, T, stable: c?.stable ?? false, boilingMargin: c?.boilingMargin ?? NaN };
}

/** A law's end is the end of a branch, not of the program. */
function known<T>(work: () => T): T | undefined {
  try {
    return work();
  } catch (thrown) {
    if (thrown instanceof SolverError) return undefined;
    throw thrown;
  }
}
