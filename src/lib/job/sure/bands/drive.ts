/** Warm-up and recovery: the drive in time, what holds the heat; the same with events on the way. */
import { storedByPart } from '$lib/solver/loop/drive';
import { eventPoints } from '$lib/solver/loop/events/plots';
import { points } from '$lib/solver/loop/history';
import { warmUp } from '$lib/solver/loop/warmUp';
import type { Points } from '$lib/solver/numerics/polyline';
import { asksOfDrive, eventDrive } from '../../models/toDrive';
import { toSchedule, toStart } from '../../models/toLoop';
import type { Side } from '../../evaluate';
import { curveSet, DRAWN_SLOW, type Curves } from './bandSource';

/** Points a drive is followed by, besides its edges. */
const DRIVE_POINTS = 150;
/** Places along it. */
const PLACES = 121;
/** Loops followed with their events: each takes many times a plain drive. */
const WITH_EVENTS = 48;

export const DRIVE = curveSet({
  name: 'drive',
  draws: DRAWN_SLOW,
  places: PLACES,
  follows: ({ values }) => [toSchedule(values), toStart(values)],
  curves({ prepared, request }): Curves {
    if (!prepared.ok || !request.ok) return {};
    const run = warmUp(prepared.value, { ...request.value, points: DRIVE_POINTS });
    const column = (name: 'reservoir' | 'chargeOut' | 'heatIn' | 'heatOut') =>
      points(run.history, name);
    const stored = storedByPart(prepared.value, request.value.start, run.end);
    return {
      reservoir: column('reservoir'),
      chargeOut: column('chargeOut'),
      heatIn: column('heatIn'),
      heatOut: column('heatOut'),
      ...Object.fromEntries(
        run.thermalMass.map(({ part, capacity }) => [`mass ${part}`, capacity]),
      ),
      ...Object.fromEntries(stored.map(({ node, heat }) => [`stored ${node}`, heat])),
    };
  },
});

export const EVENTS = curveSet({
  name: 'events',
  places: 81,
  draws: WITH_EVENTS,
  follows: ({ values }) => asksOfDrive(values),
  curves({ prepared, request, values }: Side): Curves {
    if (!prepared.ok || !request.ok) return {};
    const { run, volts, request: asked } = eventDrive(values, prepared.value, request.value);
    const column = (name: 'reservoir' | 'chargeOut' | 'flow' | 'iceMass'): Points =>
      eventPoints(run.history, name);
    return {
      reservoir: column('reservoir'),
      chargeOut: column('chargeOut'),
      flow: column('flow'),
      volts: Array.from(run.history.t, (t, i) => [t, volts[i]!] as const),
      ...(asked.ice && { ice: column('iceMass') }),
    };
  },
});
