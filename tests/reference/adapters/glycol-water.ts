/** Topics ethylene-glycol-water and propylene-glycol-water: the same calculations, two glycols. */
import { coolantVapourPressure, waterMoleFraction } from '$lib/solver/fluids/coolant';
import {
  DENSITY_20C,
  MOLAR_MASS,
  glycolFreezingPoint,
  glycolProperties,
  massFractionFromVolume,
  type GlycolKind,
} from '$lib/solver/fluids/glycol';
import type { Adapter } from '../harness';

export const glycolWaterAdapters = (kind: GlycolKind): Record<string, Adapter> => ({
  properties: (given) => ({ ...glycolProperties(kind, given.number('x_mass'), given.number('T')) }),
  'freezing-point': (given) => ({ T: glycolFreezingPoint(kind, given.number('x_mass')) }),
  'vapour-pressure-raoult': (given) => {
    given.constant('molar_mass_glycol', MOLAR_MASS[kind]);
    given.constant('molar_mass_water', MOLAR_MASS.water);
    const coolant = { kind, massFraction: given.number('x_mass') };
    return {
      x_water_mole: waterMoleFraction(coolant),
      p: coolantVapourPressure(coolant, given.number('T')),
    };
  },
  'volume-to-mass': (given) => {
    given.constant('rho_glycol', DENSITY_20C[kind]);
    given.constant('rho_water', DENSITY_20C.water);
    return { x_mass: massFractionFromVolume({ kind, volumeFraction: given.number('phi_volume') }) };
  },
});
