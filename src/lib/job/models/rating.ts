/** Liquids and rating points of a job as the solver takes them. */
import { massFractionFromVolume } from '$lib/solver/fluids/glycol';
import type { Coolant, CoolantKind, CoreRating } from '$lib/solver/loop/types';
import type { Values } from '../value';

export function coolantOf(values: Values, prefix: string): Coolant {
  const kind = values[`${prefix}.kind`]!.choice as CoolantKind;
  const share = values[`${prefix}.share`]!.si!;
  if (kind === 'water' || share === 0) return { kind: 'water', massFraction: 0 };
  const byMass = values[`${prefix}.basis`]!.choice === 'mass';
  return {
    kind,
    massFraction: byMass ? share : massFractionFromVolume({ kind, volumeFraction: share }),
  };
}

export function ratingOf(values: Values, core: 'chargeCooler' | 'frontExchanger'): CoreRating {
  const si = (key: string) => values[`${core}.rating.${key}`]!.si!;
  return {
    heat: si('heat'),
    airMassFlow: si('airMassFlow'),
    airInlet: si('airInlet'),
    liquidFlow: si('liquidFlow'),
    liquidInlet: si('liquidInlet'),
    coolant: coolantOf(values, `${core}.rating.coolant`),
  };
}
