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
  height: 540,
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
    chargeHot: { x: 792, y: 46, anchor: 'start' },
    chargeCold: { x: 758, y: 284, anchor: 'end' },
    chargeHeat: { x: 686, y: 196, anchor: 'end' },
    toFront: { x: 478, y: 132, anchor: 'middle' },
    fromFront: { x: 240, y: 392, anchor: 'start' },
    frontHeat: { x: 300, y: 216, anchor: 'start' },
    ambient: { x: 30, y: 74, anchor: 'start' },
    reservoir: { x: 434, y: 326, anchor: 'middle' },
    suction: { x: 546, y: 484, anchor: 'middle' },
    pump: { x: 622, y: 382, anchor: 'middle' },
    toCooler: { x: 772, y: 432, anchor: 'middle' },
  },
};

export const NARROW: Drawing = {
  width: 390,
  height: 690,
  front: { x: 92, y: 196, w: 44, h: 190 },
  cooler: { x: 236, y: 118, w: 106, h: 76 },
  reservoir: { x: 44, y: 512, w: 104, h: 100 },
  pump: { x: 244, y: 584, r: 22 },
  runs: {
    suction: [
      [148, 584],
      [222, 584],
    ],
    delivery: [
      [266, 584],
      [364, 584],
      [364, 172],
      [342, 172],
    ],
    transfer: [
      [236, 138],
      [114, 138],
      [114, 196],
    ],
    back: [
      [114, 386],
      [114, 512],
    ],
  },
  charge: { x: 289, from: 40, to: 290 },
  airFrom: 14,
  tags: {
    chargeHot: { x: 276, y: 40, anchor: 'end' },
    chargeCold: { x: 278, y: 262, anchor: 'end' },
    chargeHeat: { x: 228, y: 172, anchor: 'end' },
    toFront: { x: 14, y: 104, anchor: 'start' },
    fromFront: { x: 128, y: 440, anchor: 'start' },
    frontHeat: { x: 186, y: 326, anchor: 'start' },
    ambient: { x: 14, y: 424, anchor: 'start' },
    reservoir: { x: 14, y: 642, anchor: 'start' },
    suction: { x: 184, y: 642, anchor: 'middle' },
    pump: { x: 244, y: 520, anchor: 'middle' },
    toCooler: { x: 356, y: 400, anchor: 'end' },
  },
};

/** SVG path through the corners of a run. */
export function runPath(corners: readonly Corner[]): string {
  return corners.map(([x, y], i) => `${i ? 'L' : 'M'}${x} ${y}`).join('');
}
