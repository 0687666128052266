/** The blanks of this sheet: everything measured, in the order of the walk round the vehicle. */
import { fieldGroup, type GroupId } from '$lib/job/fields';

const pathsOf = (id: GroupId) => fieldGroup(id).fields.map((field) => field.path);

export const ONCE_PATHS = pathsOf('measuredOnce');
export const TRAFFIC_PATHS = pathsOf('measuredTraffic');
export const CRUISE_PATHS = pathsOf('measuredCruise');
