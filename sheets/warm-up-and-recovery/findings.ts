/** What the drive means. */
import type { Side } from '$lib/job/evaluate';
import type { ClosedForm } from '$lib/solver/loop/closedForm';
import { pullsBy, reservoirShare, segmentAt } from '$lib/solver/loop/drive';
import { readAt } from '$lib/solver/loop/history';
import type { DutyId, WarmUpSolution } from '$lib/solver/loop/types';
import { q, say, type Finding } from '../types';
import { dutyOf, settledOf } from '../wiring/duty';
import type { Drive } from './study';

const IN_DUTY: Readonly<Record<DutyId, string>> = {
  traffic: 'in traffic',
  cruise: 'at cruise',
  pull: 'in a pull',
};

/** Runs that end early, first and plainly. */
export function endedFindings({ run, schedule }: Drive, { prepared }: Side): Finding[] {
  if (run.status === 'completed' || !prepared.ok) return [];
  const { boilingPoint, freezingPoint, hottest } = prepared.value;
  const where = IN_DUTY[schedule[segmentAt(run, run.endTime)]!.duty];
  if (run.status === 'freezes') {
    return [
      {
        code: 'freezes',
        level: 'act',
        sentence: say`The liquid freezes ${where} after ${q(run.endTime, 'time')} (it freezes at ${q(freezingPoint, 'temperature')}). The rest of the drive cannot be followed.`,
      },
    ];
  }
  return [
    {
      code: 'boils',
      level: 'act',
      sentence:
        hottest < boilingPoint
          ? say`After ${q(run.endTime, 'time')}, ${where}, the liquid passes ${q(hottest, 'temperature')}, the hottest its properties are known for. The rest of the drive cannot be followed; no loop belongs there.`
          : say`After ${q(run.endTime, 'time')}, ${where}, the hottest liquid boils at ${q(boilingPoint, 'temperature')}. The rest of the drive cannot be followed.`,
    },
  ];
}

/** The stopped pump: the tank stays flat while the intake climbs. */
export function standingFinding({ run }: Drive): Finding[] {
  const { flow, reservoir } = run.history;
  if (flow.some((value) => value > 0)) return [];
  const [from, to] = [q(reservoir[0]!, 'temperature'), q(run.end.reservoir, 'temperature')];
  return [
    {
      code: 'no-flow',
      level: 'act',
      sentence: run.peakCharge
        ? say`Nothing circulates. The reservoir goes from ${from} to ${to} with the air around it, while the charge air climbs to ${q(run.peakCharge.value, 'temperature')}. A tank that stays cool under a hot intake means no flow; a hot tank means heat that does not leave. Touch both.`
        : say`Nothing circulates. The reservoir goes from ${from} to ${to} with the air around it and knows nothing of the heat standing in the charge cooler.`,
    },
  ];
}

export function limitFindings({ limits }: Side, { run, schedule }: Drive): Finding[] {
  const limit = q(limits.charge, 'temperature');
  const found: Finding[] = [];
  if (run.timeToLimit !== null) {
    const { duty } = schedule[segmentAt(run, run.timeToLimit)]!;
    const pulls = pullsBy(run, schedule, run.timeToLimit);
    found.push({
      code: 'limit-reached',
      level: duty === 'pull' ? 'watch' : 'act',
      sentence:
        duty === 'pull'
          ? say`The charge air passes its limit of ${limit} after ${q(run.timeToLimit, 'time')}, in pull number ${q(pulls, 'count')}.`
          : say`The charge air passes its limit of ${limit} after ${q(run.timeToLimit, 'time')}, ${IN_DUTY[duty]}: without boost the liquid itself is that hot.`,
    });
  } else if (run.peakCharge && run.status === 'completed') {
    found.push({
      code: 'limit-never',
      level: 'good',
      sentence: say`The charge air stays below its limit of ${limit} through the whole drive; it peaks at ${q(run.peakCharge.value, 'temperature')} after ${q(run.peakCharge.t, 'time')}.`,
    });
  }
  if (run.peakReservoir.value > limits.reservoir) {
    found.push({
      code: 'reservoir-over',
      level: 'watch',
      sentence: say`The reservoir peaks at ${q(run.peakReservoir.value, 'temperature')}, above the ${q(limits.reservoir, 'temperature')} it should not pass.`,
    });
  }
  return found;
}

