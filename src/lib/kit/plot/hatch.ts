/** A hatch of strokes, for where a law does not hold. */
import * as Plot from '@observablehq/plot';
import type { Frame, Marks, To } from './onPlot';

/** Pixels between the strokes of a hatch. */
const HATCH_STEP = 10;

/** A box hatched by lines of its own: a pattern would be printed as a picture. */
export function hatched(
  box: Readonly<Record<'x1' | 'x2' | 'y1' | 'y2', readonly [number] | number[]>>,
  frame: Frame,
  px: To,
): Marks {
  const [left, right] = sorted(px.x(box.x1[0]!), px.x(box.x2[0]!));
  const [top, bottom] = sorted(px.y(box.y1[0]!), px.y(box.y2[0]!));
  const x = inverse(px.x, frame.x);
  const y = inverse(px.y, frame.y);
  // Strokes rise to the right: along each, x plus y stays the same.
  const first = Math.ceil((left + top) / HATCH_STEP);
  const count = Math.max(0, Math.floor((right + bottom) / HATCH_STEP) - first + 1);
  const strokes = Array.from({ length: count }, (_, i) => {
    const sum = (first + i) * HATCH_STEP;
    const [from, to] = [Math.max(left, sum - bottom), Math.min(right, sum - top)];
    return { x1: x(from), y1: y(sum - from), x2: x(to), y2: y(sum - to) };
  });
  return [
    Plot.link(strokes, {
      x1: 'x1',
      y1: 'y1',
      x2: 'x2',
      y2: 'y2',
      stroke: 'var(--hatch)',
      strokeWidth: 2.5,
    }),
    Plot.rect([0], { ...box, fill: 'none', stroke: 'var(--hatch)' }),
  ];
}

const sorted = (a: number, b: number) => (a < b ? ([a, b] as const) : ([b, a] as const));

/** From a pixel back to the value there; axes are linear. */
function inverse(px: (v: number) => number, [low, high]: readonly [number, number]) {
  const per = (high - low) / (px(high) - px(low));
  return (pixel: number) => low + (pixel - px(low)) * per;
}
