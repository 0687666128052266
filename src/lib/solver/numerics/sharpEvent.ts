/** Integration up to an event that is placed as sharply as the steps are accurate. */
import type { OdeEvent } from './event';
import { integrate, type OdeOptions, type OdeProblem, type OdeResult } from './ode';

/** Corrections of the moment, and the change of it, s, that is no longer worth one. */
const CORRECTIONS = 5;
const CLOSE = 1e-7;
/** Times closer than this share of themselves are one. */
const ROUNDING = 1e-12;

/**
 * As {@link integrate}, but a moment found on the cubic between two steps is corrected: the run is
 * repeated from the start of that step right up to the moment, and the moment moved by Newton's rule
 * until the event's value there vanishes. The cubic is an order less accurate than the steps.
 */
export function integrateSharply(
  problem: OdeProblem,
  t0: number,
  y0: ArrayLike<number>,
  t1: number,
  options: OdeOptions,
): OdeResult {
  const found = integrate(problem, t0, y0, t1, options);
  if (found.reason !== 'event') return found;
  const { dense } = found;
  const event = options.events![found.event!]!;
  const step = dense.steps - 1;
  const from = dense.startOf(step);
  const start = new Float64Array(problem.dimension);
  dense.at(step, from, start);
  let slope = slopeAt(event, found);
  let t = found.t;
  let before: { readonly t: number; readonly value: number } | null = null;
  let result = found;
  // So soon after the start of a step there is nothing between to correct, nor room for a step.
  const least = ROUNDING * Math.max(1, Math.abs(t));
  for (let i = 0; i < CORRECTIONS; i++) {
    if (!(t - from > least)) return result;
    dense.truncate(step);
    const again = integrate(problem, from, start, t, {
      ...options,
      events: [],
      firstStep: t - from,
    });
    if (again.reason !== 'finished') return again;
    result = { ...again, reason: 'event', event: found.event, dense };
    const value = event.value(t, again.y);
    // The secant of two honest values once they are far enough apart to have one.
    if (before && Math.abs(t - before.t) > 1e3 * CLOSE) {
      slope = (value - before.value) / (t - before.t);
    }
    before = { t, value };
    const move = -value / slope;
    if (!(Math.abs(move) > CLOSE)) break; // no slope: NaN or 0/0, nothing to follow
    t = Math.min(Math.max(t + move, from), t1, t + (found.t - from));
  }
  return {
    ...result,
    steps: found.steps,
    rejected: found.rejected,
    rhsCalls: found.rhsCalls,
  };
}

/** Rate of the event's value at the moment found, by the cubic that ends there. */
function slopeAt(event: OdeEvent, { t, y, dense }: OdeResult): number {
  const step = dense.steps - 1;
  const earlier = t - 1e-3 * (t - dense.startOf(step));
  const there = new Float64Array(y.length);
  dense.at(step, earlier, there);
  return (event.value(t, y) - event.value(earlier, there)) / (t - earlier);
}
