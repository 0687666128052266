/** The search for the balance of a loop: one unknown, one residual, a bracketed root. */
import { brent } from '../numerics/root';
import { goRound } from './balance';
import type { PreparedLoop } from './prepare';
import { roundAt, type RoundAt } from './roundAt';
import { FLOW_STANDING } from './standstill';
import type { AirSide, Duty } from './types';

/**
 * Longest step of the search where the pump may lose head to its suction side, K: heat left over then
 * need not fall steadily, and the balance reached from cold is the one wanted.
 */
const CAREFUL = 4;

/** How the balance is sought; by default from a guess of its own down to rounding. */
export interface Search {
  /**
   * Where the balance is expected, K: the search starts there. Without effect where cavitation is
   * counted, as the balance reached from cold is then the one wanted.
   */
  readonly near?: number;
  /** Half-width of the bracket at which the search ends, K. */
  readonly within?: number;
}

/** The state at the balance, or at the limit the liquid would pass. */
export interface Settled {
  readonly found: RoundAt;
  readonly ended: 'balanced' | 'boils' | 'freezes';
}

/** Where the search starts unless told, above ambient, K. */
const GUESS = 15;

/**
 * Temperature at which the liquid leaves the reservoir so that no heat is left over. Walks by linear
 * steps until the residual changes sign or an end of the liquid's range is reached, then closes the
 * bracket by Brent's method.
 * @returns null where the liquid stands still
 */
export function settle(
  prepared: PreparedLoop,
  duty: Duty,
  air: AirSide,
  { near, within = 1e-13 }: Search = {},
): Settled | null {
  const { coldest, movedUpTo: hottest, loop } = prepared;
  const counted = loop.pump.cavitation === 'counted';
  const stride = counted ? CAREFUL : Infinity;
  const guess = loop.site.ambientTemperature + GUESS;
  const inside = (T: number) => Math.min(Math.max(T, coldest), hottest);
  const start = inside(counted ? guess : (near ?? guess));
  const at = (T: number) => roundAt(prepared, duty, air, T);

  let latest: RoundAt = at(start);
  if (!(latest.flow >= FLOW_STANDING)) return null;
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
    if (a === end) return { found: at(a), ended: ra > 0 ? 'boils' : 'freezes' };
    const step = push * (linear(a, ra) - a);
    // Always forward, by a millikelvin at least: a linear step may be nothing but rounding.
    const size = Math.min(Math.max(ra > 0 ? step : -step, 1e-3), stride);
    const forward = ra > 0 ? size : -size;
    b = inside(a + forward);
    rb = left(b);
  }
  const T = brent(left, a, b, { fa: ra, fb: rb, xtol: within }).x;
  return { found: latest.T === T ? latest : at(T), ended: 'balanced' };
}
