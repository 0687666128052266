/** The same loop with another amount of liquid in its reservoir, settled and followed in time. */
import { forcingOf, type Forcings } from '../loop/forcing';
import { reservoirPoints } from '../loop/history';
import { prepared as prepare, type PreparedLoop } from '../loop/prepare';
import { steady } from '../loop/steady';
import { restoring } from '../loop/timeScale';
import { totalCapacity, thermalMass } from '../loop/thermalMass';
import type {
  DutyId,
  Loop,
  Segment,
  SteadySolution,
  TransientState,
  WarmUpSolution,
} from '../loop/types';
import { coldState, settledState, warmUp } from '../loop/warmUp';

/**
 * The loop with `factor` times the liquid in its reservoir, the air space kept. Liquid volume enters
 * nothing that was prepared, only the heat capacities of the transient, so the rest is shared.
 */
export function withVolume(loop: Loop | PreparedLoop, factor: number): PreparedLoop {
  const prepared = prepare(loop);
  const { reservoir } = prepared.loop;
  const liquidVolume = factor * reservoir.liquidVolume;
  const totalVolume = reservoir.totalVolume + liquidVolume - reservoir.liquidVolume;
  return {
    ...prepared,
    loop: { ...prepared.loop, reservoir: { ...reservoir, liquidVolume, totalVolume } },
  };
}

/** What is asked of each volume. */
export interface VolumeQuestion {
  /** Held from cold until it settles. */
  readonly duty: DutyId;
  /** Settled in before the pull and driven after it. */
  readonly around: DutyId;
  /** s */
  readonly pullTime: number;
  /** K */
  readonly recoveryBand: number;
  readonly chargeLimit: number;
}

export interface VolumeRun {
  /** Liquid in the reservoir over the present amount. */
  readonly factor: number;
  /** m³ */
  readonly volume: number;
  readonly settled: SteadySolution;
  /** From cold at ambient, the duty held. */
  readonly held: WarmUpSolution;
  /** One pull out of the settled state, then the milder duty; its recovery time counts from the pull's end. */
  readonly pull: WarmUpSolution;
  /** Highest rise of the reservoir in the pull and after it, K. */
  readonly rise: number;
  /** Part of the pull's run worth drawing, s: half of the way back; the rest is flat. */
  readonly telling: number;
}

/** Time constants until what is left of a change is less than a plot shows (e^-5 = 0.7 %). */
const SETTLED_AFTER = 5;
/** Shortest and longest run, s; the shortest also where the liquid stands still. */
const RUN = [120, 28800] as const;

/** Time over which volumes are compared: the slowest of them settles in it. */
export function settlingTime(
  loop: PreparedLoop,
  { duty, liquid }: SteadySolution,
  largest: number,
): number {
  const C = totalCapacity(thermalMass(withVolume(loop, largest), liquid.temperature));
  const G = Object.values(restoring(loop, duty, liquid.temperature) ?? {}) as number[];
  const sum = G.reduce((total, part) => total + part, 0);
  const time = sum > 0 ? (SETTLED_AFTER * C) / sum : 0;
  return Math.min(Math.max(time, RUN[0]), RUN[1]);
}

/**
 * Settle a loop and follow it in time with each factor times its liquid. All runs are as long as the
 * largest needs to settle.
 * @throws what {@link steady} and {@link warmUp} throw
 */
export function volumeRuns(
  loop: Loop | PreparedLoop,
  question: VolumeQuestion,
  factors: readonly number[],
): VolumeRun[] {
  const present = prepare(loop);
  const largest = Math.max(...factors);
  // The volume stands in nothing that drives the loop, so the runs share it.
  const forcing = forcingOf(present);
  return factors.map((factor) => volumeRun(present, question, { factor, largest, forcing }));
}

function volumeRun(
  present: PreparedLoop,
  { duty, around, pullTime, recoveryBand, chargeLimit }: VolumeQuestion,
  { factor, largest, forcing }: { factor: number; largest: number; forcing: Forcings },
): VolumeRun {
  const changed = withVolume(present, factor);
  const settled = steady(changed, duty);
  const before = around === duty ? settled : steady(changed, around);
  const follow = (start: TransientState, schedule: readonly Segment[]) =>
    warmUp(changed, { recoveryBand, chargeLimit, start, schedule }, forcing);
  const start = settledState(changed, around);
  const back = settlingTime(present, before, largest);
  const pull = follow(start, [
    { duty: 'pull', duration: pullTime },
    { duty: around, duration: back },
  ]);
  return {
    factor,
    volume: changed.loop.reservoir.liquidVolume,
    settled,
    held: follow(coldState(changed), [{ duty, duration: settlingTime(present, settled, largest) }]),
    pull,
    rise: pull.peakReservoir.value - start.reservoir,
    telling: pullTime + back / 2,
  };
}

/** How far the reservoir stands above where it was before the pull: points (s, K) of the telling part. */
export function pullRise({ pull: { history }, telling }: VolumeRun): (readonly [number, number])[] {
  const before = history.reservoir[0]!;
  return reservoirPoints(history)
    .filter(([t]) => t <= telling)
    .map(([t, T]) => [t, T - before]);
}

/**
 * Where a run has made `share` of its way from start to settled: time and temperature of the
 * reservoir; null where it never does.
 */
export function partWay(
  { held: { history }, settled }: VolumeRun,
  share: number,
): readonly [t: number, T: number] | null {
  const start = history.reservoir[0]!;
  const way = settled.temperatures.reservoir - start;
  const i = history.reservoir.findIndex((T) => (T - start) / way >= share);
  return i < 0 ? null : [history.t[i]!, history.reservoir[i]!];
}
