/** Which inputs of the job this sheet shows. */
import { fieldGroup, type GroupId } from '$lib/job/fields';

const paths = (id: GroupId) => fieldGroup(id).fields.map((field) => field.path);

export const DRIVE_PATHS = [...paths('schedule'), 'site.ambient'];
export const LIMIT_PATHS = paths('limits');
/** What holds the heat, part by part. */
export const MASS_GROUPS = [
  {
    title: 'Reservoir',
    paths: ['reservoir.volume', 'reservoir.metal', 'reservoir.shortCircuit'],
  },
  { title: 'Charge cooler', paths: ['chargeCooler.liquidVolume', 'chargeCooler.metal'] },
  { title: 'Front exchanger', paths: ['frontExchanger.liquidVolume', 'frontExchanger.metal'] },
] as const;
