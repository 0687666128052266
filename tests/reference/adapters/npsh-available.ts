import { pressureAtAltitude } from '$lib/solver/air/atmosphere';
import { coolantProperties } from '$lib/solver/fluids/coolant';
import { saturationPressureWater, saturationTemperatureWater } from '$lib/solver/fluids/water';
import { brent } from '$lib/solver/numerics/root';
import { NPSH_RANGE, npshAvailable, suctionMargin } from '$lib/solver/suction/npsh';
import type { Given } from '../given';
import type { Adapter } from '../harness';

const tank = (given: Given) => ({
  p_tank_gauge: given.numberOr('p_tank_gauge', 0),
  z: given.number('z_surface_above_inlet'),
  h_suction: given.number('h_suction_loss'),
});

export const npshAdapters: Record<string, Adapter> = {
  'npsh-available': (given) => ({
    NPSHa: npshAvailable({
      ...tank(given),
      p_ambient: given.number('p_ambient'),
      p_vapour: given.number('p_vapour'),
      rho: given.number('rho'),
    }),
  }),
  'npsh-available-water': (given) => {
    const T = given.number('T');
    const p_ambient = pressureAtAltitude(given.number('altitude_geopotential'));
    const p_vapour = saturationPressureWater(T);
    const { rho } = coolantProperties({ kind: 'water', massFraction: 0 }, T);
    const NPSHa = npshAvailable({ ...tank(given), p_ambient, p_vapour, rho });
    return { p_ambient, p_vapour, rho, NPSHa };
  },
  // The solver computes margins; the vapour pressure that leaves none is its root.
  'liquid-temperature-at-zero-margin': (given) => {
    const side = { ...tank(given), p_ambient: given.number('p_ambient'), rho: given.number('rho') };
    const required = given.number('NPSHr');
    const margin = (p_vapour: number) =>
      suctionMargin({ available: npshAvailable({ ...side, p_vapour }), required });
    const p_vapour = brent(margin, ...NPSH_RANGE.p_vapour).x;
    return { p_vapour, T: saturationTemperatureWater(p_vapour) };
  },
};