/** How much of the peak is the liquid's and how much the charge cooler's. */
export function peakFinding({ run, schedule }: Drive): Finding[] {
  const { peakCharge, history } = run;
  if (!peakCharge || !history.flow.some((flow) => flow > 0)) return [];
  if (schedule[segmentAt(run, peakCharge.t)]?.duty !== 'pull' && !endsInPull(run, schedule))
    return [];
  const liquid = readAt(history, 'chargeLiquid', peakCharge.t);
  return [
    {
      code: 'peak-split',
      level: 'info',
      sentence: say`At the peak of ${q(peakCharge.value, 'temperature')} the liquid leaves the charge cooler at ${q(liquid, 'temperature')}. What lies above the liquid is the charge cooler’s part; what the liquid is above ambient is the part of tank and front exchanger.`,
    },
  ];
}

/** A peak at the very edge where a pull ends counts with the pull. */
const endsInPull = ({ peakCharge, segmentStarts }: WarmUpSolution, schedule: Drive['schedule']) =>
  segmentStarts.some((start, i) => start === peakCharge!.t && schedule[i - 1]?.duty === 'pull');

export function recoveryFinding({ limits }: Side, { run, schedule }: Drive): Finding[] {
  const { hardest, recoveryTime } = run;
  if (!hardest || run.status !== 'completed' || !run.history.flow.some((f) => f > 0)) return [];
  const what = schedule[hardest.index]!.duty === 'pull' ? 'pull' : 'segment';
  const band = q(limits.recoveryBand, 'temperatureDifference');
  if (recoveryTime === null) {
    const last = hardest.index === schedule.length - 1;
    return [
      last
        ? {
            code: 'recovery-unseen',
            level: 'info',
            sentence: say`The drive ends with its hardest ${what}; let a milder segment follow it to see the recovery.`,
          }
        : {
            code: 'no-recovery',
            level: 'watch',
            sentence: say`After its hardest ${what} the reservoir is not back within ${band} of ${q(hardest.before, 'temperature')} before the drive ends.`,
          },
    ];
  }
  return [
    recoveryTime === 0
      ? {
          code: 'never-left',
          level: 'good',
          sentence: say`The hardest ${what} never lifts the reservoir by more than ${band}: there is nothing to recover from.`,
        }
      : {
          code: 'recovers',
          level: 'info',
          sentence: say`The hardest ${what} lifts the reservoir from ${q(hardest.before, 'temperature')} to ${q(hardest.peak, 'temperature')}; it is back within ${band} after ${q(recoveryTime, 'time')}.`,
        },
  ];
}

/** What makes it slow, and that it only makes it slow. */
export function delayFinding({ run }: Drive, form: ClosedForm | null): Finding[] {
  if (!form) return [];
  return [
    {
      code: 'volume-sets-delay',
      level: 'info',
      sentence: say`In the duty shown the loop moves with a time constant of ${q(form.tau, 'time')}. The reservoir’s liquid holds ${q(reservoirShare(run.thermalMass), 'percent')} of the heat: more of it makes every change slower, up and down, and moves the ${q(form.T_end, 'temperature')} it settles at by nothing.`,
    },
  ];
}

/** A drive too short to show where the loop would end. */
export function shortFinding(side: Side, { run }: Drive, form: ClosedForm | null): Finding[] {
  const settled = settledOf(side);
  if (!form || settled?.status !== 'balanced' || run.status !== 'completed') return [];
  if (!(run.endTime < form.tau)) return [];
  return [
    {
      code: 'drive-short',
      level: 'watch',
      sentence: say`This drive lasts ${q(run.endTime, 'time')}, less than one time constant. ${IN_DUTY[dutyOf(side)] === 'in a pull' ? 'Held for good the pull' : 'Held for good the duty shown'} would bring the reservoir to ${q(settled.temperatures.reservoir, 'temperature')}; a short run from cold hides a loop that cannot hold its heat.`,
    },
  ];
}
