/** How much a residual counts, so that a few wild readings do not carry the fit away. */
import { OutOfRangeError } from '../errors';
import type { Loss } from './types';

/** Huber's own proposal: 95 % of the efficiency of least squares where the errors are normal. */
export const HUBER_SCALE = 1.345;

/** @throws {@link OutOfRangeError} where its scale is not above zero */
export function requireLoss(loss: Loss): void {
  if (loss.kind !== 'squares' && !(loss.scale > 0 && loss.scale < Infinity))
    throw new OutOfRangeError('robust loss', 'scale', loss.scale, [Number.MIN_VALUE, 1e300]);
}

/** Sum over all residuals of c² ρ((r/c)²); plain squares give the sum of squares. */
export function lossSum(r: Float64Array, loss: Loss): number {
  let sum = 0;
  for (let i = 0; i < r.length; i++) {
    const square = r[i]! * r[i]!;
    if (loss.kind === 'squares') sum += square;
    else {
      const c2 = loss.scale * loss.scale;
      const z = square / c2;
      if (loss.kind === 'huber') sum += z <= 1 ? square : c2 * (2 * Math.sqrt(z) - 1);
      else sum += c2 * 2 * (Math.sqrt(1 + z) - 1);
    }
  }
  return sum;
}

/** First and second derivative of ρ at z = (r/c)². */
export function lossSlopes(r: number, loss: Loss): readonly [first: number, second: number] {
  if (loss.kind === 'squares') return [1, 0];
  const z = (r / loss.scale) ** 2;
  if (loss.kind === 'huber') return z <= 1 ? [1, 0] : [1 / Math.sqrt(z), -0.5 / (z * Math.sqrt(z))];
  const root = Math.sqrt(1 + z);
  return [1 / root, -0.5 / (root * root * root)];
}

/**
 * Rescale residuals and derivatives in place so that plain least squares of them steps as the loss asks.
 * @param J - m × n, one column after the other
 * @source Triggs et al., Bundle Adjustment, sec. 4.3, in: Vision Algorithms, LNCS 1883 (2000) (from memory)
 */
export function rescale(r: Float64Array, J: Float64Array, loss: Loss): void {
  if (loss.kind === 'squares') return;
  const m = r.length;
  for (let i = 0; i < m; i++) {
    const [first, second] = lossSlopes(r[i]!, loss);
    const z = (r[i]! / loss.scale) ** 2;
    // Where the loss flattens the curvature ends; a little is kept so that a step can be taken.
    const curvature = Math.sqrt(Math.max(first + 2 * second * z, 0.1 * first));
    for (let o = i; o < J.length; o += m) J[o] = J[o]! * curvature;
    r[i] = (r[i]! * first) / curvature;
  }
}
