/** Which inputs of the job this sheet shows, in the order of the liquid's way. */
import { fieldGroup } from '$lib/job/fields';
import type { HoseId } from '$lib/solver/loop/types';

const paths = (id: Parameters<typeof fieldGroup>[0]) => fieldGroup(id).fields.map((f) => f.path);

export const PUMP_PATHS = paths('pump');
export const HOSES_PATHS = ['loop.liquidOrder', 'hose.dashConvention'];
export const RUN_PATHS = (run: HoseId) =>
  paths('hoses').filter((path) => path.startsWith(`hose.${run}.`));
export const CORE_PATHS = (['chargeCooler', 'frontExchanger'] as const).flatMap((core) => [
  `${core}.liquidLoss`,
  `${core}.liquidLossExponent`,
]);
export const LIQUID_PATHS = paths('coolant');
export const SUCTION_PATHS = ['reservoir.level', 'reservoir.cap', 'site.altitude'];
