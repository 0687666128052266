/** Contradictions between fields that no single model of the solver sees. */
import { InvalidInputError } from '$lib/solver/errors';
import type { Loop } from '$lib/solver/loop/types';

/** @throws {@link InvalidInputError} naming the field at fault */
export function requireConsistent({ reservoir, pump }: Loop): void {
  if (reservoir.liquidVolume > reservoir.totalVolume) {
    throw new InvalidInputError(
      'reservoir.volume',
      'the liquid does not fit into the full volume',
      reservoir.liquidVolume,
    );
  }
  if (pump.motor === 'held-speed' && pump.cutoutVolts >= pump.ratedVolts) {
    throw new InvalidInputError(
      'pump.cutoutVolts',
      'the pump would cut out at the voltage of its own curve',
      pump.cutoutVolts,
    );
  }
}
