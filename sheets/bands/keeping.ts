/** Bands round the curves of a sheet: worked out on another thread once the plot is looked at. */
import type { Side } from '$lib/job/evaluate';
import {
  driveBandsKey,
  headBandsKey,
  type AmbientBand,
  type DriveBands,
  type HeadBands,
} from '$lib/job/sure/surenessBands';
import { unsurePaths } from '$lib/job/sure/surenessInputs';
import { Keep } from '$lib/keep';
import type { Band, SideName } from '$lib/kit';
import type { BandPoint } from '$lib/solver/uncertainty/band';
import type { Keeping } from '$lib/workers/background.svelte';

/** Both sides, and those of a few edits before. */
const SIDES = 8;

export type BandTask = 'ambientBand' | 'driveBands' | 'headBands';

export interface Bands<K extends BandTask, T> {
  readonly keeping: Keeping<K>;
  /** What is there; null before it is, or where nothing has a ±. */
  of(side: Side | null): T | null;
}

function bands<K extends BandTask, T>(task: K, keyOf: (side: Side) => string): Bands<K, T> {
  const kept = new Keep<T | null>(SIDES);
  return {
    keeping: {
      task,
      keyOf,
      known: (key) => kept.has(key),
      keep: (key, value) => kept.set(key, value as T | null),
    },
    of(side) {
      if (!side) return null;
      const key = keyOf(side);
      return kept.has(key) ? kept.of(key, () => null) : null;
    },
  };
}

export const AMBIENT_BAND = bands<'ambientBand', AmbientBand>('ambientBand', headBandsKey);
export const DRIVE_BANDS = bands<'driveBands', DriveBands>('driveBands', driveBandsKey);
export const HEAD_BANDS = bands<'headBands', HeadBands>('headBands', headBandsKey);

/** Whether any of the sides has a ± at all. */
export const anyUnsure = (sides: readonly Side[]): boolean => unsurePaths(sides).length > 0;

/** Marks of a chart; none where there are no points. */
export const marks = (
  side: SideName,
  ...all: readonly (readonly BandPoint[] | undefined)[]
): readonly Band[] =>
  all.flatMap((points) =>
    points && points.length > 1
      ? [{ side, points: points.map(([x, low, high]) => [x, low, high] as const) }]
      : [],
  );
