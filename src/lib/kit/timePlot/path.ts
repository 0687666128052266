/** A curve as the text of SVG paths. */
import type { Scale } from './scale';
import { DOUBT, type TimeCurve } from './types';

type Height = (value: number) => number;

/** Whole tenths of a pixel are close enough. */
const px = (x: number) => Math.round(10 * x) / 10;

export interface Drawn {
  /** To be stroked: from reading to reading where they stand apart. */
  readonly line: string;
  /**
   * To be filled: where several readings share a column of pixels. It covers what a line through them
   * would; a stroke that doubles back on itself takes some twenty times as long to be drawn.
   */
  readonly band: string;
}

/** Readings that share a column of pixels. */
interface Column {
  readonly place: number;
  readonly first: number;
  last: number;
  low: number;
  high: number;
}

/** Width of a column, and half that of the line, px. */
const COLUMN = 2;
const HALF = 0.8;

/**
 * Line and band through the readings, parted at gaps.
 * @param dash - of the stroke; the band is cut alike, along the time
 */
export function curvePath(curve: TimeCurve, sx: Scale, sy: Height, dash?: string): Drawn {
  const { t, x } = curve;
  const at = (k: number) => `${px(sx.at(t[k]!))},${px(sy(x[k]!))}`;
  const inked = inkedAt(dash);
  let [line, band] = ['', ''];
  /** Where the line ends now, and the columns of the band not written yet. */
  let pen = -1;
  let run: Column[] = [];
  const endRun = () => {
    if (run.length > 0) band += bandPath(run, inked);
    run = [];
  };
  let before: Column | null = null;
  for (const column of columnsOf(curve, sx, sy)) {
    if (column && before) {
      if (isFull(before) && isFull(column) && before.place === column.place - 1) {
        const [end, begin] = [sy(x[before.last]!), sy(x[column.first]!)];
        reach(before, 0.5 * (end + begin));
        reach(column, 0.5 * (end + begin));
      } else {
        endRun();
        line += `${pen === before.last ? '' : `M${at(before.last)}`}L${at(column.first)}`;
        pen = column.first;
      }
    } else endRun();
    if (column && isFull(column)) run.push(column);
    before = column;
  }
  endRun();
  return { line, band };
}

const isFull = ({ first, last }: Column) => last > first;

function reach(column: Column, y: number): void {
  column.low = Math.min(column.low, y);
  column.high = Math.max(column.high, y);
}

/** Columns from left to right; null is a gap. */
function* columnsOf({ t, x }: TimeCurve, sx: Scale, sy: Height): Generator<Column | null> {
  let open: Column | null = null;
  for (let k = 0; k < t.length; k++) {
    const gap = Number.isNaN(x[k]!);
    const place = Math.floor(sx.at(t[k]!) / COLUMN);
    if (open && (gap || open.place !== place)) {
      yield open;
      open = null;
    }
    if (gap) {
      yield null;
      continue;
    }
    const y = sy(x[k]!);
    if (open) {
      reach(open, y);
      open.last = k;
    } else open = { place, first: k, last: k, low: y, high: y };
  }
  if (open) yield open;
}

/** Steps round columns side by side, as far as they are inked. */
function bandPath(columns: readonly Column[], inked: (at: number) => boolean): string {
  let text = '';
  let [above, below] = ['', ''];
  const end = () => {
    if (above) text += `M${above}L${below}Z`;
    [above, below] = ['', ''];
  };
  for (const { place, low, high } of columns) {
    const from = place * COLUMN;
    if (!inked(from)) {
      end();
      continue;
    }
    const to = from + COLUMN;
    const [top, foot] = [px(low - HALF), px(high + HALF)];
    above += `${above ? 'L' : ''}${from},${top}H${to}`;
    below = `${to},${foot}H${from}${below ? `L${below}` : ''}`;
  }
  end();
  return text;
}

/** Whether a dash pattern draws at a place along the axis. */
function inkedAt(dash?: string): (at: number) => boolean {
  if (!dash) return () => true;
  const lengths = dash.split(' ').map(Number);
  const whole = lengths.reduce((sum, length) => sum + length);
  return (at) => {
    let rest = at % whole;
    let i = 0;
    while (rest >= lengths[i]!) rest -= lengths[i++]!;
    return i % 2 === 0;
  };
}

/** Crosses at doubtful readings, one where several fall together; one off the plot stands at its edge. */
export function crossPath(
  { t, x, doubt }: TimeCurve,
  sx: Scale,
  sy: Height,
  [top, bottom]: readonly [number, number],
): string {
  if (!doubt) return '';
  let text = '';
  const arm = 4;
  let drawn: readonly [number, number] = [-Infinity, 0];
  for (let k = 0; k < t.length; k++) {
    if (!(doubt[k]! & (DOUBT.wild | DOUBT.beyond)) || t[k]! < sx.from || t[k]! > sx.to) continue;
    const at = px(sx.at(t[k]!));
    const y = px(Math.min(Math.max(sy(x[k]!), top + arm), bottom - arm));
    if (at - drawn[0] < arm && Math.abs(y - drawn[1]) < arm) continue;
    drawn = [at, y];
    text += `M${at - arm},${y - arm}l${2 * arm},${2 * arm}M${at - arm},${y + arm}l${2 * arm},${-2 * arm}`;
  }
  return text;
}

/** The parts of a line that stand still. */
export function stillPath({ t, x, doubt }: TimeCurve, sx: Scale, sy: Height): string {
  if (!doubt) return '';
  let text = '';
  let pen = 'M';
  for (let k = 0; k < t.length; k++) {
    if (!(doubt[k]! & DOUBT.still)) {
      pen = 'M';
      continue;
    }
    text += `${pen}${px(sx.at(t[k]!))},${px(sy(x[k]!))}`;
    pen = 'L';
  }
  return text;
}
