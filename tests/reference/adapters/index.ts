/** Every adapter, by topic. A topic or an op that is not here is listed as unsupported. */
import type { Adapters } from '../harness';
import { boilingPointAdapters } from './boiling-point-altitude';
import { compressorOutletAdapters } from './compressor-outlet';
import { copperWire } from './copper-wire';
import { effectivenessNtuAdapters } from './effectiveness-ntu';
import { glycolWaterAdapters } from './glycol-water';
import { humidAirAdapters } from './humid-air';
import { internalConvectionAdapters } from './internal-convection';
import { lmtdAdapters } from './lmtd-worked-examples';
import { louveredFinAdapters } from './louvered-fin';
import { npshAdapters } from './npsh-available';
import { operatingPointAdapters } from './operating-point';
import { parameterEstimationAdapters } from './parameter-estimation';
import { pipeFrictionAdapters } from './pipe-friction';
import { pipePressureDropAdapters } from './pipe-pressure-drop';
import { preferredNumbersAdapters } from './preferred-numbers';
import { pumpAffinityAdapters } from './pump-affinity';
import { standardAtmosphereAdapters } from './standard-atmosphere';
import { thermistorDividerAdapters } from './thermistor-divider';
import {
  transientLoopAdapters,
  transientTwoMassAdapters,
  transientWarmupAdapters,
} from './transient';
import { transientIceAdapters } from './transient-ice';
import { waterPropertiesAdapters } from './water-properties';

export const adapters: Adapters = {
  'boiling-point-altitude': boilingPointAdapters,
  'compressor-outlet': compressorOutletAdapters,
  'copper-wire': copperWire,
  'effectiveness-ntu': effectivenessNtuAdapters,
  'ethylene-glycol-water': glycolWaterAdapters('ethylene-glycol'),
  'humid-air': humidAirAdapters,
  'internal-convection': internalConvectionAdapters,
  'lmtd-worked-examples': lmtdAdapters,
  'louvered-fin': louveredFinAdapters,
  'npsh-available': npshAdapters,
  'operating-point': operatingPointAdapters,
  'parameter-estimation': parameterEstimationAdapters,
  'pipe-friction': pipeFrictionAdapters,
  'pipe-pressure-drop': pipePressureDropAdapters,
  'preferred-numbers': preferredNumbersAdapters,
  'propylene-glycol-water': glycolWaterAdapters('propylene-glycol'),
  'pump-affinity': pumpAffinityAdapters,
  'standard-atmosphere': standardAtmosphereAdapters,
  'thermistor-divider': thermistorDividerAdapters,
  'transient-ice': transientIceAdapters,
  'transient-loop': transientLoopAdapters,
  'transient-two-mass': transientTwoMassAdapters,
  'transient-warmup': transientWarmupAdapters,
  'water-properties': waterPropertiesAdapters,
};
