/** Which inputs of the job this sheet shows. */
import { fieldGroup, type GroupId } from '$lib/job/fields';

const paths = (id: GroupId) => fieldGroup(id).fields.map((field) => field.path);

export const DRIVE_PATHS = paths('schedule');
export const LIMIT_PATHS = paths('limits');
export const MASS_PATHS = [
  'site.ambient',
  'reservoir.volume',
  'reservoir.metal',
  'reservoir.shortCircuit',
  'chargeCooler.liquidVolume',
  'chargeCooler.metal',
  'frontExchanger.liquidVolume',
  'frontExchanger.metal',
];
