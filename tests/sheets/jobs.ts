/** Jobs on which the sheets are tried: the demonstration job, and changes of it that reach other lines. */
import { readFileSync } from 'node:fs';
import { applyEdit, setUnits } from '$lib/job/edit';
import { readJob } from '$lib/job/file/file';
import type { Job, SideId } from '$lib/job/types';

export const DUTY_IDS = ['traffic', 'cruise', 'pull'] as const;

/** The job a new reader sees first. */
export function demoJob(): Job {
  const read = readJob(readFileSync('static/demo-job.json', 'utf8'));
  if (!read.ok) throw new Error(read.message);
  return read.job;
}

/** A job with these texts typed in. @throws where one is refused */
export function edited(
  job: Job,
  changes: Readonly<Record<string, string>>,
  side: SideId = 'asFound',
): Job {
  return Object.entries(changes).reduce((current, [path, text]) => {
    const next = applyEdit(current, side, path, text);
    if (next.problem !== undefined) throw new Error(`${path}: ${next.problem}`);
    return next.job;
  }, job);
}

/** As {@link edited}, for every duty: `key` is the field's name inside a duty. */
export const inEveryDuty = (changes: Readonly<Record<string, string>>) =>
  Object.fromEntries(
    DUTY_IDS.flatMap((duty) =>
      Object.entries(changes).map(([key, text]) => [`duty.${duty}.${key}`, text] as const),
    ),
  );

/** Named changes of the demonstration job; each also keeps the demonstration's candidate. */
export const JOBS: Readonly<Record<string, () => Job>> = {
  'as it comes': demoJob,
  'air from speed and density': () => edited(demoJob(), inEveryDuty({ by: 'speed-density' })),
  'plain water': () => edited(demoJob(), { 'coolant.kind': 'water' }),
  'two pumps in series': () => edited(demoJob(), { 'pump.arrangement': 'two-in-series' }),
  'heat stated outright': () => edited(demoJob(), inEveryDuty({ by: 'heat' })),
  'pump without volts': () => edited(demoJob(), { 'pump.volts': '0 V' }),
  'pump worked out from its feed, load by flow': () =>
    edited(demoJob(), { 'pump.voltsFrom': 'feed', 'feed.shutOffShare': '60 %' }),
  'fans off, still air, hot day': () =>
    edited(demoJob(), {
      'fans.volts': '0 V',
      'site.ambient': '120 °F',
      'duty.traffic.speed': '0 mph',
      'duty.pull.speed': '0 mph',
    }),
  'other cores over a share of the face, behind in the candidate': () =>
    edited(
      edited(demoJob(), { 'airPath.stackShare': '60 %', 'airPath.stackHeat': '4 kW' }),
      { 'airPath.stackPlace': 'behind' },
      'candidate',
    ),
  'front exchanger first in the liquid, charge cooler first in the candidate': () =>
    edited(
      edited(demoJob(), { 'loop.liquidOrder': 'front-first' }),
      { 'loop.liquidOrder': 'cooler-first' },
      'candidate',
    ),
  'flow meter fitted': () => edited(demoJob(), { 'meter.fitted': 'fitted' }),
  'frost, water in the loop': () =>
    edited(demoJob(), { 'coolant.kind': 'water', 'site.ambient': '0 °F' }),
};

/** The chosen duty and the units, put into a job. */
export const shown = (job: Job, duty: string, units: Job['header']['units']): Job =>
  setUnits(edited(job, { 'view.duty': duty }), units);
