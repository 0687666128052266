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
  const fa = surplus(0);
  const fb = surplus(flowMax);
  if (fa < 0) {
    throw new NoRootError('without flow the system already asks more than the pump lifts', {
      quantity: 'head',
      value: fa,
      law: 'intersection',
    });
  }
  // The last digits of the flow carry the residual down to rounding; the floor is for a root at zero.
  const options = { fa, fb, xtol: 1e-17 * flowMax, maxIterations: 300 };
  const { x, fx, iterations } = brent(surplus, 0, flowMax, options);
  return { flow: x, lift: pump(x), residual: fx, iterations };
}
