import { pressureAtAltitude } from '$lib/solver/air/atmosphere';
import { coolantBoilingPoint } from '$lib/solver/fluids/coolant';
import { MOLAR_MASS } from '$lib/solver/fluids/glycol';
import type { Coolant } from '$lib/solver/loop/types';
import { Unsupported, type Given } from '../given';
import type { Adapter } from '../harness';

const WATER: Coolant = { kind: 'water', massFraction: 0 };

/** The cases name the glycol by its molar mass alone. */
function mixture(given: Given): Coolant {
  given.constant('molar_mass_water', MOLAR_MASS.water);
  const massFraction = given.number('x_mass');
  const M = given.number('molar_mass_glycol');
  for (const kind of ['ethylene-glycol', 'propylene-glycol'] as const)
    if (Math.abs(M - MOLAR_MASS[kind]) <= 1e-9 * M) return { kind, massFraction };
  throw new Unsupported(`a glycol of molar mass ${M}`);
}

export const boilingPointAdapters: Record<string, Adapter> = {
  'boiling-point-at-altitude': (given) => {
    const p = pressureAtAltitude(given.number('altitude_geopotential'));
    return { p, T: coolantBoilingPoint(WATER, p) };
  },
  'boiling-point-at-pressure': (given) => ({ T: coolantBoilingPoint(WATER, given.number('p')) }),
  'boiling-point-mixture-raoult': (given) => ({
    T: coolantBoilingPoint(mixture(given), given.number('p')),
  }),
};
