/** The drive that a choice is judged by: the plain warm-up, or with ice where some is put into the tank. */
import { simulate } from '$lib/solver/loop/events/simulate';
import type { PreparedLoop } from '$lib/solver/loop/prepare';
import type { WarmUpRequest, WarmUpSolution } from '$lib/solver/loop/types';
import { warmUp } from '$lib/solver/loop/warmUp';
import type { Values } from '../values';

/** What is read of a drive. */
export interface Drive extends Pick<
  WarmUpSolution,
  'status' | 'endTime' | 'segmentStarts' | 'peakReservoir'
> {
  readonly history: Pick<WarmUpSolution['history'], 't' | 'reservoir' | 'chargeOut'>;
  /** Null also where there is ice: what is back to where it was then is no measure. */
  readonly recoveryTime: number | null;
}

/** Ice put into the tank at the start, kg. */
export const iceIn = (values: Values): number => values['events.ice']!.si ?? 0;

/**
 * The drive with ice in the tank and nothing else of what may happen on the way: accidents are no plan.
 * @throws {@link InvalidInputError} for ice in a mixture, or more than fits
 */
export function icedDrive(
  ready: PreparedLoop,
  { schedule, start }: WarmUpRequest,
  mass: number,
): Drive {
  const run = simulate(ready, { schedule, start, ice: { mass } });
  return {
    ...run,
    status: run.status === 'boiled-dry' ? 'boils' : run.status,
    recoveryTime: null,
  };
}

/** Either, as the values ask. @throws as the one or the other */
export const driveOf = (ready: PreparedLoop, values: Values, request: WarmUpRequest): Drive =>
  iceIn(values) > 0 ? icedDrive(ready, request, iceIn(values)) : warmUp(ready, request);
