/** Where the numbers of the plan stand on the drawing of the loop, in either order, wide and narrow. */
import type { Drawing, Drawn } from '../loop-balance/drawing';
import { DRAWINGS } from '../loop-balance/drawings';
import type { PlaceId } from './places';

type Spot = readonly [x: number, y: number];

export interface PlanDrawing {
  readonly loop: Drawing;
  /** Radius of a number's disc. */
  readonly r: number;
  readonly spots: Readonly<Record<PlaceId, Spot>>;
  /** Feed of the pump, from the corner it comes from to the pump. */
  readonly feed: Spot;
  readonly names: Readonly<
    Record<'front' | 'cooler' | 'reservoir' | 'pump' | 'feed' | 'shop' | 'air', Spot>
  >;
}

const WIDE_SPOTS = {
  faceAir: [172, 235],
  ambient: [62, 235],
  chargeAfter: [775, 276],
  chargeBefore: [775, 84],
  barometer: [62, 486],
} as const;

const WIDE_NAMES = {
  front: [196, 96],
  cooler: [664, 246],
  shop: [88, 492],
  air: [24, 204],
} as const;

const WIDE_COOLER_FIRST: PlanDrawing = {
  loop: DRAWINGS['cooler-first'].wide,
  r: 17,
  spots: {
    ...WIDE_SPOTS,
    reservoir: [434, 446],
    volts: [622, 512],
    amps: [622, 552],
    frontIn: [306, 152],
    frontOut: [225, 392],
    flow: [300, 448],
    coolerIn: [884, 264],
    coolerOut: [650, 152],
    pumpOutlet: [708, 448],
    pumpInlet: [546, 448],
  },
  feed: [622, 590],
  names: { ...WIDE_NAMES, reservoir: [434, 508], pump: [660, 492], feed: [644, 580] },
};

const WIDE_FRONT_FIRST: PlanDrawing = {
  loop: DRAWINGS['front-first'].wide,
  r: 17,
  spots: {
    ...WIDE_SPOTS,
    reservoir: [558, 446],
    volts: [380, 512],
    amps: [380, 552],
    frontIn: [225, 392],
    frontOut: [306, 152],
    flow: [776, 448],
    coolerIn: [650, 152],
    coolerOut: [884, 264],
    pumpOutlet: [300, 448],
    pumpInlet: [454, 448],
  },
  feed: [380, 590],
  names: { ...WIDE_NAMES, reservoir: [558, 508], pump: [310, 492], feed: [402, 580] },
};

const NARROW_SPOTS = {
  faceAir: [22, 330],
  ambient: [22, 252],
  chargeAfter: [244, 226],
  chargeBefore: [244, 74],
} as const;

const NARROW_NAMES = { front: [96, 300], cooler: [176, 204], air: [4, 214] } as const;

const NARROW_COOLER_FIRST: PlanDrawing = {
  loop: DRAWINGS['cooler-first'].narrow,
  r: 12.5,
  spots: {
    ...NARROW_SPOTS,
    reservoir: [80, 600],
    volts: [216, 652],
    amps: [216, 684],
    frontIn: [61, 168],
    frontOut: [61, 424],
    flow: [61, 480],
    coolerIn: [314, 230],
    coolerOut: [150, 130],
    pumpOutlet: [276, 610],
    pumpInlet: [163, 610],
    barometer: [20, 690],
  },
  feed: [216, 712],
  names: {
    ...NARROW_NAMES,
    reservoir: [80, 656],
    pump: [238, 588],
    feed: [236, 706],
    shop: [38, 695],
  },
};

const NARROW_FRONT_FIRST: PlanDrawing = {
  loop: DRAWINGS['front-first'].narrow,
  r: 12.5,
  spots: {
    ...NARROW_SPOTS,
    reservoir: [226, 600],
    volts: [61, 652],
    amps: [61, 684],
    frontIn: [61, 424],
    frontOut: [61, 168],
    flow: [314, 480],
    coolerIn: [150, 130],
    coolerOut: [314, 230],
    pumpOutlet: [61, 548],
    pumpInlet: [126, 610],
    barometer: [200, 690],
  },
  feed: [61, 712],
  names: {
    ...NARROW_NAMES,
    reservoir: [226, 656],
    pump: [84, 588],
    feed: [81, 706],
    shop: [218, 695],
  },
};

export const PLANS: Drawn<PlanDrawing> = {
  'cooler-first': { wide: WIDE_COOLER_FIRST, narrow: NARROW_COOLER_FIRST },
  'front-first': { wide: WIDE_FRONT_FIRST, narrow: NARROW_FRONT_FIRST },
};
