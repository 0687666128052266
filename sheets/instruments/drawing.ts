/** Where the numbers of the plan stand on the drawing of the loop, for a wide and a narrow page. */
import { NARROW, WIDE, type Drawing } from '../loop-balance/drawing';
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

export const WIDE_PLAN: PlanDrawing = {
  loop: WIDE,
  r: 17,
  spots: {
    reservoir: [434, 446],
    volts: [622, 512],
    amps: [622, 552],
    frontIn: [306, 152],
    frontOut: [225, 392],
    flow: [300, 448],
    faceAir: [172, 235],
    ambient: [62, 235],
    chargeAfter: [775, 276],
    chargeBefore: [775, 84],
    coolerIn: [884, 264],
    coolerOut: [650, 152],
    pumpOutlet: [708, 448],
    pumpInlet: [546, 448],
    barometer: [62, 486],
  },
  feed: [622, 590],
  names: {
    front: [196, 96],
    cooler: [664, 246],
    reservoir: [434, 508],
    pump: [660, 492],
    feed: [644, 580],
    shop: [88, 492],
    air: [24, 204],
  },
};

export const NARROW_PLAN: PlanDrawing = {
  loop: NARROW,
  r: 12.5,
  spots: {
    reservoir: [80, 600],
    volts: [216, 652],
    amps: [216, 684],
    frontIn: [61, 168],
    frontOut: [61, 424],
    flow: [61, 480],
    faceAir: [22, 330],
    ambient: [22, 252],
    chargeAfter: [244, 226],
    chargeBefore: [244, 74],
    coolerIn: [314, 230],
    coolerOut: [150, 130],
    pumpOutlet: [276, 610],
    pumpInlet: [163, 610],
    barometer: [20, 690],
  },
  feed: [216, 712],
  names: {
    front: [96, 300],
    cooler: [176, 204],
    reservoir: [80, 656],
    pump: [238, 588],
    feed: [236, 706],
    shop: [38, 695],
    air: [4, 214],
  },
};
