/** A chart and the room it has, into options for Observable Plot. Needs no page: tests call it in Node. */
import * as Plot from '@observablehq/plot';
import { worded } from '../format';
import type { UnitSystem } from '../types';
import { shownAxis } from './axis';
import type { Chart, Curve, Size, Spot } from './chart';
import { spread, textWidth, wrap } from './labels';
import { dotted, place, type Box, type Pixel } from './place';
import {
  HALO,
  bandMarks,
  curveMarks,
  dotMarks,
  limitMarks,
  stretchMarks,
  type Frame,
  type Marks,
  type To,
} from './marks';
import { SIDE_STYLE, TEXT_SIZE, inkOf } from './theme';

const MARGIN = { top: 34, bottom: 46, left: 58 };
/** Narrower than this a plot has no room for words at its curves: they go into a key below it. */
const COMPACT = 520;

export const isCompact = (size: Size): boolean => size.width < COMPACT;

/** Both values of a spot in words. */
export const spotValues = (spot: Spot, chart: Chart, system: UnitSystem): string =>
  `${worded(spot.x, chart.x.quantity, system)}, ${worded(spot.y, chart.y.quantity, system)}`;

const LINE_HEIGHT = TEXT_SIZE * 1.2;

/** Ends of an axis rounded outwards to ticks, and the pixel a value falls on. */
function scaleFor(
  domain: readonly [number, number],
  range: readonly [number, number],
  fixed: boolean,
) {
  const scale = Plot.scale({
    y: { type: 'linear', domain: [...domain], range: [...range], nice: !fixed },
  });
  return {
    ends: scale.domain as unknown as [number, number],
    px: (v: number): number => scale.apply(v) as number,
  };
}

interface Labelled {
  readonly marks: Marks;
  readonly boxes: Box[];
}

/** Direct labels at the ends of curves, moved apart where they would meet. */
function endLabels(curves: readonly Curve[], to: To, px: To, size: Size, room: number): Labelled {
  const ends = curves.flatMap((curve) => {
    const last = curve.points.findLast(([x, y]) => Number.isFinite(x) && Number.isFinite(y));
    if (!last) return [];
    const lines = wrap(curve.label, room, TEXT_SIZE);
    return [
      { curve, lines, x: to.x(last[0]), y: to.y(last[1]), height: lines.length * LINE_HEIGHT },
    ];
  });
  const at = spread(
    ends.map((e) => ({ at: px.y(e.y), height: e.height })),
    MARGIN.top - 8,
    size.height - MARGIN.bottom + 8,
  );
  return {
    marks: ends.map((e, i) =>
      Plot.text([0], {
        x: [e.x],
        y: [e.y],
        text: [e.lines.join('\n')],
        dx: 8,
        dy: at[i]! - px.y(e.y),
        textAnchor: 'start',
        lineAnchor: 'middle',
        lineHeight: 1.2,
        fontSize: TEXT_SIZE,
        fontWeight: 560,
        fill: inkOf(e.curve),
        ...HALO,
      }),
    ),
    boxes: ends.map((e, i) => {
      const left = px.x(e.x) + 8;
      const width = Math.max(...e.lines.map((l) => textWidth(l, TEXT_SIZE)));
      return {
        left,
        right: left + width,
        top: at[i]! - e.height / 2,
        bottom: at[i]! + e.height / 2,
      };
    }),
  };
}

/** Ringed marker of its side, label and both values, each label where it covers the least. */
function spotMarks(
  spots: readonly Spot[],
  chart: Chart,
  system: UnitSystem,
  to: To,
  px: To,
  frame: Box,
  taken: readonly Box[],
  compact: boolean,
): Marks {
  const pixel = ([x, y]: readonly [number, number]): Pixel => [px.x(to.x(x)), px.y(to.y(y))];
  const dots = (chart.curves ?? []).flatMap((c) => dotted(c.points.map(pixel)));
  const at = spots.map((s) => pixel([s.x, s.y]));
  // A marker is as much in the way as a label.
  const boxes = [
    ...taken,
    ...at.map(([x, y]) => ({ left: x - 11, right: x + 11, top: y - 11, bottom: y + 11 })),
  ];
  return spots.flatMap((spot, i) => {
    const style = SIDE_STYLE[spot.side ?? 'found'];
    const point = { x: [to.x(spot.x)], y: [to.y(spot.y)] };
    // With a key below the plot the values stand there.
    const lines = compact ? [spot.label] : [spot.label, spotValues(spot, chart, system)];
    const width = Math.max(...lines.map((l) => textWidth(l, TEXT_SIZE))) * 1.06;
    const where = place(at[i]!, { width, height: lines.length * LINE_HEIGHT }, frame, dots, boxes);
    boxes.push(where.box);
    return [
      Plot.dot([0], {
        ...point,
        r: 10,
        stroke: inkOf(spot),
        fill: 'var(--paper)',
        fillOpacity: 0.6,
      }),
      Plot.dot([0], {
        ...point,
        r: 5.5,
        symbol: style.symbol,
        stroke: inkOf(spot),
        strokeWidth: 2,
        fill: spot.side === 'candidate' ? style.fill : inkOf(spot),
      }),
      Plot.text([0], {
        ...point,
        text: [lines.join('\n')],
        textAnchor: where.anchor,
        lineAnchor: 'middle',
        lineHeight: 1.2,
        dx: where.dx,
        dy: where.dy,
        fontSize: TEXT_SIZE,
        fontWeight: 640,
        fill: inkOf(spot),
        ...HALO,
      }),
    ];
  });
}

