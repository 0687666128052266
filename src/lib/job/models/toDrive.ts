/** From values to a drive with everything that may happen on it. */
import { InvalidInputError } from '$lib/solver/errors';
import { plugVolts } from '$lib/solver/loop/events/plugVolts';
import { simulate } from '$lib/solver/loop/events/simulate';
import type { EventRequest, EventSolution } from '$lib/solver/loop/events/types';
import type { PreparedLoop } from '$lib/solver/loop/prepare';
import type { WarmUpRequest } from '$lib/solver/loop/types';
import { toFeed } from './toFeed';
import type { Values } from '../values';

/** Cells in each run of hose: a step arrives spread over half its time on the way. */
const CELLS = 4;

/** A drive as asked and as it went; plain data. */
export interface EventDrive {
  readonly request: EventRequest;
  readonly run: EventSolution;
  /** On the pump's plug along the history, V. */
  readonly volts: Float64Array;
}

/** Values a drive depends on besides those that make up the loop. */
const ASKED =
  /^(schedule$|start\.|events\.|feed\.|pump\.voltsFrom|runaway\.(liquidGain|inletShare))/;

/** Those values as plain data: what a drive with events is kept by, beside the loop. */
export const asksOfDrive = (values: Values) =>
  Object.keys(values)
    .filter((path) => ASKED.test(path))
    .map((path) => [path, values[path]!.si, values[path]!.choice, values[path]!.rows] as const);

/** What the drive of a side asks for beyond the plain warm-up. @throws what contradicts itself */
export function toEventRequest(values: Values, plain: WarmUpRequest): EventRequest {
  const si = (path: string) => values[path]!.si!;
  const maybe = (path: string) => values[path]?.si;
  const choice = (path: string) => values[path]!.choice!;
  const { schedule, start } = plain;

  const place = choice('events.breaker');
  const breaker = place === 'none' ? null : toFeed(values).breaker;
  const fans = choice('events.fans');
  const mass = si('events.ice');
  const airAt = maybe('events.airAt');
  const [from, until] = [maybe('events.pumpOffAt'), maybe('events.pumpOnAt')];
  if (from === undefined && until !== undefined) {
    throw new InvalidInputError('events.pumpOnAt', 'the pump is switched on again, but never off');
  }
  const end = schedule.reduce((sum, { duration }) => sum + duration, 0);

  return {
    schedule,
    start,
    ...(breaker && {
      breaker: { breaker: breaker.thermal, place: place === 'outside' ? 'outside' : 'bay' },
    }),
    ...((fans === 'reservoir' || fans === 'frontOut') && {
      thermostat: { sensor: fans, onAt: si('events.fansOn'), offAt: si('events.fansOff') },
    }),
    ...(mass > 0 && { ice: { mass } }),
    ...(choice('events.underhood') === 'on' && {
      underhood: {
        timeConstant: si('events.bayLag'),
        liquidGain: si('runaway.liquidGain'),
        inletShare: si('runaway.inletShare'),
      },
    }),
    ...(choice('events.hoses') === 'followed' && { hoseDelay: { cells: CELLS } }),
    boiling: choice('events.boiling') === 'follow',
    ...(airAt !== undefined && {
      airBound: { at: airAt, restToPrime: si('events.restToPrime') },
    }),
    // Not switched on again: off past the end.
    ...(from !== undefined && { pumpOff: [{ from, until: until ?? Math.max(end, from) + 1 }] }),
  };
}

/** Follow the drive. @throws what cannot be followed */
export function eventDrive(
  values: Values,
  prepared: PreparedLoop,
  plain: WarmUpRequest,
): EventDrive {
  const request = toEventRequest(values, plain);
  const run = simulate(prepared, request);
  return { request, run, volts: plugVolts(prepared, run.history) };
}
