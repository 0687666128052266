/** A side at other values of its unsure inputs, with all that a sheet may ask of a side. */
import { SolverError } from '$lib/solver/errors';
import { keptParts } from '$lib/solver/kept';
import { prepareLoop } from '$lib/solver/loop/prepare';
import type { Side } from '../evaluate';
import { solvedSide } from '../solvedSide';
import { drawnLoop, withDrawn } from './drawnLoop';
import type { Uncertain } from './surenessInputs';
import { heldWithin } from './surenessModel';

/**
 * The side with drawn inputs in the place of its own; null where they make no loop. Parts that a draw
 * leaves alone are prepared once; what the loop leads to is solved down to rounding, when asked for.
 */
export function drawnSides(
  { id, values }: Side,
  inputs: readonly Uncertain[],
): (x: Float64Array) => Side | null {
  const paths = inputs.map(({ path }) => path);
  const loopAt = drawnLoop(values, paths);
  const kept = keptParts();
  const held = heldWithin(inputs);
  return (x) => {
    try {
      const at = held(x);
      const described = {
        id,
        values: withDrawn(values, paths, at),
        problems: [],
        loop: loopAt(at),
      };
      const side = solvedSide(described, 'SI', (loop) => prepareLoop(loop, { kept }));
      return side.prepared.ok ? side : null;
    } catch (error) {
      if (error instanceof SolverError) return null;
      throw error;
    }
  };
}
