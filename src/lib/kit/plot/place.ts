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
      dots.filter((d) => inside(d, box)).length * PITCH +
      (OVER_TEXT * boxes.reduce((s, b) => s + overlap(b, box), 0)) / size.height;
    const cost = out * 20 + covered + i;
    if (cost < least) {
      least = cost;
      best = { box, anchor: sx > 0 ? 'start' : sx < 0 ? 'end' : 'middle', dx, dy };
    }
  }
  return best!;
}
