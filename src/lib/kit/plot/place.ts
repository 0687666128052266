/** Where the label of a point goes so that it covers as little as possible. Pure geometry in pixels. */

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export type Pixel = readonly [x: number, y: number];

export interface Placed {
  readonly box: Box;
  readonly anchor: 'start' | 'middle' | 'end';
  /** From the point to the anchor of the text's middle line. */
  readonly dx: number;
  readonly dy: number;
}

/** Dots this far apart stand for a line when asking what a label covers. */
const PITCH = 4;

/** A polyline as dots, so that covering it can be counted. */
export function dotted(line: readonly Pixel[]): Pixel[] {
  const dots: Pixel[] = [];
  for (let i = 1; i < line.length; i++) {
    const [x0, y0] = line[i - 1]!;
    const [x1, y1] = line[i]!;
    const n = Math.max(1, Math.ceil(Math.hypot(x1 - x0, y1 - y0) / PITCH));
    for (let k = 0; k < n; k++) dots.push([x0 + ((x1 - x0) * k) / n, y0 + ((y1 - y0) * k) / n]);
  }
  return dots;
}

const inside = ([x, y]: Pixel, b: Box) => x > b.left && x < b.right && y > b.top && y < b.bottom;
const overlap = (a: Box, b: Box) =>
  Math.max(0, Math.min(a.right, b.right) - Math.max(a.left, b.left)) *
  Math.max(0, Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top));

const covers = (dots: readonly Pixel[], box: Box) =>
  dots.filter((d) => inside(d, box)).length * PITCH;

/** Text over text is this much worse than text over a line of the same length. */
const OVER_TEXT = 8;

/** Places tried around a point, best liked first: away from it by `GAP`, sideways or slanting. */
const GAP = 13;
const WAYS: readonly (readonly [x: number, y: number])[] = [
  [1, 0],
  [-1, 0],
  [2, 0],
  [-2, 0],
  [0, -1],
  [0, 1],
  [1, -1],
  [-1, -1],
  [1, 1],
  [-1, 1],
  [1, -2],
  [-1, -2],
  [1, 2],
  [-1, 2],
];

/** The place for a label of `size` near `point` that stays in `frame` and covers the least. */
export function place(
  point: Pixel,
  size: { readonly width: number; readonly height: number },
  frame: Box,
  dots: readonly Pixel[],
  boxes: readonly Box[],
): Placed {
  let best: Placed | undefined;
  let least = Infinity;
  for (const [i, [sx, sy]] of WAYS.entries()) {
    const dx = sx * GAP;
    const dy = sy * (sx === 0 ? GAP + size.height / 2 : size.height / 2 + 4);
    const x = point[0] + dx;
    const y = point[1] + dy;
    const left = sx > 0 ? x : sx < 0 ? x - size.width : x - size.width / 2;
    const box = {
      left,
      right: left + size.width,
      top: y - size.height / 2,
      bottom: y + size.height / 2,
    };
    const out =
      Math.max(0, frame.left - box.left) +
      Math.max(0, box.right - frame.right) +
      Math.max(0, frame.top - box.top) +
      Math.max(0, box.bottom - frame.bottom);
    const covered =
      covers(dots, box) +
      (OVER_TEXT * boxes.reduce((s, b) => s + overlap(b, box), 0)) / size.height;
    const cost = out * 20 + covered + i;
    if (cost < least) {
      least = cost;
      best = { box, anchor: sx > 0 ? 'start' : sx < 0 ? 'end' : 'middle', dx, dy };
    }
  }
  return best!;
}

/** Words on a level line: at its right or left end, above or below it. */
export interface OnLine {
  readonly box: Box;
  readonly right: boolean;
  readonly above: boolean;
}

/** Room between a line and its words, and between the words and the end of the line. */
export const ON_LINE = { gap: 4, end: 6 };

/** The end and side of the level line at `y` where words of `size` cover the least of curves and other words. */
export function placeOnLine(
  y: number,
  size: { readonly width: number; readonly height: number },
  frame: Box,
  dots: readonly Pixel[],
  taken: readonly Box[],
): OnLine {
  const at = (right: boolean, above: boolean): OnLine => {
    const left = right ? frame.right - ON_LINE.end - size.width : frame.left + ON_LINE.end;
    const top = above ? y - ON_LINE.gap - size.height : y + ON_LINE.gap;
    const box = { left, right: left + size.width, top, bottom: top + size.height };
    return { box, right, above };
  };
  const ways = [at(true, true), at(true, false), at(false, true), at(false, false)];
  // The first liked best; one that leaves the frame only where all do.
  const cost = ({ box }: OnLine) =>
    covers(dots, box) +
    (OVER_TEXT * taken.reduce((sum, other) => sum + overlap(other, box), 0)) / size.height +
    (box.top < frame.top || box.bottom > frame.bottom ? 1e4 : 0);
  return ways.reduce((best, way) => (cost(way) < cost(best) ? way : best));
}
