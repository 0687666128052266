/** Everything that is asked of either core. */
import { fieldGroup } from '$lib/job/fields';

export const CHARGE_PATHS = fieldGroup('chargeCooler').fields.map(({ path }) => path);
export const FRONT_PATHS = fieldGroup('frontExchanger').fields.map(({ path }) => path);
