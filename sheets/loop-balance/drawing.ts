/**
 * Where things stand in the drawing of the loop, for a wide and a narrow page. Only places and
 * paths: the numbers that hang on them come from the solution.
 */

/** A corner of a run of hose. */
type Corner = readonly [x: number, y: number];

/** Where a tag of numbers hangs, and which way its text grows. */
export interface TagPlace {
  readonly x: number;
  readonly y: number;
  readonly anchor: 'start' | 'middle' | 'end';
}

interface Box {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/** Names of the places a tag can hang on. */
export type TagName =
  | 'chargeHot'
  | 'chargeCold'
  | 'chargeHeat'
  | 'toFront'
  | 'fromFront'
  | 'frontHeat'
  | 'ambient'
  | 'reservoir'
  | 'suction'
  | 'pump'
  | 'toCooler';

/** One drawing: its size, its parts, its runs of hose in order of flow. */
export interface Drawing {
  readonly width: number;
  readonly height: number;
  readonly front: Box;
  readonly cooler: Box;
  readonly reservoir: Box;
  readonly pump: { readonly x: number; readonly y: number; readonly r: number };
  readonly runs: Readonly<Record<'suction' | 'delivery' | 'transfer' | 'back', readonly Corner[]>>;
  /** Charge air: from the compressor, through the cooler, to the engine. */
  readonly charge: { readonly x: number; readonly from: number; readonly to: number };
  /** Start of the cooling air's arrows. */
  readonly airFrom: number;
  readonly tags: Readonly<Record<TagName, TagPlace>>;
}

export const WIDE: Drawing = {
  width: 980,
  height: 556,
  front: { x: 196, y: 120, w: 58, h: 230 },
  cooler: { x: 700, y: 130, w: 150, h: 92 },
  reservoir: { x: 372, y: 372, w: 124, h: 112 },
  pump: { x: 622, y: 448, r: 26 },
  runs: {
    suction: [
      [496, 448],
      [596, 448],
    ],
    delivery: [
      [648, 448],
      [884, 448],
      [884, 200],
      [850, 200],
    ],
    transfer: [
      [700, 152],
      [254, 152],
    ],
    back: [
      [225, 350],
      [225, 448],
      [372, 448],
    ],
  },
  charge: { x: 775, from: 40, to: 316 },
  airFrom: 60,
  tags: {
    chargeHot: { x: 796, y: 40, anchor: 'start' },
    chargeCold: { x: 754, y: 280, anchor: 'end' },
    chargeHeat: { x: 686, y: 196, anchor: 'end' },
    toFront: { x: 478, y: 92, anchor: 'middle' },
    fromFront: { x: 246, y: 388, anchor: 'start' },
    frontHeat: { x: 300, y: 216, anchor: 'start' },
    ambient: { x: 20, y: 60, anchor: 'start' },
    reservoir: { x: 434, y: 300, anchor: 'middle' },
    suction: { x: 546, y: 496, anchor: 'middle' },
    pump: { x: 622, y: 362, anchor: 'middle' },
    toCooler: { x: 776, y: 388, anchor: 'middle' },
  },
};

export const NARROW: Drawing = {
  width: 330,
  height: 700,
  front: { x: 40, y: 210, w: 42, h: 170 },
  cooler: { x: 196, y: 112, w: 96, h: 70 },
  reservoir: { x: 30, y: 540, w: 100, h: 96 },
  pump: { x: 216, y: 610, r: 20 },
  runs: {
    suction: [
      [130, 610],
      [196, 610],
    ],
    delivery: [
      [236, 610],
      [314, 610],
      [314, 164],
      [292, 164],
    ],
    transfer: [
      [196, 130],
      [61, 130],
      [61, 202],
    ],
    back: [
      [61, 388],
      [61, 540],
    ],
  },
  charge: { x: 244, from: 30, to: 262 },
  airFrom: 4,
  tags: {
    chargeHot: { x: 232, y: 30, anchor: 'end' },
    chargeCold: { x: 232, y: 220, anchor: 'end' },
    chargeHeat: { x: 190, y: 156, anchor: 'end' },
    toFront: { x: 8, y: 76, anchor: 'start' },
    fromFront: { x: 76, y: 462, anchor: 'start' },
    frontHeat: { x: 122, y: 318, anchor: 'start' },
    ambient: { x: 76, y: 402, anchor: 'start' },
    reservoir: { x: 30, y: 658, anchor: 'start' },
    suction: { x: 150, y: 658, anchor: 'start' },
    pump: { x: 216, y: 544, anchor: 'middle' },
    toCooler: { x: 303, y: 470, anchor: 'end' },
  },
};

/** SVG path through the corners of a run. */
export function runPath(corners: readonly Corner[]): string {
  return corners.map(([x, y], i) => `${i ? 'L' : 'M'}${x} ${y}`).join('');
}
