/** Results of the drive. */
import type { Side } from '$lib/job/evaluate';
import type { ClosedForm } from '$lib/solver/loop/closedForm';
import { pullsBy } from '$lib/solver/loop/drive';
import { stateBelow } from '$lib/solver/loop/limits';
import type { Result } from '../types';
import type { Drive } from './study';

const NO_AIR = 'heat is stated outright, so the air is not known';
const NEVER = 'not in this drive';

export function driveResults({ limits }: Side, drive: Drive, form: ClosedForm | null): Result[] {
  const { run, schedule } = drive;
  const { peakCharge, peakReservoir, timeToLimit, recoveryTime, hardest } = run;
  const temperature = {
    quantity: 'temperature',
    differenceQuantity: 'temperatureDifference',
    better: 'lower',
  } as const;
  return [
    {
      ...temperature,
      id: 'peak-charge',
      name: 'Highest charge air',
      symbol: 'T_{3,max}',
      value: peakCharge?.value ?? null,
      absent: NO_AIR,
      ...(peakCharge && { state: stateBelow(peakCharge.value, limits.charge) }),
    },
    {
      ...temperature,
      id: 'peak-reservoir',
      name: 'Highest reservoir',
      symbol: 'T_{t,max}',
      value: peakReservoir.value,
      state: stateBelow(peakReservoir.value, limits.reservoir),
    },
    {
      id: 'time-to-limit',
      name: 'Charge air reaches its limit after',
      symbol: 't_{lim}',
      value: timeToLimit,
      absent: peakCharge ? NEVER : NO_AIR,
      quantity: 'time',
      better: 'higher',
    },
    {
      id: 'pulls-to-limit',
      name: 'Pulls begun when the limit is reached',
      symbol: 'n_{lim}',
      value: timeToLimit === null ? null : pullsBy(run, schedule, timeToLimit),
      absent: peakCharge ? NEVER : NO_AIR,
      quantity: 'count',
      better: 'higher',
    },
    {
      id: 'reservoir-before',
      name: 'Reservoir before the hardest segment',
      symbol: 'T_{t,0}',
      value: hardest?.before ?? null,
      absent: 'no time passed',
      quantity: 'temperature',
      differenceQuantity: 'temperatureDifference',
    },
    {
      id: 'recovery-time',
      name: 'Recovery after the hardest segment',
      symbol: 't_{rec}',
      value: recoveryTime,
      absent: 'not back within this drive',
      quantity: 'time',
      better: 'lower',
    },
    {
      ...temperature,
      id: 'end-reservoir',
      name: 'Reservoir at the end',
      symbol: 'T_{t,1}',
      value: run.end.reservoir,
    },
    {
      id: 'time-constant',
      name: 'Time constant of the duty shown',
      symbol: '\\tau',
      value: form?.tau ?? null,
      absent: 'no balance in this duty',
      quantity: 'time',
    },
    { id: 'heat-in', name: 'Heat in', symbol: 'E_{in}', value: run.heatIn, quantity: 'energy' },
    {
      id: 'heat-out',
      name: 'Heat out at the front exchanger',
      symbol: 'E_{out}',
      value: run.heatOut,
      quantity: 'energy',
    },
  ];
}
