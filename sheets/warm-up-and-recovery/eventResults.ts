/** Results of the drive with events. */
import type { Side } from '$lib/job/evaluate';
import type { EventDrive } from '$lib/job/models/toDrive';
import { runningTime } from '$lib/solver/loop/events/formulas';
import type { EventKind } from '$lib/solver/loop/events/types';
import { stateBelow } from '$lib/solver/loop/limits';
import type { Outcome } from '$lib/job/types';
import type { Result } from '../types';

const NOT_FOLLOWED = 'the drive with events cannot be followed';
const NEVER = 'not in this drive';

/** A gap below this is what adding up leaves behind. */
const ROUNDING = 1e-9;

export function eventResults({ limits }: Side, outcome: Outcome<EventDrive>): Result[] {
  const drive = outcome.ok ? outcome.value : null;
  const run = drive?.run;
  const asked = drive?.request;
  const absent = run ? NEVER : NOT_FOLLOWED;
  const first = (kind: EventKind) => run?.events.find((e) => e.kind === kind)?.t ?? null;
  const share = (t_on: number | undefined) =>
    run && run.endTime > 0 ? runningTime.value({ t_on: t_on!, t: run.endTime }) : null;
  const peak = run?.peakCharge?.value ?? null;
  const when = (id: string, name: string, symbol: string, kind: EventKind): Result => ({
    id,
    name,
    symbol,
    value: first(kind),
    absent,
    quantity: 'time',
  });
  return [
    {
      id: 'events-peak-charge',
      name: 'Highest charge air, with what happens on the way',
      symbol: 'T_{3,e}',
      value: peak,
      absent: run ? 'heat is stated outright, so the air is not known' : NOT_FOLLOWED,
      quantity: 'temperature',
      differenceQuantity: 'temperatureDifference',
      better: 'lower',
      ...(peak !== null && { state: stateBelow(peak, limits.charge) }),
    },
    {
      id: 'events-peak-reservoir',
      name: 'Highest reservoir, with what happens on the way',
      symbol: 'T_{t,e}',
      value: run?.peakReservoir.value ?? null,
      absent,
      quantity: 'temperature',
      differenceQuantity: 'temperatureDifference',
      better: 'lower',
      ...(run && { state: stateBelow(run.peakReservoir.value, limits.reservoir) }),
    },
    {
      id: 'breaker-trips',
      name: 'Times the breaker opens',
      symbol: 'n_b',
      value: drive?.request.breaker ? drive.run.trips : null,
      absent: run ? 'no breaker counted' : NOT_FOLLOWED,
      quantity: 'count',
      better: 'lower',
    },
    ...(asked?.breaker
      ? [when('first-trip', 'Breaker opens first after', 't_b', 'breaker-trips')]
      : []),
    ...(asked?.airBound
      ? [when('prime-lost', 'Pump loses its prime after', 't_p', 'prime-lost')]
      : []),
    when('cap-lifts', 'Cap lifts after', 't_{cap}', 'cap-lifts'),
    when('boils-after', 'Liquid boils first after', 't_{boil}', 'boiling-begins'),
    ...(asked?.ice ? [when('ice-gone', 'Ice is gone after', 't_{ice}', 'ice-gone')] : []),
    {
      id: 'flow-share',
      name: 'Share of the drive with flow',
      symbol: 'x_{flow}',
      value: share(run?.flowTime),
      absent,
      quantity: 'percent',
      better: 'higher',
    },
    {
      id: 'fan-share',
      name: 'Share of the drive with fans on',
      symbol: 'x_{fan}',
      value: share(run?.fanTime),
      absent,
      quantity: 'percent',
    },
    {
      id: 'steam-lost',
      name: 'Liquid lost as steam',
      symbol: 'm_v',
      // Without boiling what stands there is rounding.
      value: run ? (first('boiling-begins') === null ? 0 : run.vapourLost) : null,
      absent,
      quantity: 'mass',
      better: 'lower',
    },
    {
      id: 'events-energy-gap',
      name: 'Gap of the heat balance over the drive with events',
      symbol: '\\delta_E',
      // The last digits of a sum differ from one machine to another: no number to be read again.
      value: run && Math.abs(run.ledger.relative) > ROUNDING ? run.ledger.relative : null,
      absent: run ? 'none beyond rounding, less than one part in a billion' : absent,
      quantity: 'ratio',
    },
  ];
}
