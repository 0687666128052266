/** The blanks of this sheet. */
import { fieldGroup } from '$lib/job/fields';

const pathsOf = (id: 'meterRuns' | 'meterMade' | 'meterPlace') =>
  fieldGroup(id).fields.map((field) => field.path);

export const RUN_PATHS = pathsOf('meterRuns');
export const MADE_PATHS = pathsOf('meterMade');
export const PLACE_PATHS = pathsOf('meterPlace');
