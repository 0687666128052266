/** Which inputs of the job this sheet shows. */
import { fieldGroup, type GroupId } from '$lib/job/fields';

const paths = (id: GroupId) => fieldGroup(id).fields.map((field) => field.path);

export const TANK_PATHS = paths('reservoir');
export const QUESTION_PATHS = [
  ...paths('reservoirQuestion'),
  'limits.recoveryBand',
  'limits.reservoir',
];
export const LIQUID_PATHS = paths('coolant');
