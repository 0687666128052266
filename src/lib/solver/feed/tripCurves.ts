/** Time to open against current, as points for a plot. */
import { spaced } from '../numerics/spaced';
import { deratedRating, tripTime } from './breaker';
import type { PlacedBreaker } from './supply';

const POINTS = 60;
/** Multiple of the rating at which the plot ends. */
const TO = 2.5;
/** Times worth drawing, s: beyond, the pump has long settled. */
export const TRIP_TIME_SHOWN = 180;

/** Largest current worth drawing, A. */
export const tripCurveEnd = (breaker: PlacedBreaker, current: number): number =>
  Math.max(TO * breaker.thermal.rating, 1.2 * current);

/**
 * Current at which a breaker opens in just this time: {@link tripTime} solved for the current.
 *
 * @formula I = I_hold * sqrt((1 - y0 * exp(-t / tau)) / (1 - exp(-t / tau)))
 * @symbol I_hold - current it holds where it sits, A
 * @symbol y0 - state at the start: 0 cold, 1 about to open
 * @symbol t - time to open, s; above 0
 * @symbol tau - time constant, s
 */
export function currentOpeningIn({ thermal, ambient }: PlacedBreaker, t: number, y0: number) {
  const left = Math.exp(-t / thermal.timeConstant);
  return deratedRating(thermal, ambient) * Math.sqrt((1 - y0 * left) / (1 - left));
}

/** Current (A) and time to open (s) where the breaker sits, up to `end`; `start` 0 cold. */
export function tripPoints(
  breaker: PlacedBreaker,
  start: number,
  end: number,
): readonly (readonly [current: number, time: number])[] {
  const least = tripTime(breaker.thermal, end, breaker.ambient, start);
  if (!least.trips || !(least.time < TRIP_TIME_SHOWN)) return [];
  // Evenly in the logarithm of time, so that the steep end shows no corners.
  return spaced(Math.log(TRIP_TIME_SHOWN), Math.log(least.time), POINTS).map((log) => {
    const t = Math.exp(log);
    return [currentOpeningIn(breaker, t, start), t] as const;
  });
}

/** Whether two breakers open alike: one curve then stands for both. */
export const opensAlike = (a: PlacedBreaker, b: PlacedBreaker): boolean =>
  a.ambient === b.ambient &&
  (Object.keys(a.thermal) as (keyof PlacedBreaker['thermal'])[]).every(
    (key) => a.thermal[key] === b.thermal[key],
  );
