/** Which part of a loop limits it: worked out, never guessed. */
import { SolverError } from '../errors';
import { feedFacts, LIMITING_PARTS, LOADS, withMore, type LimitingPart } from './limitingParts';
import type { PreparedLoop } from './prepare';

export { LIMITING_PARTS, type LimitingPart } from './limitingParts';

/** How much more of its own capacity each part gets: what a shop would call the next size up (ours). */
export const NEXT_SIZE = 1.25;

/** Degrees below which nothing is said to limit, K: no thermometer of a shop would show it (ours). */
export const LEAST_GAIN = 0.1;

/** One part with more capacity, the whole loop solved again. */
export interface Sensitivity {
  readonly part: LimitingPart;
  /** Temperature with it, K. */
  readonly T: number;
  /** Degrees that it takes off, K; negative where more of it does harm. */
  readonly gain: number;
}

export interface Limiting {
  /** Temperature now, K. */
  readonly T: number;
  /** Every part that could be tried, the greatest gain first. */
  readonly parts: readonly Sensitivity[];
  /** The part whose next size takes most off, loads aside; null where none takes off {@link LEAST_GAIN}. */
  readonly part: LimitingPart | null;
}

/** The temperature to be brought down, of any loop; null where it has none. */
export type Target = (ready: PreparedLoop) => number | null;

/**
 * The part that limits: each in turn gets {@link NEXT_SIZE} times its own capacity (see
 * {@link withMore}), the loop is solved again, and the one that takes most degrees off limits. Parts
 * work on each other, so after a change the whole has to be asked again: behind a large exchanger
 * another part limits.
 *
 * @formula gain = T_now - T_with
 * @symbol T_now - temperature of the loop as it is, K
 * @symbol T_with - the same with one part grown, K
 * @param source - volts at the battery posts, for a loop whose pump volts are stated
 * @returns every part with its gain; null where the loop itself has no such temperature
 * @source one-at-a-time finite difference; the step is ours
 */
export function limiting(ready: PreparedLoop, target: Target, source: number): Limiting | null {
  const T = orNull(() => target(ready));
  if (T === null) return null;
  const feed = feedFacts(ready, source);
  const parts = LIMITING_PARTS.flatMap((part): Sensitivity[] => {
    const found = orNull(() => {
      const more = withMore(ready, part, NEXT_SIZE, feed);
      return more && target(more);
    });
    return found === null ? [] : [{ part, T: found, gain: T - found }];
  }).sort((a, b) => b.gain - a.gain);
  const first = parts.find(({ part }) => !LOADS.includes(part));
  return { T, parts, part: first && first.gain >= LEAST_GAIN ? first.part : null };
}

/** A part grown out of the range of a law says nothing; any other fault is a mistake of ours. */
function orNull(work: () => number | null): number | null {
  try {
    const T = work();
    return T !== null && Number.isFinite(T) ? T : null;
  } catch (thrown) {
    if (thrown instanceof SolverError) return null;
    throw thrown;
  }
}
