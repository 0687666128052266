/** Reading a chart at one x: every curve's y there, in words. SI in, text out. */
import { differenceOf, spreadText, worded } from '../format';
import { SIDE_WORD, type SideName, type UnitSystem } from '../types';
import type { Chart, Curve, Point, Tone } from './chart';

export interface ReadingItem {
  readonly label: string;
  readonly text: string;
  readonly side: SideName;
  readonly tone?: Tone;
  /** SI. */
  readonly y: number;
}

export interface Reading {
  readonly x: number;
  readonly xText: string;
  readonly items: readonly ReadingItem[];
}

/** y of a polyline at `x` by straight line between its points; null beyond its ends. */
export function along(points: readonly Point[], x: number): number | null {
  for (let i = 1; i < points.length; i++) {
    const [x0, y0] = points[i - 1]!;
    const [x1, y1] = points[i]!;
    if ((x0 - x) * (x1 - x) > 0) continue;
    return x1 === x0 ? y1 : y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
  }
  const only = points[0];
  return points.length === 1 && only![0] === x ? only![1] : null;
}

/** Most stops along the axis; a long log is thinned to this. */
const MOST = 240;

/** The x values at which the keyboard stops: where curves have points, and every spot. */
export function stops(chart: Chart): number[] {
  const all = new Set<number>();
  for (const curve of chart.curves ?? []) for (const [x] of curve.points) all.add(x);
  for (const dots of chart.dots ?? []) for (const [x] of dots.points) all.add(x);
  for (const spot of chart.spots ?? []) all.add(spot.x);
  const sorted = [...all].filter(Number.isFinite).toSorted((a, b) => a - b);
  const every = Math.ceil(sorted.length / MOST);
  return sorted.filter((_, i) => i % every === 0 || i === sorted.length - 1);
}

/** A band is called even while neither of its sides is this many times the other. */
const EVEN = 1.5;

/** ± of a curve at `x`, where it has a band; its two sides apart where they differ. */
function spreadAt(chart: Chart, curve: Curve, x: number, y: number, system: UnitSystem): string {
  const band = (chart.bands ?? []).find(
    ({ of, side = 'found' }) => of === curve.id && side === (curve.side ?? 'found'),
  );
  if (!band) return '';
  const low = along(
    band.points.map(([at, value]) => [at, value] as const),
    x,
  );
  const high = along(
    band.points.map(([at, , value]) => [at, value] as const),
    x,
  );
  if (low === null || high === null || !(low < y && y < high)) return '';
  const said = (by: number) => spreadText(by, differenceOf(chart.y.quantity), system);
  const [up, down] = [high - y, y - low];
  return Math.max(up, down) <= EVEN * Math.min(up, down)
    ? ` ± ${said((up + down) / 2)}`
    : ` +${said(up)} −${said(down)}`;
}

/** What the chart says at `x`. Curves that do not reach there are left out. */
export function readAt(chart: Chart, x: number, system: UnitSystem): Reading {
  const item = (curve: Curve): ReadingItem[] => {
    const y = along(curve.points, x);
    if (y === null || !Number.isFinite(y)) return [];
    return [
      {
        label: curve.label,
        text: worded(y, chart.y.quantity, system) + spreadAt(chart, curve, x, y, system),
        side: curve.side ?? 'found',
        ...(curve.tone && { tone: curve.tone }),
        y,
      },
    ];
  };
  const near = (dots: NonNullable<Chart['dots']>[number]): ReadingItem[] =>
    dots.points
      .filter((p) => p[0] === x)
      .map((p) => ({
        label: dots.label,
        // Where places have names the label is all there is to say.
        text: chart.y.names ? '' : worded(p[1], chart.y.quantity, system),
        side: dots.side ?? 'found',
        ...(dots.tone && { tone: dots.tone }),
        y: p[1],
      }));
  return {
    x,
    xText: worded(x, chart.x.quantity, system),
    items: [
      ...(chart.y.names ? [] : (chart.curves ?? [])).flatMap(item),
      ...(chart.dots ?? []).flatMap(near),
    ],
  };
}

/** A reading as one sentence, for assistive technology; where two sides are drawn each is named. */
export function spokenReading(chart: Chart, reading: Reading): string {
  const compared = reading.items.some(({ side }) => side === 'candidate');
  const said = reading.items.map(({ side, label, text }) =>
    `${compared ? `${SIDE_WORD[side].toLowerCase()} ` : ''}${label} ${text}`.trimEnd(),
  );
  return `${chart.x.name} ${reading.xText}: ${said.join(', ') || 'no value'}`;
}
