/** The blanks of this sheet. */
import { fieldGroup } from '$lib/job/fields';

const pathsOf = (id: 'meterRuns' | 'meterMade' | 'meterPlace') =>
  fieldGroup(id).fields.map((field) => field.path);

/** The rows come first; how well they were read stands with the other inputs. */
export const RUN_PATHS = ['meter.runs'];
export const ERROR_PATHS = pathsOf('meterRuns').filter((path) => path !== 'meter.runs');
export const MADE_PATHS = pathsOf('meterMade');
export const PLACE_PATHS = pathsOf('meterPlace');
