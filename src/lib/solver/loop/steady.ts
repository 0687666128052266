/** Where the loop settles: one unknown, one residual, a bracketed root. */
import { brent } from '../numerics/root';
import { goRound } from './balance';
import { standing } from './noFlow';
import { FLOW_STANDING } from './standstill';
import { prepared as prepare, type PreparedLoop } from './prepare';
import { roundAt, type RoundAt } from './roundAt';
import { solution } from './solution';
import type { Duty, DutyId, Loop, SteadySolution } from './types';

export { FLOW_STANDING };

/**
 * Longest step of the search where the pump may lose head to its suction side, K: heat left over then
 * need not fall steadily, and the balance reached from cold is the one wanted.
 */
const CAREFUL = 4;

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
  const { coldest, movedUpTo: hottest, loop } = prepared;
  const stride = loop.pump.cavitation === 'counted' ? CAREFUL : Infinity;
  const inside = (T: number) => Math.min(Math.max(T, coldest), hottest);
  const start = inside(loop.site.ambientTemperature + 15);
  const at = (T: number) => roundAt(prepared, duty, air, T);

  let latest: RoundAt = at(start);
  if (!(latest.flow >= FLOW_STANDING)) return standing(prepared, duty, air);
  const left = (T: number) => {
    if (T !== latest.T) latest = at(T);
    return goRound(latest.round, T).residual;
  };
  /** Where the round would close if nothing but the temperatures moved: the residual is then linear. */
  const linear = (T: number, residual: number) => {
    const slope = goRound(latest.round, T + 1).residual - goRound(latest.round, T).residual;
    return slope < 0 ? T - residual / slope : residual > 0 ? hottest : coldest;
  };

  // Walk by linear steps, each pushed a little far, until the residual changes sign or an end is reached.
  let a = start;
  let ra = left(a);
  let b = a;
  let rb = ra;
  for (let push = 1; ra !== 0 && rb !== 0 && ra > 0 === rb > 0; push *= 2) {
    a = b;
    ra = rb;
    const end = ra > 0 ? hottest : coldest;
    if (a === end) return solution(prepared, duty, air, at(a), ra > 0 ? 'boils' : 'freezes');
    const step = push * (linear(a, ra) - a);
    // Always forward, by a millikelvin at least: a linear step may be nothing but rounding.
    const size = Math.min(Math.max(ra > 0 ? step : -step, 1e-3), stride);
    const forward = ra > 0 ? size : -size;
    b = inside(a + forward);
    rb = left(b);
  }
  const T = brent(left, a, b, { fa: ra, fb: rb, xtol: 1e-13 }).x;
  const found = latest.T === T ? latest : at(T);
  return solution(prepared, duty, air, found, 'balanced');
}
