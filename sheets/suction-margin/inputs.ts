/** Which inputs of the job this sheet shows, from the tank down to the pump. */
import type { Side } from '$lib/job/evaluate';
import { fieldGroup } from '$lib/job/fields';

export const TANK_PATHS = [
  'reservoir.level',
  'reservoir.vent',
  'reservoir.cap',
  'reservoir.ratedGauge',
];
export const HOSE_PATHS = fieldGroup('hoses')
  .fields.map((field) => field.path)
  .filter((path) => path.startsWith('hose.suction.'));
/** The pump, with what its need is known by on either side. */
export function pumpPaths(sides: readonly (Side | null)[]): readonly string[] {
  const by = sides.map((side) => side?.values['pump.npshBy']!.choice);
  return [
    'pump.inletFaces',
    'pump.eyeDepth',
    'pump.npshBy',
    ...(by.includes('estimate') ? ['pump.npshRequired'] : []),
    ...(by.includes('points') ? ['pump.npshCurve'] : []),
    'pump.cavitation',
  ];
}
export const LIQUID_PATHS = [
  'site.altitude',
  ...fieldGroup('coolant').fields.map((field) => field.path),
];
