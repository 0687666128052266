/** Words inside a plot: labels at the ends of curves, labels of spots, each where it covers the least. */
import * as Plot from '@observablehq/plot';
import { differenceOf, shown, spreadText, worded } from '../format';
import type { UnitSystem } from '../types';
import type { Chart, Curve, Size, Spot } from './chart';
import { spread, textWidth, wrap } from './labels';
import { HALO, type Marks, type To } from './marks';
import { place, type Box, type Pixel } from './place';
import { SIDE_STYLE, TEXT_SIZE, inkOf } from './theme';

/** Room round the frame for ticks and titles, px; the right side depends on the labels. */
export const MARGIN = { top: 34, bottom: 46, left: 58 };

const LINE_HEIGHT = TEXT_SIZE * 1.2;

/** Both values of a spot in words. */
export const spotValues = (spot: Spot, chart: Chart, system: UnitSystem): string =>
  `${worded(spot.x, chart.x.quantity, system)}, ${withSpread(spot, chart, system)}`;

function withSpread({ y, plusMinus }: Spot, { y: axis }: Chart, system: UnitSystem): string {
  const { text, unit } = shown(y, axis.quantity, system);
  const spread =
    plusMinus === undefined
      ? ''
      : `\u00a0±\u00a0${spreadText(plusMinus, differenceOf(axis.quantity), system, y)}`;
  return `${text}${spread}${unit && `\u00a0${unit}`}`;
}

interface Labelled {
  readonly marks: Marks;
  readonly boxes: Box[];
}

/** Direct labels at the ends of curves, moved apart where they would meet. */
export function endLabels(
  curves: readonly Curve[],
  to: To,
  px: To,
  size: Size,
  room: number,
): Labelled {
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

/** So many labels fit into a narrow plot; more of them are numbers there, told in its key. */
const FEW_LABELS = 4;

export const areNumbered = (spots: readonly Spot[]): boolean => spots.length > FEW_LABELS;

/** Ringed marker of its side, label and both values, each label where it covers the least. */
export function spotMarks(
  spots: readonly Spot[],
  chart: Chart,
  /** The curves as dots, so that covering them can be counted. */
  dots: readonly Pixel[],
  system: UnitSystem,
  to: To,
  px: To,
  frame: Box,
  taken: readonly Box[],
  compact: boolean,
): Marks {
  const pixel = ([x, y]: readonly [number, number]): Pixel => [px.x(to.x(x)), px.y(to.y(y))];
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
    const inKey = areNumbered(spots) ? String(i + 1) : spot.label;
    const lines = compact ? [inKey] : [spot.label, spotValues(spot, chart, system)];
    const width = Math.max(...lines.map((l) => textWidth(l, TEXT_SIZE))) * 1.06;
    const where = place(at[i]!, { width, height: lines.length * LINE_HEIGHT }, frame, dots, boxes);
    boxes.push(where.box);
    const pm = spot.plusMinus;
    return [
      ...(pm === undefined
        ? []
        : [
            Plot.ruleX([0], {
              x: point.x,
              y1: [to.y(spot.y - pm)],
              y2: [to.y(spot.y + pm)],
              stroke: inkOf(spot),
              strokeWidth: 2,
            }),
          ]),
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
        symbol: spot.open ? 'times' : style.symbol,
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
