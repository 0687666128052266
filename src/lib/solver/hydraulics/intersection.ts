/** Where a curve that lifts meets a curve that resists: pump and pipework, fan and core. */
import { NoRootError } from '../errors';
import { brent } from '../numerics/root';

export interface Intersection {
  readonly flow: number;
  /** Lift of the pump there, in the unit of the two functions. */
  readonly lift: number;
  /** Lift less resistance: what the root finder left. */
  readonly residual: number;
  readonly iterations: number;
}

/** Ratio of the ends of the bracket handed to the root finder. */
const STRIDE = 8;

/**
 * Flow at which `pump` and `system` are equal, between none and `flowMax`.
 *
 * Guaranteed when the pump lifts at least what the system asks without flow, and the system asks at
 * least what the pump lifts at `flowMax`: the difference then changes sign.
 *
 * @throws {@link NoRootError} when they do not cross in that span
 */
export function intersection(
  pump: (flow: number) => number,
  system: (flow: number) => number,
  flowMax: number,
): Intersection {
  const surplus = (flow: number) => pump(flow) - system(flow);
  if (surplus(0) < 0) {
    throw new NoRootError('without flow the system already asks more than the pump lifts', {
      quantity: 'head',
      value: surplus(0),
      law: 'intersection',
    });
  }
  // Come down to the decade of the root: a nearly flat curve has its run-out far beyond any real flow.
  let high = flowMax;
  let fb = surplus(high);
  let low = high / STRIDE;
  let fa = surplus(low);
  while (fa < 0 && low > 0) {
    high = low;
    fb = fa;
    low = high / STRIDE;
    fa = surplus(low);
  }
  // No tolerance of our own: the last digit of the flow carries the residual down to rounding.
  const { x, fx, iterations } = brent(surplus, low, high, { fa, fb, xtol: 0 });
  return { flow: x, lift: pump(x), residual: fx, iterations };
}

/** A flow known from a loop much like this one; it is brought up to date by every search. */
export interface Near {
  /** m³/s; NaN before the first. */
  flow: number;
  /** Half-width of the bracket at which the search ends, over the flow. */
  readonly within: number;
}

/** How far from the known flow to look for the other side of the root, over that flow. */
const REACHES = [0.004, 0.03, 0.2];

/**
 * As {@link intersection}, looked for round a flow known from a like loop, and no sharper than told.
 * The root is bracketed all the same: where it does not lie near, the search starts from nothing.
 */
export function nearIntersection(
  pump: (flow: number) => number,
  system: (flow: number) => number,
  flowMax: number,
  near: Near,
): number {
  const surplus = (flow: number) => pump(flow) - system(flow);
  const start = near.flow;
  if (start > 0 && start < flowMax) {
    let a = start;
    let fa = surplus(a);
    for (const reach of REACHES) {
      const b = Math.min(start * (fa > 0 ? 1 + reach : 1 - reach), flowMax);
      const fb = surplus(b);
      if (fa > 0 !== fb > 0) {
        near.flow = brent(surplus, a, b, { fa, fb, xtol: near.within * start }).x;
        return near.flow;
      }
      a = b;
      fa = fb;
    }
  }
  near.flow = intersection(pump, system, flowMax).flow;
  return near.flow;
}
