/** The blanks of this sheet; what other sheets ask for too is the same blank. */
import type { Side } from '$lib/job/evaluate';

export const SURE_PATHS = [
  'instruments.probePlusMinus',
  'instruments.airPlusMinus',
  'instruments.flowPlusMinus',
  'instruments.heatWanted',
];

export const PROBE_PATHS = [
  'instruments.soak',
  'measured.soak',
  'instruments.bath',
  'instruments.bathSpread',
  'instruments.ice',
  'probe.ice',
  'instruments.boil',
  'probe.boil',
];

export const METER_PATHS = [
  'instruments.leads',
  'instruments.leadsRead',
  'instruments.clamp',
  'instruments.clampRead',
  'instruments.gauge',
  'instruments.gaugeRead',
  'instruments.bucket',
];

export const airPaths = ({ values }: Side): readonly string[] => [
  'site.altitude',
  'probe.airBy',
  ...(values['probe.airBy']!.choice === 'altitude' ? [] : ['probe.barometer']),
];
