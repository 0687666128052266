/** Which inputs of the job this sheet shows. */
import { fieldGroup, type GroupId } from '$lib/job/fields';

const paths = (id: GroupId) => fieldGroup(id).fields.map((field) => field.path);

export const FEED_PATHS = paths('feed');
export const WIRE_PATHS = paths('feedWire');
export const PROTECTION_PATHS = paths('feedProtection');
export const DRAW_PATHS = [
  'pump.voltsFrom',
  'pump.volts',
  'pump.motor',
  'pump.ratedVolts',
  'pump.electricPower',
  'pump.cutoutVolts',
  ...paths('feedDraw'),
];
