/** The blanks of this sheet. */
import { fieldGroup } from '$lib/job/fields';

export const LOG_PATHS = fieldGroup('log').fields.map((field) => field.path);
