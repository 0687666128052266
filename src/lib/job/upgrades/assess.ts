/** What one candidate does, in the numbers a choice is made by. Plain data: it crosses from the other thread. */
import { deratedRating } from '$lib/solver/feed/breaker';
import { readAt } from '$lib/solver/loop/history';
import type { PreparedLoop } from '$lib/solver/loop/prepare';
import { thermalMass } from '$lib/solver/loop/thermalMass';
import type { DutyId, Segment, SteadySolution } from '$lib/solver/loop/types';
import * as plan from '$lib/solver/plan/formulas';
import type { Side } from '../evaluate';
import { toFeed } from '../models/toFeed';
import { problemOf } from '../problem';
import type { Outcome } from '../types';
import { iceIn, icedDrive, type Drive } from './drive';

/** Temperatures a choice may be judged by. */
export type Judge = 'cruise' | 'pull';

export interface Assessed {
  /** Why the loop could not be solved at all; the rest is then null. */
  readonly problem: string | null;
  /** Why its drive could not be followed, where the loop itself can be solved. */
  readonly driveProblem: string | null;
  /** Charge air to the engine, K: settled at cruise; as the last pull of the drive ends; as the segment after it ends. */
  readonly chargeCruise: number | null;
  readonly chargePull: number | null;
  readonly chargeAfter: number | null;
  /** Its hottest of the drive without ice, K: the one that is told of the loop as it stands. */
  readonly chargeHottest: number | null;
  /** Reservoir back after the hardest segment, s. */
  readonly recovery: number | null;
  readonly tankCruise: number | null;
  readonly tankPeak: number | null;
  /** Least over traffic and cruise: m, K, K. */
  readonly suction: number | null;
  readonly boiling: number | null;
  readonly freezing: number | null;
  /** What fuse or breaker holds, and that less what the pump draws, A. */
  readonly holds: number | null;
  readonly feed: number | null;
  readonly flowCruise: number | null;
  readonly pumpVolts: number | null;
  readonly pumpPower: number | null;
  readonly fans: number;
  /** One fan, running, A; null: not stated. */
  readonly fanCurrent: number | null;
  /** In the whole loop, m³, and its density cold, kg/m³. */
  readonly liquidVolume: number | null;
  readonly liquidDensity: number | null;
  /** Ice is put into the tank at the start of its drive. */
  readonly iced: boolean;
  /** Does not settle in traffic or at cruise, or the drive could not be followed to its end. */
  readonly trouble: 'no-flow' | 'boils' | 'freezes' | null;
}

/** The last pull of a schedule, by its place; −1: none. */
export const lastPull = (schedule: readonly Segment[]): number =>
  schedule.findLastIndex(({ duty }) => duty === 'pull');

/** Charge air as the segment at `index` ends, K; null where the run ended before or the air is not known. */
export function chargeAtEndOf(
  run: Drive,
  schedule: readonly Segment[],
  index: number,
): number | null {
  const from = run.segmentStarts[index];
  const segment = schedule[index];
  if (from === undefined || !segment) return null;
  const end = from + segment.duration;
  // The clock of a run of several segments is a sum; a microsecond is no matter.
  if (run.endTime < end - 1e-6) return null;
  return known(readAt(run.history, 'chargeOut', end));
}

/** Duties that last: a pull held for ever is no margin anyone needs. */
const LASTING = ['traffic', 'cruise'] as const satisfies readonly DutyId[];

const known = (value: number | null): number | null =>
  value !== null && Number.isFinite(value) ? value : null;

/** What is read of a side: a drawn loop has no more than this. */
export interface Assessable extends Pick<
  Side,
  'prepared' | 'request' | 'warmUp' | 'loop' | 'values'
> {
  readonly steady: Pick<Side['steady'], 'traffic' | 'cruise'>;
}

