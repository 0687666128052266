/** Which inputs of the job this sheet shows. */
import { fieldGroup } from '$lib/job/fields';
import type { DutyId } from '$lib/solver/loop/types';

const paths = (id: Parameters<typeof fieldGroup>[0]) => fieldGroup(id).fields.map((f) => f.path);

export const SITE_PATHS = [...paths('site'), ...paths('coolant'), ...paths('limits')];
export const DUTY_PATHS = (duty: DutyId) => [
  ...paths(duty),
  ...(duty === 'pull' ? paths('engine') : []),
];
export const ORDER_PATHS = ['loop.liquidOrder'];
export const SOAK_PATHS = paths('soak');
