/** What within one run of hose takes its head: the hose itself, its bends, its fittings. */
import type { Hose, HoseId } from '../loop/types';
import { SOURCES, type Source } from '../sources';
import { g } from './affinity';
import { fittingK, type HoseDrop } from './hose';

/** Heads within a run, m; they add up to the run's own. */
export interface RunParts {
  readonly friction: number;
  readonly bends: number;
  /** Entrance, exit, couplings. */
  readonly other: number;
  /** The two necking end fittings. */
  readonly fittings: number;
}

/**
 * Split the head of a run at the flow of `drop`.
 *
 * @formula h = K * V^2 / (2 * g)
 * @symbol K - loss coefficient of the part; f L / D for the hose itself, 1
 * @symbol V - mean velocity, m/s
 * @symbol g - standard gravity 9.80665 m/s^2
 * @source Darcy-Weisbach; Crane TP-410
 */
export function runParts(
  hose: Hose,
  { velocity, friction }: Pick<HoseDrop, 'velocity' | 'friction'>,
): RunParts {
  const velocityHead = (velocity * velocity) / (2 * g);
  return {
    friction: (((friction ?? 0) * hose.length) / hose.bore) * velocityHead,
    bends: hose.bends * hose.bendK * velocityHead,
    other: hose.otherK * velocityHead,
    fittings: 2 * fittingK(hose) * velocityHead,
  };
}

/** Velocity above which a run is thought too narrow, m/s: 4 ft/s ahead of the pump, 7 ft/s behind it. */
export const HOSE_VELOCITY_MAX: Readonly<Record<HoseId, number>> = {
  suction: 4 * 0.3048,
  delivery: 7 * 0.3048,
  transfer: 7 * 0.3048,
  back: 7 * 0.3048,
};

/** Where {@link HOSE_VELOCITY_MAX} comes from. */
export const HOSE_VELOCITY_SOURCE: Source = SOURCES.commonPractice;

/** Reynolds numbers between which a hose's loss is not repeatable. */
export const TRANSITION_RE = [2300, 4000] as const;
