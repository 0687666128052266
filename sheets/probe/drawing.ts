/** Where the parts of the drawn circuit stand, px: bias and trim between supply and input, probe to ground. */
import type { Form, Network } from '$lib/solver/instruments/probe/trim/network';
import type { CircuitPicture } from './picture';

export const TOP = 44;
export const NODE = 250;
export const GROUND = 388;
export const MAIN = 62;
const COLUMN = 106;

/** A resistor drawn upright with its leads. */
export interface Placed {
  readonly x: number;
  readonly from: number;
  readonly to: number;
  readonly ohms: number;
  /** To be soldered. */
  readonly isNew: boolean;
}

/** A level wire. */
export interface Level {
  readonly y: number;
  readonly from: number;
  readonly to: number;
  readonly isNew: boolean;
}

export interface Layout {
  readonly resistors: readonly Placed[];
  readonly levels: readonly Level[];
  /** Column of the reader's box, right of all branches. */
  readonly reader: number;
  readonly width: number;
}

/** Which resistor stands where in each form: column, and the share of the height it takes. */
const PLACES: Readonly<
  Record<Form, readonly (readonly [column: number, from: number, to: number])[]>
> = {
  a: [[0, 0, 1]],
  'a+b': [
    [0, 0, 1 / 2],
    [0, 1 / 2, 1],
  ],
  'a|b': [
    [0, 0, 1],
    [1, 0, 1],
  ],
  'a+b+c': [
    [0, 0, 1 / 3],
    [0, 1 / 3, 2 / 3],
    [0, 2 / 3, 1],
  ],
  'a|b|c': [
    [0, 0, 1],
    [1, 0, 1],
    [2, 0, 1],
  ],
  '(a+b)|c': [
    [0, 0, 1 / 2],
    [0, 1 / 2, 1],
    [1, 0, 1],
  ],
  '(a|b)+c': [
    [0, 0, 1 / 2],
    [1, 0, 1 / 2],
    [0, 1 / 2, 1],
  ],
};

function networkAt({ form, parts }: Network, x: number, top: number, bottom: number) {
  const height = bottom - top;
  const resistors = PLACES[form].map(([column, from, to], i): Placed => ({
    x: x + column * COLUMN,
    from: top + from * height,
    to: top + to * height,
    ohms: parts[i]!,
    isNew: true,
  }));
  // Branches that stand beside the first column are joined to it at both their ends.
  const levels = resistors
    .filter((r) => r.x > x)
    .flatMap((r): Level[] => [
      { y: r.from, from: x, to: r.x, isNew: true },
      { y: r.to, from: x, to: r.x, isNew: true },
    ]);
  return { resistors, levels };
}

export function layout({ bias, trim }: CircuitPicture): Layout {
  const there = (to: number): Placed => ({ x: MAIN, from: TOP, to, ohms: bias, isNew: false });
  const half = (TOP + NODE) / 2;
  if (!trim) return finished([there(NODE)], []);
  const { network, placement } = trim;
  if (placement === 'instead') {
    const net = networkAt(network, MAIN, TOP, NODE);
    return finished(net.resistors, net.levels);
  }
  if (placement === 'in-series') {
    const net = networkAt(network, MAIN, half, NODE);
    return finished([there(half), ...net.resistors], net.levels);
  }
  const x = MAIN + COLUMN;
  const net = networkAt(network, x, TOP + 14, NODE - 14);
  return finished(
    [there(NODE), ...net.resistors],
    [
      { y: TOP + 14, from: MAIN, to: x, isNew: true },
      { y: NODE - 14, from: MAIN, to: x, isNew: true },
      ...net.levels,
    ],
  );
}

function finished(resistors: readonly Placed[], levels: readonly Level[]): Layout {
  const right = Math.max(...resistors.map((r) => r.x));
  const reader = Math.max(right + 70, 210);
  return { resistors, levels, reader, width: reader + 120 };
}
