/** When a channel began to change, and how surely that is known. */
import { placeFits } from './shapes';

export interface Onset {
  /** Middle of what follows, s. */
  readonly at: number;
  /** The change began within, with 95 % confidence; never narrower than the rows either side. */
  readonly earliest: number;
  readonly latest: number;
  /** Level before, and at the end of the stretch looked at. */
  readonly before: number;
  readonly after: number;
  /** Mean square that the fit leaves over that of the noise. */
  readonly misfit: number;
}

/** Rise of χ² with one parameter that leaves 95 % (from any table). */
const CHI2_95 = 3.841;
/** Fewest readings on either side of an onset. */
const LEAST = 4;
/** Parameters of the model: level, size, place, pace. */
const PARAMETERS = 4;
/** Share of the stretch over which the level after is taken. */
const END = 0.1;
/** Share of the change to which no shape is known better (common practice, no source). */
const SHAPE = 0.005;

/**
 * A level, then a change of whatever pace, from a step to a ramp: least squares over every place it could
 * begin. Where the fit lies within χ² of the best it may have begun. What the model misses counts as noise.
 *
 * @param t - times of the readings, rising; @param x - readings, no gaps
 * @param noise - standard deviation of a reading
 * @returns null where there are too few readings, or no level was seen before the change
 */
export function onset(t: ArrayLike<number>, x: ArrayLike<number>, noise: number): Onset | null {
  const n = t.length;
  if (n < 2 * LEAST + PARAMETERS) return null;
  const { at, errors, levels } = placeFits(t, x, LEAST);
  let best = 0;
  for (let k = 1; k < at.length; k++) if (errors[k]! < errors[best]!) best = k;
  const variance = Math.max(noise * noise, errors[best]! / (n - PARAMETERS));
  const after = mean(x, n - Math.max(LEAST, Math.round(END * n)), n);
  const unknown = n * (SHAPE * (after - levels[best]!)) ** 2;
  const limit = errors[best]! + CHI2_95 * variance + unknown;
  let first = best;
  let last = best;
  for (let k = 0; k < at.length; k++) {
    if (errors[k]! > limit) continue;
    first = Math.min(first, k);
    last = Math.max(last, k);
  }
  if (first === 0) return null;
  const earliest = rowTime(t, at[first]!, false);
  const latest = rowTime(t, at[last]!, true);
  return {
    at: 0.5 * (earliest + latest),
    earliest,
    latest,
    before: levels[best]!,
    misfit: errors[best]! / (n - PARAMETERS) / (noise * noise),
    after,
  };
}

/** Last row at or before a time, or first after it. */
function rowTime(t: ArrayLike<number>, time: number, after: boolean): number {
  let k = 0;
  while (k < t.length - 1 && t[k + 1]! <= time) k++;
  return t[after ? Math.min(t.length - 1, k + 1) : k]!;
}

function mean(x: ArrayLike<number>, from: number, to: number): number {
  let sum = 0;
  for (let i = from; i < to; i++) sum += x[i]!;
  return sum / (to - from);
}
