/** A curve as the text of an SVG path. */
import type { Scale } from './scale';
import { DOUBT, type TimeCurve } from './types';

/** Line through the readings, parted at gaps; whole tenths of a pixel are close enough. */
export function linePath({ t, x }: TimeCurve, sx: Scale, sy: (value: number) => number): string {
  let text = '';
  let pen = 'M';
  for (let k = 0; k < t.length; k++) {
    if (Number.isNaN(x[k]!)) {
      pen = 'M';
      continue;
    }
    text += `${pen}${Math.round(10 * sx.at(t[k]!)) / 10},${Math.round(10 * sy(x[k]!)) / 10}`;
    pen = 'L';
  }
  return text;
}

/** Crosses at doubtful readings; one off the plot stands at its edge. */
export function crossPath(
  { t, x, doubt }: TimeCurve,
  sx: Scale,
  sy: (value: number) => number,
  [top, bottom]: readonly [number, number],
): string {
  if (!doubt) return '';
  let text = '';
  const arm = 4;
  for (let k = 0; k < t.length; k++) {
    if (!(doubt[k]! & (DOUBT.wild | DOUBT.beyond)) || t[k]! < sx.from || t[k]! > sx.to) continue;
    const px = sx.at(t[k]!);
    const py = Math.min(Math.max(sy(x[k]!), top + arm), bottom - arm);
    text += `M${px - arm},${py - arm}l${2 * arm},${2 * arm}M${px - arm},${py + arm}l${2 * arm},${-2 * arm}`;
  }
  return text;
}

/** The parts of a line that stand still. */
export function stillPath(
  { t, x, doubt }: TimeCurve,
  sx: Scale,
  sy: (value: number) => number,
): string {
  if (!doubt) return '';
  let text = '';
  let pen = 'M';
  for (let k = 0; k < t.length; k++) {
    if (!(doubt[k]! & DOUBT.still)) {
      pen = 'M';
      continue;
    }
    text += `${pen}${sx.at(t[k]!).toFixed(1)},${sy(x[k]!).toFixed(1)}`;
    pen = 'L';
  }
  return text;
}
