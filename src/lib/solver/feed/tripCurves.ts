/** Time to open against current, as points for a plot. */
import { spaced } from '../numerics/spaced';
import { deratedRating, tripTime } from './breaker';
import type { PlacedBreaker } from './supply';

/** Currents sampled, and how far above the current held the curve begins. */
const POINTS = 60;
const FROM = 1.02;
/** Multiple of the rating at which the plot ends. */
const TO = 4;
/** Times worth drawing, s: beyond, the pump has long settled. */
export const TRIP_TIME_SHOWN = 180;

/** Largest current worth drawing, A. */
export const tripCurveEnd = (breaker: PlacedBreaker, current: number): number =>
  Math.max(TO * breaker.thermal.rating, 1.2 * current);

/** Current (A) and time to open (s) where the breaker sits; `start` 0 cold, `resetState` just closed again. */
export function tripPoints(
  { thermal, ambient }: PlacedBreaker,
  start: number,
  end: number,
): (readonly [current: number, time: number])[] {
  const holds = deratedRating(thermal, ambient);
  if (!(end > FROM * holds)) return [];
  return spaced(FROM * holds, end, POINTS).flatMap((current) => {
    const trip = tripTime(thermal, current, ambient, start);
    return trip.trips && trip.time <= TRIP_TIME_SHOWN ? [[current, trip.time] as const] : [];
  });
}
