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
