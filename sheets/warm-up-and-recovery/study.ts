/** What the warm-up sheet asks the solver for beyond the drive itself, once per side. */
import type { Side } from '$lib/job/evaluate';
import { closedForm, type ClosedForm } from '$lib/solver/loop/closedForm';
import type { Segment, WarmUpRequest, WarmUpSolution } from '$lib/solver/loop/types';
import { dutyOf } from '../wiring/duty';

/** A drive that could be followed. */
export interface Drive {
  readonly run: WarmUpSolution;
  readonly request: WarmUpRequest;
  readonly schedule: readonly Segment[];
}

/** The drive of a side; null where the loop cannot be solved. */
export function driveOf({ request, warmUp }: Side): Drive | null {
  if (!request.ok || !warmUp.ok) return null;
  return { run: warmUp.value, request: request.value, schedule: request.value.schedule };
}

const known = new WeakMap<Side, ClosedForm | null>();

/** The duty shown, held from the drive's start: exponential beside integration. */
export function closedFormOf(side: Side): ClosedForm | null {
  if (!side.prepared.ok || !side.request.ok) return null;
  let found = known.get(side);
  if (found === undefined) {
    found = closedForm(side.prepared.value, dutyOf(side), side.request.value.start);
    known.set(side, found);
  }
  return found;
}
