import { airDensity, airViscosity } from '$lib/solver/air/air';
import {
  altitudeAtPressure,
  geopotentialAltitude,
  pressureAtAltitude,
  temperatureAtAltitude,
} from '$lib/solver/air/atmosphere';
import type { Adapter } from '../harness';

function atGeopotential(altitude: number) {
  const T = temperatureAtAltitude(altitude);
  const p = pressureAtAltitude(altitude);
  return { T, p, rho: airDensity({ T, p }) };
}

export const standardAtmosphereAdapters: Record<string, Adapter> = {
  'standard-atmosphere-geopotential': (given) =>
    atGeopotential(given.number('altitude_geopotential')),
  'standard-atmosphere-geometric': (given) => {
    const altitude_geopotential = geopotentialAltitude(given.number('altitude_geometric'));
    return { altitude_geopotential, ...atGeopotential(altitude_geopotential) };
  },
  'altitude-from-pressure': (given) => ({
    altitude_geopotential: altitudeAtPressure(given.number('p')),
  }),
  'dry-air-density': (given) => ({
    rho: airDensity({ T: given.number('T'), p: given.number('p') }),
  }),
  'air-viscosity-sutherland': (given) => ({ mu: airViscosity(given.number('T')) }),
};
