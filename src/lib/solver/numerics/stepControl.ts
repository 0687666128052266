/** What the controller remembers of the last accepted step. */
export interface StepMemory {
  step: number;
  error: number;
}

const SAFETY = 0.9;
const SHRINK_MOST = 0.2;
const GROW_MOST = 6;
/** The embedded error goes with the fourth power of the step. */
const ORDER = 4;

/**
 * By what to multiply the step after a try with the scaled error `error` (1 is just allowed).
 * Accepted steps also look at how the error moved from the step before (Gustafsson's predictive
 * control; Hairer and Wanner, IV.8), and the memory is brought up to date.
 */
export function stepFactor(
  error: number,
  step: number,
  memory: StepMemory,
  rejected: boolean,
): number {
  const bounded = (x: number) => Math.min(GROW_MOST, Math.max(SHRINK_MOST, x));
  let factor = bounded(SAFETY / Math.max(error, 1e-12) ** (1 / ORDER));
  if (rejected) return factor;
  if (memory.step > 0) {
    const predicted =
      (SAFETY * step * (memory.error / Math.max(error, 1e-12) ** 2) ** (1 / ORDER)) / memory.step;
    factor = Math.min(factor, bounded(predicted));
  }
  memory.step = step;
  memory.error = Math.max(1e-2, error);
  return factor;
}
