/** Which duty the sheets show, and its solution. */
import type { Side } from '$lib/job/evaluate';
import type { DutyId, SteadySolution } from '$lib/solver/loop/types';

export const dutyOf = (side: Side): DutyId => side.values['view.duty']!.choice as DutyId;

/** Where the side settles in the duty shown; null where that could not be solved. */
export function settledOf(side: Side | null): SteadySolution | null {
  const outcome = side?.steady[dutyOf(side)];
  return outcome?.ok ? outcome.value : null;
}
