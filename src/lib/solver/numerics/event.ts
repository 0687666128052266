import type { DenseSolution } from './dense';

/** A moment to stop at: `value` crosses zero. */
export interface OdeEvent {
  value(t: number, y: Float64Array): number;
  /** 1: only from below; -1: only from above; 0: either. */
  readonly direction: -1 | 0 | 1;
}

/** Points looked at inside a step, so that a short visit beyond zero is not missed. */
const LOOKS = 4;

/**
 * The earliest crossing on the last step of `dense`, from `t` to `tNext`; null if there is none.
 * `before` holds the values at `t` and is brought up to `tNext`; `y` is written over.
 * A value that starts at exactly zero has not crossed.
 */
export function locate(
  events: readonly OdeEvent[],
  before: number[],
  dense: DenseSolution,
  t: number,
  tNext: number,
  y: Float64Array,
): { readonly index: number; readonly t: number } | null {
  if (events.length === 0) return null;
  const step = dense.steps - 1;
  let low = t;
  for (let look = 1; look <= LOOKS; look++) {
    const high = look === LOOKS ? tNext : t + ((tNext - t) * look) / LOOKS;
    dense.at(step, high, y);
    let first: { index: number; t: number } | null = null;
    for (let index = 0; index < events.length; index++) {
      const event = events[index]!;
      const atLow = before[index]!;
      const atHigh = event.value(high, y);
      before[index] = atHigh; // of no use after a crossing: the run then ends
      if (atLow === 0 || atLow * atHigh > 0 || event.direction * atLow > 0) continue;
      const there = new Float64Array(dense.dimension);
      const value = (at: number) => {
        dense.at(step, at, there);
        return event.value(at, there);
      };
      const root = bisected(value, low, atLow, high);
      if (!first || root < first.t) first = { index, t: root };
    }
    if (first) return first;
    low = high;
  }
  return null;
}

/** Halving until the bracket is as fine as doubles allow: an event is rare, so sureness over speed. */
function bisected(f: (t: number) => number, low: number, atLow: number, high: number): number {
  for (let i = 0; i < 60; i++) {
    const middle = low + (high - low) / 2;
    if (middle <= low || middle >= high) break;
    if (f(middle) * atLow > 0) low = middle;
    else high = middle;
  }
  return high;
}
