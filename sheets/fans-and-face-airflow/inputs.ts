/** Which inputs of the job this sheet shows, from the grille backwards. */
import { fieldGroup } from '$lib/job/fields';
import type { DutyId } from '$lib/solver/loop/types';

const paths = (id: Parameters<typeof fieldGroup>[0]) => fieldGroup(id).fields.map((f) => f.path);

export const FAN_PATHS = paths('fans');
export const FACE_PATHS = [
  'frontExchanger.width',
  'frontExchanger.height',
  'frontExchanger.airLoss',
  'frontExchanger.airLossExponent',
];
export const AIR_PATHS = paths('airPath');
export const WHERE_PATHS = (duty: DutyId) => [
  `duty.${duty}.speed`,
  'site.ambient',
  'site.altitude',
];
