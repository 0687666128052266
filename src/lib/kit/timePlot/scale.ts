/** Scales and ticks of time plots. */
import { DOUBT, type TimeCurve, type TimeStretch } from './types';

export interface Scale {
  readonly from: number;
  readonly to: number;
  /** Value to pixel. */
  at(value: number): number;
  /** Pixel to value. */
  back(pixel: number): number;
}

export function scale(from: number, to: number, start: number, end: number): Scale {
  const per = (end - start) / (to - from || 1);
  return {
    from,
    to,
    at: (value) => start + (value - from) * per,
    back: (pixel) => from + (pixel - start) / per,
  };
}

const TIMES = [1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 14400, 28800, 86400];

/** Times worth a tick: whole seconds, minutes, hours; below a second by tenths. */
export function timeTicks({ from, to }: TimeStretch, most: number): number[] {
  const least = (to - from) / Math.max(1, most);
  const step = least < 1 ? niceStep(least) : (TIMES.find((t) => t >= least) ?? TIMES.at(-1)!);
  return multiples(from, to, step);
}

export const valueTicks = (from: number, to: number, most: number): number[] =>
  multiples(from, to, niceStep((to - from) / Math.max(1, most)));

function niceStep(least: number): number {
  const power = 10 ** Math.floor(Math.log10(least));
  return [1, 2, 5, 10].map((n) => n * power).find((step) => step >= least * 0.999) ?? 10 * power;
}

function multiples(from: number, to: number, step: number): number[] {
  if (!(step > 0) || !(to > from)) return [];
  const ticks: number[] = [];
  for (let k = Math.ceil(from / step - 1e-9); k * step <= to + 1e-9 * step; k++)
    ticks.push(Number((k * step).toPrecision(12)));
  return ticks;
}

/** Minutes and seconds, hours before them where there are any; tenths where the view is that close. */
export function clockText(seconds: number, tenths = false): string {
  const unit = tenths ? 10 : 1;
  const whole = Math.round(Math.abs(seconds) * unit);
  const s = Math.floor(whole / unit);
  const [hours, minutes] = [Math.floor(s / 3600), Math.floor(s / 60) % 60];
  const two = (n: number) => String(n).padStart(2, '0');
  const tail = tenths ? `.${whole % 10}` : '';
  const sign = seconds < 0 ? '−' : '';
  return hours > 0
    ? `${sign}${hours}:${two(minutes)}:${two(s % 60)}${tail}`
    : `${sign}${minutes}:${two(s % 60)}${tail}`;
}

/** First place not before `time`. */
function placeOf(t: Float64Array, time: number): number {
  let [low, high] = [0, t.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (t[middle]! < time) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Reading nearest in time; -1 where there is none. */
export function nearestTo({ t }: TimeCurve, time: number): number {
  const after = placeOf(t, time);
  if (after === 0) return t.length > 0 ? 0 : -1;
  if (after === t.length) return after - 1;
  return time - t[after - 1]! <= t[after]! - time ? after - 1 : after;
}

/** Least and greatest of what is in view, with some air. A wild reading does not press the others flat: it is marked at the edge. */
export function extentOf(curves: readonly TimeCurve[], view: TimeStretch): [number, number] {
  let [low, high] = [Infinity, -Infinity];
  for (const { t, x, doubt } of curves) {
    for (let k = placeOf(t, view.from); k < t.length && t[k]! <= view.to; k++) {
      if (doubt && doubt[k]! & (DOUBT.wild | DOUBT.beyond)) continue;
      const value = x[k]!;
      if (value < low) low = value;
      if (value > high) high = value;
    }
  }
  if (!(low <= high)) return [0, 1];
  const air = 0.06 * (high - low) || Math.abs(high) * 0.05 || 1;
  return [low - air, high + air];
}
