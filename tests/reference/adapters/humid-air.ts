import {
  compressedDewPoint,
  dewPoint,
  humidityRatio,
  moistAirDensity,
  vapourPressure,
  vapourPressureFromRatio,
  wetBulb,
} from '$lib/solver/air/humid';
import type { Given } from '../given';
import type { Adapter } from '../harness';

const state = (given: Given, T = 'T', p = 'p') => ({
  T: given.number(T),
  relativeHumidity: given.number('relative_humidity'),
  p: given.number(p),
});

export const humidAirAdapters: Record<string, Adapter> = {
  'moist-air': (given) => {
    const air = state(given);
    return {
      humidity_ratio: humidityRatio(air),
      p_vapour: vapourPressure(air),
      T_dew: dewPoint(air),
      rho: moistAirDensity(air),
    };
  },
  'compressed-air-dew-point': (given) => {
    const air = state(given, 'T_ambient', 'p_ambient');
    const p_charge = given.number('p_charge');
    const humidity_ratio = humidityRatio(air);
    return {
      humidity_ratio,
      p_vapour_charge: vapourPressureFromRatio(humidity_ratio, p_charge),
      T_dew_charge: compressedDewPoint({ ...air, p_charge }),
    };
  },
  'wet-bulb': (given) => ({ T_wet_bulb: wetBulb(state(given)) }),
};