/** Work it out for one side. Never throws: what cannot be solved is null. */
export function assess(side: Assessable): Assessed {
  const { prepared, steady, request, loop, values, warmUp } = side;
  const ready = prepared.ok ? prepared.value : null;
  const settled = LASTING.flatMap((duty) => {
    const outcome = steady[duty];
    return outcome.ok ? [outcome.value] : [];
  });
  const cruise = steady.cruise.ok ? steady.cruise.value : null;
  const drive = driveIn(side);
  const run = drive.ok ? drive.value : null;
  const schedule = request.ok ? request.value.schedule : [];
  const pull = lastPull(schedule);
  const least = (of: (s: SteadySolution) => number) =>
    settled.length > 0 ? Math.min(...settled.map(of)) : null;
  const pump = ready && ready.hydraulics.pump;
  const fanCurrent = values['fans.current']?.si;
  return {
    problem: prepared.ok ? null : prepared.problem.message,
    driveProblem: prepared.ok && !drive.ok ? drive.problem.message : null,
    chargeCruise: known(cruise && cruise.chargeOut),
    chargePull: run && chargeAtEndOf(run, schedule, pull),
    chargeAfter: run && pull >= 0 ? chargeAtEndOf(run, schedule, pull + 1) : null,
    chargeHottest: known((warmUp.ok && warmUp.value.peakCharge?.value) || null),
    recovery: run && run.recoveryTime,
    tankCruise: cruise && cruise.temperatures.reservoir,
    tankPeak: run && run.peakReservoir.value,
    suction: least(({ margins }) => margins.suction),
    boiling: least(({ margins }) => margins.boiling),
    freezing: least(({ margins }) => margins.freezing),
    ...feedMargin(side, ready),
    flowCruise: cruise && cruise.operating.flow,
    pumpVolts: pump && pump.volts,
    pumpPower: pump && pump.electricPower,
    fans: loop.fans.volts > 0 ? loop.fans.count : 0,
    fanCurrent: fanCurrent ?? null,
    liquidVolume: ready && thermalMass(ready).reduce((sum, part) => sum + part.liquidVolume, 0),
    // As filled: at ambient temperature.
    liquidDensity: ready && ready.liquidAt(loop.site.ambientTemperature).rho,
    iced: iceIn(values) > 0,
    trouble: troubleOf(settled, run),
  };
}

/** The drive it is judged by. */
function driveIn({
  prepared,
  request,
  warmUp,
  values,
}: Pick<Assessable, 'prepared' | 'request' | 'warmUp' | 'values'>): Outcome<Drive> {
  const ice = iceIn(values);
  if (!(ice > 0) || !prepared.ok || !request.ok) return warmUp;
  try {
    return { ok: true, value: icedDrive(prepared.value, request.value, ice) };
  } catch (thrown) {
    return { ok: false, problem: problemOf(thrown, 'SI') };
  }
}

/** Nulls where the pump stands still. */
function feedMargin(
  { values }: Assessable,
  ready: PreparedLoop | null,
): Pick<Assessed, 'holds' | 'feed'> {
  const pump = ready && ready.hydraulics.pump;
  if (!pump || !(pump.volts > 0) || !(pump.speedRatio > 0)) return { holds: null, feed: null };
  const { circuit, breaker } = toFeed(values);
  const holds = breaker
    ? deratedRating(breaker.thermal, breaker.ambient)
    : circuit.protection.rating;
  return { holds, feed: holds - pump.electricPower / pump.volts };
}

function troubleOf(settled: readonly SteadySolution[], run: Drive | null): Assessed['trouble'] {
  for (const status of ['no-flow', 'boils', 'freezes'] as const) {
    if (settled.some((s) => s.status === status)) return status;
  }
  return run && run.status !== 'completed' ? run.status : null;
}

/** Current of the pump, A; null where it stands still. */
export const pumpCurrentOf = ({ pumpPower: P, pumpVolts: U }: Assessed): number | null =>
  P === null || U === null || !(U > 0) ? null : plan.pumpCurrent.value({ P, U });

/** Pump and fans, A; null where one of them is not known. */
export function currentOf(is: Assessed): number | null {
  const I_p = pumpCurrentOf(is);
  const { fans: N, fanCurrent: I_f } = is;
  if (I_p === null || (N > 0 && I_f === null)) return null;
  return plan.currentTogether.value({ I_p, N, I_f: I_f ?? 0 });
}

/** The temperature a choice is judged by, without the rest. */
export function judgedOf(side: Side, judge: Judge): number | null {
  const { steady, request } = side;
  if (judge === 'cruise') return steady.cruise.ok ? known(steady.cruise.value.chargeOut) : null;
  const drive = driveIn(side);
  if (!drive.ok || !request.ok) return null;
  const { schedule } = request.value;
  return chargeAtEndOf(drive.value, schedule, lastPull(schedule));
}

/** The same of what was worked out. */
export const judged = (judge: Judge, a: Assessed): number | null =>
  judge === 'cruise' ? a.chargeCruise : a.chargePull;
