/** Which inputs of the job this sheet shows, from the tank down to the pump. */
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
export const PUMP_PATHS = [
  'pump.inletFaces',
  'pump.eyeDepth',
  'pump.npshBy',
  'pump.npshRequired',
  'pump.npshCurve',
  'pump.cavitation',
];
export const LIQUID_PATHS = [
  'site.altitude',
  ...fieldGroup('coolant').fields.map((field) => field.path),
];
