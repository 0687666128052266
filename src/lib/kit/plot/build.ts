/** A chart and the room it has, into options for Observable Plot. Needs no page: tests call it in Node. */
import * as Plot from '@observablehq/plot';
import type { UnitSystem } from '../types';
import { MARGIN, endLabels, spotMarks } from './annotate';
import { shownAxis } from './axis';
import type { Chart, Size } from './chart';
import { textWidth, wrap } from './labels';
import {
  bandMarks,
  curveMarks,
  dotMarks,
  limitMarks,
  limitWords,
  stretchMarks,
  type Frame,
  type To,
} from './marks';
import { dotted, type Box, type Pixel } from './place';
import { labelSpots } from './spotLabels';
import { TEXT_SIZE } from './theme';

/** Height of a line of a named place, in sizes of its text. */
const TICK_LINE = 1.1;

/** Narrower than this a plot has no room for words at its curves: they go into a key below it. */
export const COMPACT = 430;

export const isCompact = (size: Size): boolean => size.width < COMPACT;

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

/** Room for the widest number of the upright axis with its tick; a minus and thousands count. */
function leftRoom(ends: readonly [number, number]): number {
  const widths = ends.map((v) => textWidth(v.toLocaleString('en-US'), TEXT_SIZE));
  return Math.max(MARGIN.left, Math.ceil(Math.max(...widths)) + 16);
}

/** Names of places in as many lines as they need and their place has room for, in a third of the width. */
function namedTicks(names: readonly string[], { width, height }: Size) {
  const room = Math.min(width * 0.36, 190);
  const place = (height - MARGIN.top - MARGIN.bottom) / names.length;
  const most = Math.max(1, Math.floor(place / (TEXT_SIZE * TICK_LINE)));
  const lines = names.map((name) => {
    const own = wrap(name, room, TEXT_SIZE);
    // The rest of a name is read at its mark.
    return own.length > most ? [...own.slice(0, most - 1), `${own[most - 1]} …`] : own;
  });
  const widest = Math.max(...lines.flat().map((line) => textWidth(line, TEXT_SIZE)));
  return { texts: lines.map((own) => own.join('\n')), room: Math.ceil(widest) + 16 };
}

/** Options for `Plot.plot`: frame, grid, axes with quantity and unit, and every mark of the chart. */
export const chartOptions = (chart: Chart, system: UnitSystem, size: Size): Plot.PlotOptions =>
  drawing(chart, system, size).options;

export interface Drawing {
  readonly options: Plot.PlotOptions;
  /** Spots bear numbers: the key below must tell them. */
  readonly numbered: boolean;
}

/** The options, and what the key below the plot must tell. */
export function drawing(chart: Chart, system: UnitSystem, size: Size): Drawing {
  const x = shownAxis(chart, 'x', system);
  const y = shownAxis(chart, 'y', system);
  const compact = isCompact(size);
  const labelled = compact ? [] : (chart.curves ?? []).filter((c) => !c.quiet);
  const room = Math.min(size.width * 0.26, 170);
  const longest = labelled
    .flatMap((c) => wrap(c.label, room, TEXT_SIZE))
    .map((l) => textWidth(l, TEXT_SIZE));
  const right = longest.length ? Math.ceil(Math.max(...longest) + 14) : 18;

  const yScale = scaleFor(
    y.domain,
    [size.height - MARGIN.bottom, MARGIN.top],
    chart.y.domain !== undefined || chart.y.names !== undefined,
  );
  const named = chart.y.names && namedTicks(chart.y.names, size);
  const left = named ? named.room : leftRoom(yScale.ends);
  const xScale = scaleFor(x.domain, [left, size.width - right], chart.x.domain !== undefined);
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
    x: Math.max(3, Math.round((size.width - right - left) / 85)),
    y: named ? named.texts.map((_, i) => i + 1) : Math.max(3, Math.round(size.height / 80)),
  };
  const ends = endLabels(labelled, to, px, size, room);
  const inner: Box = {
    left: left + 4,
    right: size.width - 4,
    top: MARGIN.top,
    bottom: size.height - MARGIN.bottom - 2,
  };
  const dots = (chart.curves ?? []).flatMap((c) =>
    dotted(c.points.map(([x, y]): Pixel => [px.x(to.x(x)), px.y(to.y(y))])),
  );
  const plain = { ...inner, left, right: size.width - right };
  const limits = (chart.limits ?? []).map((limit) => ({
    limit,
    words: limitWords(limit, to, px, plain, dots, ends.boxes),
  }));
  const limitBoxes = limits.flatMap(({ words }) => (words ? [words.box] : []));
  const axis = { fill: 'var(--ink-soft)', ...tick };
  const spots = chart.spots ?? [];
  const { labels, numbered } = labelSpots(
    chart,
    spots.map(({ x, y }): Pixel => [px.x(to.x(x)), px.y(to.y(y))]),
    system,
    { frame: inner, dots, taken: [...ends.boxes, ...limitBoxes], compact },
  );
  const options: Plot.PlotOptions = {
    width: size.width,
    height: size.height,
    marginTop: MARGIN.top,
    marginRight: right,
    marginBottom: MARGIN.bottom,
    marginLeft: left,
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
      Plot.axisY({
        ...axis,
        ticks: ticks.y,
        label: null,
        ...(named && {
          tickFormat: (place: number) => named.texts[place - 1] ?? '',
          lineHeight: TICK_LINE,
        }),
      }),
      axisTitle(x.label, 'x', size.width),
      axisTitle(y.label, 'y', size.width),
      Plot.ruleY([frame.y[0]], { stroke: 'var(--ink)', strokeWidth: 1.25 }),
      Plot.ruleX([frame.x[0]], { stroke: 'var(--ink)', strokeWidth: 1.25 }),
      ...(chart.bands ?? []).flatMap((b) => bandMarks(b, to)),
      ...limits.flatMap(({ limit, words }) => limitMarks(limit, to, frame, words)),
      ...(chart.curves ?? []).flatMap((c) => curveMarks(c, to)),
      ...(chart.dots ?? []).flatMap((d) => dotMarks(d, to)),
      ...ends.marks,
      ...spotMarks(spots, labels, to),
    ],
  };
  return { options, numbered };
}

/** Smallest letters of an axis, px. */
const LEAST_TEXT = 9;

/**
 * Name and unit of an axis, level and in full ink: beside its axis, never turned on its side. Smaller
 * where it would stick out of a narrow plot.
 */
function axisTitle(text: string, which: 'x' | 'y', width: number): Plot.Markish {
  const share = (width - 8) / textWidth(text, TEXT_SIZE);
  const fontSize = Math.max(LEAST_TEXT, TEXT_SIZE * Math.min(1, share));
  const common = { fill: 'var(--ink)', fontSize, fontWeight: 600 } as const;
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
