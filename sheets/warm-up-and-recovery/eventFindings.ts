/** What happens on the way, and what it does. */
import type { Side } from '$lib/job/evaluate';
import type { EventDrive } from '$lib/job/models/toDrive';
import type { Outcome } from '$lib/job/types';
import { runningTime } from '$lib/solver/loop/events/formulas';
import { eventValueAt, happenings } from '$lib/solver/loop/events/plots';
import type { EventKind } from '$lib/solver/loop/events/types';
import { q, say, type Finding, type FindingLevel, type Sentence } from '../types';
import type { Drive } from './study';

export function eventFindings(
  { limits, loop }: Side,
  plain: Drive,
  outcome: Outcome<EventDrive>,
): Finding[] {
  if (!outcome.ok) {
    return [
      {
        code: 'events-refused',
        level: 'act',
        sentence: say`What may happen on the way cannot be followed: ${outcome.problem.message} The plain drive above still holds.`,
      },
    ];
  }
  const { run, request } = outcome.value;
  const first = (kind: EventKind) => run.events.find((e) => e.kind === kind);
  const found: Finding[] = [];
  const add = (code: string, level: FindingLevel, sentence: Sentence) =>
    found.push({ code, level, sentence });

  const trip = first('breaker-trips');
  if (trip) {
    const share = runningTime.value({ t_on: run.flowTime, t: run.endTime });
    add(
      'events-trips',
      'act',
      say`The breaker opens after ${q(trip.t, 'time')} and ${q(run.trips, 'count')} times in all; liquid moves for ${q(share, 'percent')} of the drive. While it is open the tank stays flat and the charge air climbs: that is not a hot tank, and a larger exchanger changes nothing.`,
    );
  } else if (request.breaker) {
    const most = run.history.breakerState.reduce((a, b) => Math.max(a, b), 0);
    add(
      'events-breaker-holds',
      'good',
      say`The breaker holds through the drive: it comes to ${q(most, 'percent')} of the heat that opens it.`,
    );
  }
  const lost = first('prime-lost');
  const primed = run.events.find((e) => e.kind === 'pump-primed' && e.t >= (lost?.t ?? 0));
  if (lost && first('pump-primed')) {
    add(
      'events-prime',
      'act',
      say`The pump draws air after ${q(lost.t, 'time')} and moves nothing until it has been switched off and has stood; it has lost it at ${q(primed!.t, 'time')}. A pump that is left turning keeps its air.`,
    );
  } else if (lost) {
    add(
      'events-prime',
      'act',
      say`The pump draws air after ${q(lost.t, 'time')} and is never given the rest it needs to lose it: nothing moves for the rest of the drive, at full volts. Switch it off, wait, switch it on.`,
    );
  }
  const boils = first('boiling-begins');
  if (boils) {
    add(
      'events-boil',
      'act',
      say`The liquid boils from ${q(boils.t, 'time')} on, at ${q(boils.value, 'temperature')}; ${q(run.vapourLost, 'mass')} leave as steam. Stop the heat first, and leave the cap alone.`,
    );
  }
  if (run.status === 'boiled-dry') {
    add(
      'events-dry',
      'act',
      say`After ${q(run.endTime, 'time')} a tenth of the tank’s liquid is left and the pump draws air; the drive cannot be followed further.`,
    );
  } else if (run.status === 'freezes' || run.status === 'boils') {
    add(
      'events-ended',
      'act',
      say`With what happens on the way the liquid ${run.status} after ${q(run.endTime, 'time')}; the drive cannot be followed further.`,
    );
  }
  const cap = first('cap-lifts');
  if (cap) {
    add(
      'events-cap',
      'watch',
      say`The cap lifts after ${q(cap.t, 'time')}, at ${q(cap.value, 'gaugePressure')}: air and then liquid leave, and when the loop cools its pressure falls below what it was.`,
    );
  }
  if (request.ice) found.push(...iceFinding(outcome.value));
  if (request.thermostat && run.endTime > 0) {
    const share = runningTime.value({ t_on: run.fanTime, t: run.endTime });
    add(
      'events-fans',
      'info',
      say`The thermostat lets the fans run for ${q(share, 'percent')} of the drive. Between ${q(request.thermostat.offAt, 'temperature')} and ${q(request.thermostat.onAt, 'temperature')} they do what they did last.`,
    );
  }
  found.push(...shortCircuit(loop.reservoir.shortCircuit, outcome.value));
  found.push(...shift(limits.charge, plain, outcome.value));
  return found;
}

/** From here on a short circuit is worth a sentence. */
const SHORT = 0.2;

/** At the peak: what the pump draws beside what the tank reads. */
function shortCircuit(share: number, { run }: EventDrive): Finding[] {
  const { peakCharge, history } = run;
  if (!peakCharge || share < SHORT || !(run.flowTime > 0)) return [];
  const [drawn, tank] = (['pumpIn', 'reservoir'] as const).map((column) =>
    q(eventValueAt(history, column, peakCharge.t), 'temperature'),
  );
  return [
    {
      code: 'events-short-circuit',
      level: 'watch',
      sentence: say`${q(share, 'percent')} of the return go straight to the tank’s outlet: at the charge air’s peak the pump draws ${drawn!} while the tank stands at ${tank!}. That liquid never meets the tank, which soaks as if it were smaller.`,
    },
  ];
}

function iceFinding({ request, run }: EventDrive): Finding[] {
  const put = q(request.ice!.mass, 'mass');
  const start = run.history.iceMass[0]!;
  const gone = run.events.find((e) => e.kind === 'ice-gone');
  const sentence =
    start === 0
      ? say`The ${put} of ice melt as they go in and bring the tank to ${q(run.history.reservoir[0]!, 'temperature')}; none is left when the drive begins.`
      : gone
        ? say`Of the ${put} of ice ${q(start, 'mass')} are left when the drive begins; they hold the tank at its melting point for ${q(gone.t, 'time')}. After that it warms like any other.`
        : say`Of the ${put} of ice ${q(run.iceLeft, 'mass')} are left at the end: the tank never leaves the melting point.`;
  return [{ code: 'events-ice', level: 'info', sentence }];
}

/** What all of it does to the peak, or that nothing happens. */
function shift(limit: number, plain: Drive, { run }: EventDrive): Finding[] {
  const [before, after] = [plain.run.peakCharge?.value, run.peakCharge?.value];
  if (happenings(run).length === 0) {
    return [
      {
        code: 'events-none',
        level: 'good',
        sentence: say`Nothing switches, melts, boils or fails on this drive as described.`,
      },
    ];
  }
  if (before === undefined || after === undefined) return [];
  return [
    {
      code: 'events-shift',
      level: after > limit && !(before > limit) ? 'act' : 'info',
      sentence: say`With what happens on the way the charge air peaks at ${q(after, 'temperature')}, against ${q(before, 'temperature')} on the plain drive.`,
    },
  ];
}
