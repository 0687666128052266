/** How finely a circuit reads: the temperature that one count stands for, along the range. */
import { spaced } from '../../numerics/spaced';
import { degreesPerCount, fullScale, parallel } from './divider';
import { sensitivity } from './probe';
import type { ReadSetup } from './reader';

/** Temperatures at which the step is asked for over a range. */
const POINTS = 61;

type Circuit = Pick<ReadSetup, 'probe' | 'divider'>;

/** Probe at `T` with the reader's input beside it, ohm. */
const below = ({ probe, divider }: Circuit, T: number): number =>
  parallel(probe.resistance(T), divider.input);

/**
 * What one count stands for at true temperature `T`, by {@link degreesPerCount}.
 *
 * @param bias - bias resistor in the circuit, ohm
 * @returns K
 * @throws {@link OutOfRangeError} outside the probe's law
 */
export const countStep = (circuit: Circuit, bias: number, T: number): number =>
  degreesPerCount({
    R: below(circuit, T),
    R_b: bias,
    alpha: sensitivity(circuit.probe, T),
    n: fullScale(circuit.divider.bits),
  });

/** {@link countStep} over a range, evenly spaced in temperature, both ends included. */
export const countSteps = (
  circuit: Circuit,
  bias: number,
  from: number,
  to: number,
): (readonly [T: number, step: number])[] =>
  spaced(from, to, POINTS).map((T) => [T, countStep(circuit, bias, T)] as const);

/**
 * Finest and coarsest step over a range for any bias between two.
 *
 * The step has one trough, where bias and probe are alike, so the coarsest lies at an end and the finest
 * there or at the trough between them.
 */
export const countStepsBetween = (
  circuit: Circuit,
  [low, high]: readonly [number, number],
  from: number,
  to: number,
): (readonly [T: number, finest: number, coarsest: number])[] =>
  spaced(from, to, POINTS).map((T) => {
    const trough = Math.min(Math.max(below(circuit, T), low), high);
    return [
      T,
      countStep(circuit, trough, T),
      Math.max(countStep(circuit, low, T), countStep(circuit, high, T)),
    ] as const;
  });
