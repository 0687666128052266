/** Up to which temperature a pump that loses head to its suction side still moves the liquid. */
import type { Interval } from '../errors';
import { FLOW_STANDING } from '../loop/standstill';
import { spaced } from '../numerics/spaced';

/** Temperatures looked at from hot to cold, and halvings of the step in which it lies. */
const LOOKS = 25;
const HALVINGS = 40;

/**
 * Hottest temperature within the range at which `flow` is more than standing still; the cold end where
 * none is. `flow` is taken to fall as the liquid nears its boiling point.
 */
export function hottestMoved(flow: (T: number) => number, [coldest, hottest]: Interval): number {
  const moves = (T: number) => flow(T) >= FLOW_STANDING;
  if (moves(hottest)) return hottest;
  let high = hottest;
  for (const T of spaced(hottest, coldest, LOOKS).slice(1)) {
    if (moves(T)) return lastMoving(moves, T, high);
    high = T;
  }
  return coldest;
}

function lastMoving(moves: (T: number) => boolean, low: number, high: number): number {
  for (let i = 0; i < HALVINGS; i++) {
    const middle = low + (high - low) / 2;
    if (moves(middle)) low = middle;
    else high = middle;
  }
  return low;
}
