/** Which inputs of the job this sheet shows. */
import type { Values } from '$lib/job/values';
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

/** What may happen on the way; the details of a switch only where it is on. */
export function eventPaths(values: readonly Values[]): string[] {
  const any = (path: string, ...chosen: string[]) =>
    values.some((v) => chosen.includes(v[path]!.choice!));
  const given = (path: string) => values.some((v) => v[path]!.si !== undefined);
  return [
    'pump.cavitation',
    'events.breaker',
    ...(any('events.breaker', 'bay', 'outside') ? ['feed.protection.kind'] : []),
    'events.fans',
    ...(any('events.fans', 'reservoir', 'frontOut') ? ['events.fansOn', 'events.fansOff'] : []),
    'events.underhood',
    ...(any('events.underhood', 'on')
      ? ['events.bayLag', 'runaway.liquidGain', 'runaway.inletShare']
      : []),
    'events.ice',
    'events.hoses',
    'events.boiling',
    'events.airAt',
    ...(given('events.airAt') ? ['events.restToPrime'] : []),
    'events.pumpOffAt',
    ...(given('events.pumpOffAt') ? ['events.pumpOnAt'] : []),
  ];
}
