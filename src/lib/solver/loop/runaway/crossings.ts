/** Every balance of a loop, stable or not, and what lies at the hot end of the liquid's range. */
import { allRoots } from '../../numerics/allRoots';
import type { Balance } from './balanceAt';
import type { Crossing, HeatsAt, HotEnd } from './types';

/** Two crossings farther apart than this cannot be missed, K. */
export const RESOLUTION = 2;
/** Half-width of the difference quotients of the slopes, K. */
const SLOPE_STEP = 0.01;

export interface Crossings {
  /** Rising temperature. */
  readonly all: readonly Crossing[];
  /** Hottest temperature at which the liquid still moves, and both heats there; null: it never does. */
  readonly end: HeatsAt | null;
  readonly hotEnd: HotEnd;
  /** Where a loop that starts cold comes to rest; null: it goes on to the hot end, or freezes. */
  readonly fromCold: Crossing | null;
}

/**
 * All crossings of heat entering and heat leaving within the liquid's range. Colder than everything
 * around it the liquid can only take heat up, so the search starts at the coldest of those.
 *
 * Stable means that heat leaving rises faster with temperature than heat entering: the liquid, whose
 * temperature moves as entering less leaving, then comes back after a push.
 *
 * @source first law; stability of a single state by the sign of its slope
 */
export function crossings(balance: Balance, resolution = RESOLUTION): Crossings {
  const { hottest } = balance;
  const seen = new Map<number, HeatsAt | null>();
  const look = (T: number) => {
    let at = seen.get(T);
    if (at === undefined) seen.set(T, (at = balance.at(T)));
    return at;
  };
  const left = (T: number) => look(T)?.left ?? NaN;
  const from = Math.min(coldestAround(balance), hottest);
  const all = allRoots(left, [from, hottest], resolution).flatMap((T) => {
    const crossing = crossingAt(balance, T);
    return crossing ? [crossing] : [];
  });
  const moving = [...seen.values()].filter((at) => at !== null);
  const end = moving.reduce<HeatsAt | null>((a, b) => (a && a.T > b.T ? a : b), null);
  const start = moving.reduce<HeatsAt | null>((a, b) => (a && a.T < b.T ? a : b), null);
  const first = all[0];
  return {
    all,
    end,
    hotEnd: hotEndOf(balance, end),
    // Where the coldest liquid that moves already loses heat, it never leaves the cold.
    fromCold: first && first.stable && start && start.left >= 0 ? first : null,
  };
}

/** Nothing around the liquid is colder than this; a little below it, within the liquid's range. */
function coldestAround({ ambient, prepared, duty, coldest }: Balance): number {
  const around = Math.min(
    ambient,
    ambient + duty.bayRise,
    prepared.loop.soak.engineTemperature,
    ambient + duty.intakeRise,
  );
  return Math.max(coldest, Math.floor(around) - 1);
}

/** The state at a temperature where the heats meet; null where the liquid stands. */
export function crossingAt(balance: Balance, T: number): Crossing | null {
  const here = balance.at(T);
  const below = balance.at(Math.max(T - SLOPE_STEP, balance.coldest));
  const above = balance.at(Math.min(T + SLOPE_STEP, balance.hottest));
  if (!here) return null;
  const [low, high] = [below ?? here, above ?? here];
  const slopeOf = (key: 'entering' | 'leaving') =>
    high.T > low.T ? (high[key] - low[key]) / (high.T - low.T) : 0;
  const slopeIn = slopeOf('entering');
  const slopeOut = slopeOf('leaving');
  return {
    ...here,
    slopeIn,
    slopeOut,
    stable: slopeIn < slopeOut,
    boilingMargin: balance.boilingPoint - Math.max(...Object.values(here.temperatures)),
  };
}

function hotEndOf({ prepared, hottest, what }: Balance, end: HeatsAt | null): HotEnd {
  if (!end) return 'stopped';
  if (end.left < 0) return 'falls-back';
  if (end.T < hottest && what.feedbacks.breaker) return 'stopped';
  return prepared.movedUpTo < prepared.hottest ? 'starved' : 'boils';
}