/** Options for `Plot.plot`: frame, grid, axes with quantity and unit, and every mark of the chart. */
export function chartOptions(chart: Chart, system: UnitSystem, size: Size): Plot.PlotOptions {
  const x = shownAxis(chart, 'x', system);
  const y = shownAxis(chart, 'y', system);
  const compact = isCompact(size);
  const labelled = compact ? [] : (chart.curves ?? []).filter((c) => !c.quiet);
  const room = Math.min(size.width * 0.26, 170);
  const longest = labelled
    .flatMap((c) => wrap(c.label, room, TEXT_SIZE))
    .map((l) => textWidth(l, TEXT_SIZE));
  const right = longest.length ? Math.ceil(Math.max(...longest) + 14) : 18;

  const xScale = scaleFor(
    x.domain,
    [MARGIN.left, size.width - right],
    chart.x.domain !== undefined,
  );
  const yScale = scaleFor(
    y.domain,
    [size.height - MARGIN.bottom, MARGIN.top],
    chart.y.domain !== undefined,
  );
  const to: To = { x: x.to, y: y.to };
  const px: To = { x: xScale.px, y: yScale.px };
  const frame: Frame = { x: xScale.ends, y: yScale.ends };

  const tick = {
    tickSize: 4,
    tickPadding: 5,
    color: 'var(--rule-strong)',
    fontSize: TEXT_SIZE,
  } as const;
  const ticks = {
    x: Math.max(3, Math.round((size.width - right - MARGIN.left) / 85)),
    y: Math.max(3, Math.round(size.height / 80)),
  };
  const ends = endLabels(labelled, to, px, size, room);
  const inner: Box = {
    left: MARGIN.left + 4,
    right: size.width - 4,
    top: MARGIN.top,
    bottom: size.height - MARGIN.bottom - 2,
  };
  const limitBoxes = (chart.limits ?? [])
    .filter((l) => l.axis === 'y')
    .map((l) => {
      const line = px.y(to.y(l.at));
      const edge = size.width - right;
      return {
        left: edge - textWidth(l.label, TEXT_SIZE) - 6,
        right: edge,
        top: line - 20,
        bottom: line,
      };
    });
  const axis = { fill: 'var(--ink-soft)', ...tick };
  return {
    width: size.width,
    height: size.height,
    marginTop: MARGIN.top,
    marginRight: right,
    marginBottom: MARGIN.bottom,
    marginLeft: MARGIN.left,
    style: {
      background: 'transparent',
      color: 'var(--ink)',
      fontFamily: 'inherit',
      fontSize: `${TEXT_SIZE}px`,
      overflow: 'visible',
    },
    x: { type: 'linear', domain: [...xScale.ends], label: x.label, labelArrow: 'none' },
    y: { type: 'linear', domain: [...yScale.ends], label: y.label, labelArrow: 'none' },
    marks: [
      ...(chart.stretches ?? []).flatMap((s) => stretchMarks(s, to, frame, px)),
      Plot.gridX({ ticks: ticks.x, stroke: 'var(--rule)', strokeOpacity: 0.75 }),
      Plot.gridY({ ticks: ticks.y, stroke: 'var(--rule)', strokeOpacity: 0.75 }),
      Plot.axisX({ ...axis, ticks: ticks.x, label: null }),
      Plot.axisY({ ...axis, ticks: ticks.y, label: null }),
      axisTitle(x.label, 'x'),
      axisTitle(y.label, 'y'),
      Plot.ruleY([frame.y[0]], { stroke: 'var(--ink)', strokeWidth: 1.25 }),
      Plot.ruleX([frame.x[0]], { stroke: 'var(--ink)', strokeWidth: 1.25 }),
      ...(chart.bands ?? []).flatMap((b) => bandMarks(b, to)),
      ...(chart.limits ?? []).flatMap((l) => limitMarks(l, to, frame)),
      ...(chart.curves ?? []).flatMap((c) => curveMarks(c, to)),
      ...(chart.dots ?? []).flatMap((d) => dotMarks(d, to)),
      ...ends.marks,
      ...spotMarks(
        chart.spots ?? [],
        chart,
        system,
        to,
        px,
        inner,
        [...ends.boxes, ...limitBoxes],
        compact,
      ),
    ],
  };
}

/** Name and unit of an axis, level and in full ink: beside its axis, never turned on its side. */
function axisTitle(text: string, which: 'x' | 'y'): Plot.Markish {
  const common = { fill: 'var(--ink)', fontSize: TEXT_SIZE, fontWeight: 600 } as const;
  return which === 'x'
    ? Plot.text([text], {
        ...common,
        frameAnchor: 'bottom-right',
        textAnchor: 'end',
        lineAnchor: 'top',
        dy: 27,
      })
    : Plot.text([text], {
        ...common,
        frameAnchor: 'top-left',
        textAnchor: 'start',
        lineAnchor: 'bottom',
        dx: -MARGIN.left + 4,
        dy: -14,
      });
}
