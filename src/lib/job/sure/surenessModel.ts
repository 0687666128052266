/** The loop of one side as a model of its unsure inputs: drawn, prepared, settled, a few numbers read. */
import { SolverError } from '$lib/solver/errors';
import { keptParts } from '$lib/solver/kept';
import { glance, type Glance } from '$lib/solver/loop/glance';
import { prepareLoop, type PreparedLoop } from '$lib/solver/loop/prepare';
import type { DutyId } from '$lib/solver/loop/types';
import type { Model } from '$lib/solver/uncertainty/propagate';
import { drawnLoop } from './drawnLoop';
import type { Uncertain } from './surenessInputs';
import type { Values } from '../values';

/**
 * How sharply a draw is settled: temperature, K, and flow over itself. Far below any spread worth
 * telling, and held to the plain way by a test.
 */
export const SHARP = { temperature: 1e-5, flow: 1e-8 } as const;

export type Solve = (duty: DutyId) => Glance;

/**
 * The results of one side as a function of its unsure inputs, for thousands of draws: parts that a draw
 * leaves alone are prepared once, and each duty is sought near where it last settled. No answer where
 * the draw makes no loop.
 */
export function loopModel(
  values: Values,
  inputs: readonly Uncertain[],
  results: (solve: Solve) => ArrayLike<number>,
): Model {
  const loopAt = drawnLoop(
    values,
    inputs.map(({ path }) => path),
  );
  const kept = keptParts();
  const flow = { flow: NaN, within: SHARP.flow };
  const outlets = new Map<DutyId, number>();
  const held = heldWithin(inputs);
  return (x) => {
    try {
      const loop = loopAt(held(x));
      const ready = prepareLoop(loop, { kept, near: flow });
      return results((id) => {
        const near = outlets.get(id);
        const within = SHARP.temperature;
        const seen = glance(
          ready,
          loop.duties[id],
          near === undefined ? { within } : { near, within },
        );
        outlets.set(id, seen.outlet);
        return seen;
      });
    } catch (error) {
      if (error instanceof SolverError) return null;
      throw error;
    }
  };
}

/** As {@link loopModel}, with the whole loop at hand, prepared down to rounding. */
export function preparedModel(
  values: Values,
  inputs: readonly Uncertain[],
  results: (ready: PreparedLoop) => ArrayLike<number>,
): Model {
  const loopAt = drawnLoop(
    values,
    inputs.map(({ path }) => path),
  );
  const kept = keptParts();
  const held = heldWithin(inputs);
  return (x) => {
    try {
      return results(prepareLoop(loopAt(held(x)), { kept }));
    } catch (error) {
      if (error instanceof SolverError) return null;
      throw error;
    }
  };
}

/** A tail of the distribution does not leave the range of the field. */
export function heldWithin(inputs: readonly Uncertain[]): (x: Float64Array) => Float64Array {
  const held = new Float64Array(inputs.length);
  return (x) => {
    for (let i = 0; i < held.length; i++) {
      const [least, most] = inputs[i]!.ends;
      held[i] = Math.min(most, Math.max(least, x[i]!));
    }
    return held;
  };
}
