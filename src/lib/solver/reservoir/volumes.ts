/** The same loop with another amount of liquid in its reservoir, settled and followed in time. */
import { prepared as prepare, type PreparedLoop } from '../loop/prepare';
import { steady } from '../loop/steady';
import { restoring } from '../loop/timeScale';
import { totalCapacity, thermalMass } from '../loop/thermalMass';
import type { DutyId, Loop, SteadySolution, WarmUpSolution } from '../loop/types';
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
 * Settle a loop and follow it in time with `factor` times its liquid.
 * @param largest - largest factor it will be compared with: sets how long the runs are, s
 * @throws what {@link steady} and {@link warmUp} throw
 */
export function volumeRun(
  loop: Loop | PreparedLoop,
  question: VolumeQuestion,
  factor: number,
  largest: number,
): VolumeRun {
  const changed = withVolume(loop, factor);
  const { duty, around, pullTime, recoveryBand, chargeLimit } = question;
  const settled = steady(changed, duty);
  const before = around === duty ? settled : steady(changed, around);
  const asked = { recoveryBand, chargeLimit };
  const present = prepare(loop);
  const start = settledState(changed, around);
  const pull = warmUp(changed, {
    ...asked,
    start,
    schedule: [
      { duty: 'pull', duration: pullTime },
      { duty: around, duration: settlingTime(present, before, largest) },
    ],
  });
  return {
    factor,
    volume: changed.loop.reservoir.liquidVolume,
    settled,
    held: warmUp(changed, {
      ...asked,
      start: coldState(changed),
      schedule: [{ duty, duration: settlingTime(present, settled, largest) }],
    }),
    pull,
    rise: pull.peakReservoir.value - start.reservoir,
  };
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
