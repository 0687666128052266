/** Words inside a plot: labels at the ends of curves, labels of spots, each where it covers the least. */
import * as Plot from '@observablehq/plot';
import type { Curve, Size, Spot } from './chart';
import { spread, textWidth, wrap } from './labels';
import { HALO, type Marks, type To } from './marks';
import type { Box } from './place';
import { LINE_HEIGHT, type SpotLabel } from './spotLabels';
import { SIDE_STYLE, TEXT_SIZE, inkOf } from './theme';

/** Room round the frame for ticks and titles, px; the right side depends on the labels. */
export const MARGIN = { top: 34, bottom: 46, left: 58 };

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

/** Ringed marker of its side for each spot, and its label where it was placed. */
export function spotMarks(spots: readonly Spot[], labels: readonly SpotLabel[], to: To): Marks {
  return spots.flatMap((spot, i) => {
    const style = SIDE_STYLE[spot.side ?? 'found'];
    const point = { x: [to.x(spot.x)], y: [to.y(spot.y)] };
    const { lines, where } = labels[i]!;
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
