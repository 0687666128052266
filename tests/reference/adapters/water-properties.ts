import {
  saturationPressureWater,
  saturationTemperatureWater,
  waterProperties,
} from '$lib/solver/fluids/water';
import type { Adapter } from '../harness';

export const waterPropertiesAdapters: Record<string, Adapter> = {
  liquid: (given) => ({ ...waterProperties(given.number('T'), given.number('p')) }),
  'saturation-pressure': (given) => ({ p: saturationPressureWater(given.number('T')) }),
  'saturation-temperature': (given) => ({ T: saturationTemperatureWater(given.number('p')) }),
};
