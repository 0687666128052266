/** The marks every chart is made of, in shown units. Each function: data in, Plot marks out. */
import * as Plot from '@observablehq/plot';
import type { Level } from '../types';
import type { Band, Curve, Dots, Limit, Stretch } from './chart';
import { hatched } from './hatch';
import { textWidth } from './labels';
import { ON_LINE, placeOnLine, type Box, type OnLine, type Pixel } from './place';
import type { Frame, Marks, To } from './onPlot';
import { SIDE_STYLE, TEXT_SIZE, inkOf } from './theme';

export type { Frame, Marks, To };

/** Paper behind letters, so that a label stays readable on a line. */
export const HALO = { stroke: 'var(--paper)', strokeWidth: 5, strokeLinejoin: 'round' } as const;

/** Thin and thick of a curve by its side. */
export function curveMarks(curve: Curve, to: To): Marks {
  const style = SIDE_STYLE[curve.side ?? 'found'];
  const points = curve.points.map(([x, y]) => [to.x(x), to.y(y)]);
  return [
    Plot.line(points, {
      stroke: inkOf(curve),
      strokeWidth: curve.thin ? 1.25 : style.width,
      ...(style.dash && { strokeDasharray: style.dash }),
      strokeLinecap: style.dash ? 'butt' : 'round',
      clip: true,
    }),
  ];
}

/** ± as a wash between two hairlines. */
export function bandMarks(band: Band, to: To): Marks {
  const style = SIDE_STYLE[band.side ?? 'found'];
  const rows = band.points.map(([x, low, high]) => ({
    x: to.x(x),
    low: to.y(low),
    high: to.y(high),
  }));
  const edge = {
    x: 'x',
    stroke: inkOf(band),
    strokeWidth: 0.75,
    strokeDasharray: style.dash ? '3 3' : '1 2',
    clip: true,
  } as const;
  return [
    Plot.areaY(rows, {
      x: 'x',
      y1: 'low',
      y2: 'high',
      fill: inkOf(band),
      fillOpacity: 0.14,
      clip: true,
    }),
    Plot.lineY(rows, { ...edge, y: 'low' }),
    Plot.lineY(rows, { ...edge, y: 'high' }),
  ];
}

/** Measured points: the side's marker, hollow, with ± as a whisker. */
export function dotMarks(dots: Dots, to: To): Marks {
  const rows = dots.points.map(([x, y, pm]) => ({
    x: to.x(x),
    y: to.y(y),
    low: to.y(y - (pm ?? 0)),
    high: to.y(y + (pm ?? 0)),
  }));
  const whiskers = dots.points.some((p) => p[2] !== undefined);
  return [
    ...(whiskers
      ? [
          Plot.ruleX(rows, {
            x: 'x',
            y1: 'low',
            y2: 'high',
            stroke: inkOf(dots),
            strokeWidth: 1.25,
          }),
        ]
      : []),
    Plot.dot(rows, {
      x: 'x',
      y: 'y',
      r: rows.length > 60 ? 2 : 4,
      symbol: SIDE_STYLE[dots.side ?? 'found'].symbol,
      stroke: inkOf(dots),
      fill: 'var(--paper)',
      strokeWidth: 1.5,
    }),
  ];
}

const LIMIT_INK: Readonly<Record<Level, string>> = {
  info: 'var(--ink-soft)',
  good: 'var(--good)',
  watch: 'var(--watch)',
  act: 'var(--act)',
};

/** Where the words of a level limit stand, px; null for an upright one, named at its head. */
export function limitWords(
  limit: Limit,
  to: To,
  px: To,
  inner: Box,
  dots: readonly Pixel[],
  taken: readonly Box[],
): OnLine | null {
  if (limit.axis === 'x') return null;
  const size = { width: textWidth(limit.label, TEXT_SIZE), height: TEXT_SIZE * 1.2 };
  return placeOnLine(px.y(to.y(limit.at)), size, inner, dots, taken);
}

/** A dashed line across the plot with its words on it. */
export function limitMarks(limit: Limit, to: To, frame: Frame, words: OnLine | null): Marks {
  const ink = LIMIT_INK[limit.level ?? 'act'];
  const line = { stroke: ink, strokeWidth: 1.5, strokeDasharray: '2 3' };
  const text = { text: [limit.label], fill: ink, ...HALO, fontSize: TEXT_SIZE, fontWeight: 600 };
  return words
    ? [
        Plot.ruleY([to.y(limit.at)], line),
        Plot.text([limit.label], {
          ...text,
          x: [frame.x[words.right ? 1 : 0]],
          y: [to.y(limit.at)],
          textAnchor: words.right ? 'end' : 'start',
          lineAnchor: words.above ? 'bottom' : 'top',
          dx: words.right ? -ON_LINE.end : ON_LINE.end,
          dy: words.above ? -ON_LINE.gap : ON_LINE.gap,
        }),
      ]
    : [
        Plot.ruleX([to.x(limit.at)], line),
        Plot.text([limit.label], {
          ...text,
          x: [to.x(limit.at)],
          y: [frame.y[1]],
          textAnchor: to.x(limit.at) > (frame.x[0] + frame.x[1]) / 2 ? 'end' : 'start',
          lineAnchor: 'top',
          dx: to.x(limit.at) > (frame.x[0] + frame.x[1]) / 2 ? -6 : 6,
          dy: 4,
        }),
      ];
}

/** A hatched or washed stretch of one axis, named at its head. */
export function stretchMarks(stretch: Stretch, to: To, frame: Frame, px: To): Marks {
  const across = stretch.axis === 'x';
  const conv = across ? to.x : to.y;
  const [low, high] = across ? frame.x : frame.y;
  const clamp = (v: number) => Math.min(Math.max(v, Math.min(low, high)), Math.max(low, high));
  const [from, until] = [clamp(conv(stretch.from)), clamp(conv(stretch.to))];
  if (from === until) return [];
  // A name wider than its stretch starts at the left edge, clear of the axis.
  const fits = textWidth(stretch.label, TEXT_SIZE) < Math.abs(px.x(until) - px.x(from));
  const box = across
    ? { x1: [from], x2: [until], y1: [frame.y[0]], y2: [frame.y[1]] }
    : { x1: [frame.x[0]], x2: [frame.x[1]], y1: [from], y2: [until] };
  return [
    ...(stretch.kind === 'outside'
      ? hatched(box, frame, px)
      : [Plot.rect([0], { ...box, fill: 'var(--ink)', fillOpacity: 0.05 })]),
    Plot.text([stretch.label], {
      text: [stretch.label],
      x: [across ? (fits ? (from + until) / 2 : Math.min(from, until)) : frame.x[0]],
      y: [across ? frame.y[1] : (from + until) / 2],
      textAnchor: across && fits ? 'middle' : 'start',
      lineAnchor: across ? 'top' : 'middle',
      dx: across ? (fits ? 0 : 4) : 8,
      dy: across ? 4 : 0,
      fill: 'var(--ink-soft)',
      ...HALO,
      fontSize: TEXT_SIZE - 1,
    }),
  ];
}
