/**
 * Where things stand in the drawn circuit. Wide: feed along the top, ground along the bottom. Narrow, or
 * with many joints: feed down the left, ground up the right. Only places; numbers hang on them elsewhere.
 */

export interface Place {
  readonly x: number;
  readonly y: number;
}

/** One part of a rail: its symbol, its name and drop, the reading behind it. */
export interface PartPlace extends Place {
  /** Degrees the symbol is turned: 0 along the top, 90 down the left … */
  readonly turn: 0 | 90 | 180 | 270;
  /** Coil and hook stand outside the circuit, away from the words. */
  readonly mirrored: boolean;
  readonly name: Place;
  readonly node: Place;
  readonly reading: Place;
}

export interface Layout {
  readonly across: boolean;
  readonly width: number;
  readonly height: number;
  readonly anchor: Readonly<Record<'feed' | 'ground', 'start' | 'middle' | 'end'>>;
  readonly feed: readonly PartPlace[];
  readonly ground: readonly PartPlace[];
  /** The rails as one path from battery plus to pump and back. */
  readonly rails: string;
  readonly battery: Place & { readonly turn: 0 | 90; readonly words: Place };
  /** Reading at the battery's own post. */
  readonly source: Place;
  /** The pump's ground pin, and the reading there. */
  readonly groundPin: { readonly node: Place; readonly reading: Place };
  readonly motor: Place & { readonly words: Place; readonly anchor: 'start' | 'middle' | 'end' };
  readonly earth: Place;
}

/** Most parts along one rail of the wide drawing before their names meet. */
export const MOST_ACROSS = 7;

const LEFT = 78;
const RIGHT = 902;
const TOP = 96;
const BOTTOM = 424;

/** Parts spread over a rail; `at(i)` for the i-th place, nodes midway to the next. */
function across(feed: number, ground: number): Layout {
  const rail = (count: number, y: number, back: boolean): PartPlace[] => {
    const step = (RIGHT - LEFT) / (count + 0.35);
    const from = back ? RIGHT : LEFT;
    const sign = back ? -1 : 1;
    return Array.from({ length: count }, (_, i): PartPlace => {
      const x = from + sign * step * (i + 0.62);
      const node = { x: from + sign * step * (i + 1.12), y };
      return {
        x,
        y,
        turn: back ? 180 : 0,
        mirrored: false,
        name: { x, y: back ? y - 74 : y + 34 },
        node,
        reading: { x: node.x, y: back ? y + 28 : y - 36 },
      };
    });
  };
  const middle = (TOP + BOTTOM) / 2;
  return {
    across: true,
    width: 980,
    height: 490,
    anchor: { feed: 'middle', ground: 'middle' },
    feed: rail(feed, TOP, false),
    ground: rail(ground, BOTTOM, true),
    rails: `M${LEFT} ${middle}V${TOP}H${RIGHT}V${BOTTOM}H${LEFT}V${middle}`,
    battery: { x: LEFT, y: middle, turn: 90, words: { x: LEFT + 42, y: middle - 8 } },
    source: { x: LEFT, y: TOP - 36 },
    groundPin: {
      node: { x: RIGHT, y: middle + 62 },
      reading: { x: RIGHT - 14, y: middle + 68 },
    },
    motor: { x: RIGHT, y: middle, words: { x: RIGHT - 48, y: middle - 26 }, anchor: 'end' },
    earth: { x: LEFT, y: BOTTOM },
  };
}

function down(feed: number, ground: number): Layout {
  const [left, right, top, step] = [46, 296, 84, 118];
  const height = top + step * (Math.max(feed, ground) + 0.3) + 190;
  const bottom = height - 150;
  const rail = (count: number, x: number, back: boolean): PartPlace[] => {
    const gap = (bottom - top) / (count + 0.25);
    const inward = back ? -24 : 24;
    return Array.from({ length: count }, (_, i): PartPlace => {
      const along = gap * (i + 0.56);
      const behind = gap * (i + 1.02);
      const y = back ? bottom - along : top + along;
      const node = { x, y: back ? bottom - behind : top + behind };
      return {
        x,
        y,
        turn: back ? 270 : 90,
        mirrored: true,
        name: { x: x + inward, y: y - 6 },
        node,
        reading: { x: x + inward / 2, y: node.y + 5 },
      };
    });
  };
  const middle = (left + right) / 2;
  /** The rail's foot lies lower, so that the last readings clear the motor. */
  const foot = bottom + 40;
  return {
    across: false,
    width: 330,
    height,
    anchor: { feed: 'start', ground: 'end' },
    feed: rail(feed, left, false),
    ground: rail(ground, right, true),
    rails: `M${middle} 48H${left}V${foot}H${right}V48H${middle}`,
    battery: { x: middle, y: 48, turn: 0, words: { x: middle, y: 18 } },
    source: { x: left + 12, y: 74 },
    groundPin: {
      node: { x: right, y: bottom + 12 },
      reading: { x: right - 12, y: bottom + 12 },
    },
    motor: { x: middle, y: foot, words: { x: middle, y: foot + 50 }, anchor: 'middle' },
    earth: { x: right, y: 48 },
  };
}

/** The drawing for so many parts on each side. */
export const layout = (narrow: boolean, feed: number, ground: number): Layout =>
  narrow || Math.max(feed, ground) > MOST_ACROSS ? down(feed, ground) : across(feed, ground);
