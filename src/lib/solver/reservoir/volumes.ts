/** The same loop with another amount of liquid in its reservoir, followed in time. */
import { once } from '$lib/once';
import { forcingOf } from '../loop/forcing';
import { reservoirPoints } from '../loop/history';
import { prepared as prepare, type PreparedLoop } from '../loop/prepare';
import { restoring } from '../loop/timeScale';
import { totalCapacity, thermalMass } from '../loop/thermalMass';
import type { Loop, Segment, SteadySolution, TransientState, WarmUpSolution } from '../loop/types';
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
  /** Settled in the duty that is held from cold. Volume stands in no balance: one solution serves all. */
  readonly settled: SteadySolution;
  /** Settled before the pull, in the duty driven after it as well. */
  readonly before: SteadySolution;
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
  /** Heat capacity over heat given up per kelvin, after the pull, s; null where nothing brings the loop back. */
  readonly timeConstant: number | null;
  /** From cold at ambient, the duty held; worked out when first asked for. */
  held(): WarmUpSolution;
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

/** Of a history drawn a hand wide: one every few pixels. */
const POINTS = 240;

/** Time constants of a loop round a solution, for any volume: capacity follows it, the way back does not. */
function timeConstants(present: PreparedLoop, { duty, liquid }: SteadySolution) {
  const parts = Object.values(restoring(present, duty, liquid.temperature) ?? {}) as number[];
  const G = parts.reduce((sum, part) => sum + part, 0);
  return (changed: PreparedLoop): number | null =>
    G > 0 ? totalCapacity(thermalMass(changed, liquid.temperature)) / G : null;
}

/**
 * Time after which 63 % of a change is done, with `factor` times the liquid in the reservoir, s; null
 * where nothing brings the loop back.
 */
export function timeConstantWith(
  loop: Loop | PreparedLoop,
  solution: SteadySolution,
  factor: number,
): number | null {
  const present = prepare(loop);
  return timeConstants(present, solution)(withVolume(present, factor));
}

const longEnough = (timeConstant: number | null) =>
  Math.min(Math.max(SETTLED_AFTER * (timeConstant ?? 0), RUN[0]), RUN[1]);

/** How long a loop of `factor` times its liquid is followed, s: back after a pull, and from cold. */
export function runLengths(
  present: PreparedLoop,
  { settled, before }: Pick<VolumeQuestion, 'settled' | 'before'>,
  factor: number,
): { back(): number; hold(): number } {
  const changed = withVolume(present, factor);
  return {
    back: once(() => longEnough(timeConstants(present, before)(changed))),
    hold: once(() => longEnough(timeConstants(present, settled)(changed))),
  };
}

/**
 * Follow a loop in time with each factor times its liquid. All runs are as long as the largest needs to
 * settle. What the volume cannot change (solutions, what drives the loop, where it starts) is shared.
 * @throws what {@link warmUp} throws
 */
export function volumeRuns(
  loop: Loop | PreparedLoop,
  { settled, before, pullTime, recoveryBand, chargeLimit }: VolumeQuestion,
  factors: readonly number[],
): VolumeRun[] {
  const present = prepare(loop);
  const lengths = runLengths(present, { settled, before }, Math.max(...factors));
  const forcing = forcingOf(present);
  const ofPull = timeConstants(present, before);
  const back = lengths.back();
  const start = settledState(present, before.duty, before);
  return factors.map((factor) => {
    const changed = withVolume(present, factor);
    const follow = (from: TransientState, schedule: readonly Segment[]) =>
      warmUp(
        changed,
        { recoveryBand, chargeLimit, start: from, schedule, points: POINTS },
        forcing,
      );
    const pull = follow(start, [
      { duty: 'pull', duration: pullTime },
      { duty: before.duty, duration: back },
    ]);
    return {
      factor,
      volume: changed.loop.reservoir.liquidVolume,
      settled,
      timeConstant: ofPull(changed),
      held: once(() =>
        follow(coldState(changed), [{ duty: settled.duty, duration: lengths.hold() }]),
      ),
      pull,
      rise: pull.peakReservoir.value - start.reservoir,
      telling: pullTime + back / 2,
    };
  });
}

/** How far the reservoir stands above where it was before the pull: points (s, K) up to `until`. */
export function risesOf(
  history: WarmUpSolution['history'],
  until: number,
): (readonly [number, number])[] {
  const before = history.reservoir[0]!;
  return reservoirPoints(history)
    .filter(([t]) => t <= until)
    .map(([t, T]) => [t, T - before]);
}

/** {@link risesOf} the telling part of a run. */
export const pullRise = ({ pull: { history }, telling }: VolumeRun) => risesOf(history, telling);

/**
 * Where a run has made `share` of its way from start to settled: time and temperature of the
 * reservoir; null where it never does.
 */
export function partWay(
  { held, settled }: VolumeRun,
  share: number,
): readonly [t: number, T: number] | null {
  const { history } = held();
  const start = history.reservoir[0]!;
  const way = settled.temperatures.reservoir - start;
  const i = history.reservoir.findIndex((T) => (T - start) / way >= share);
  return i < 0 ? null : [history.t[i]!, history.reservoir[i]!];
}
