/** Which duty the sheets show, and its solution. */
import type { DutyId, SteadySolution } from '$lib/solver/loop/types';
import type { Side } from './evaluate';

export const dutyOf = (side: Side): DutyId => side.values['view.duty']!.choice as DutyId;

/** Where the side settles in the duty shown; null where that could not be solved. */
export function settledOf(side: Side | null): SteadySolution | null {
  const outcome = side?.steady[dutyOf(side)];
  return outcome?.ok ? outcome.value : null;
}

/** As {@link settledOf}, with the loop it is of. */
export function solvedOf(side: Side) {
  const s = settledOf(side);
  return side.prepared.ok && s ? { ready: side.prepared.value, s } : null;
}
