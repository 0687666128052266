/** Where the loop settles, in full. */
import { standing } from './noFlow';
import { FLOW_STANDING } from './standstill';
import { prepared as prepare, type PreparedLoop } from './prepare';
import { settle } from './settle';
import { solution } from './solution';
import type { Duty, DutyId, Loop, SteadySolution } from './types';

export { FLOW_STANDING };

/**
 * Steady state of a loop in one duty.
 *
 * The unknown is the temperature at which the liquid leaves the reservoir. At each trial value the flow
 * follows from pump and restriction, the conductances of both cores from the flows, and one round of
 * the loop gives the heat left over ({@link goRound}); Brent's method takes that to zero between the
 * freezing point and the boiling point at the reservoir's pressure (120 °C at most). Where cavitation is
 * counted the search ends at the temperature at which the pump moves nothing any more: it boils there,
 * at the pump's inlet.
 *
 * Every valid loop ends as one of the four outcomes of {@link SteadySolution}.
 *
 * @throws {@link InvalidInputError}, {@link OutOfRangeError} when the loop's description contradicts
 *   itself or leaves the range of a law; the facts name the field
 * @source first law; ε-NTU after Kays & London; laws as named in their modules
 */
export function steady(loop: Loop | PreparedLoop, dutyId: DutyId): SteadySolution {
  const prepared = prepare(loop);
  const duty = prepared.loop.duties[dutyId];
  return steadyIn(prepared, duty, duty.vehicleSpeed);
}

/** As {@link steady}, at another vehicle speed. */
export function steadyIn(prepared: PreparedLoop, duty: Duty, vehicleSpeed: number): SteadySolution {
  const air = prepared.airAt(vehicleSpeed);
  const settled = settle(prepared, duty, air);
  if (!settled) return standing(prepared, duty, air);
  return solution(prepared, duty, air, settled.found, settled.ended);
}
