/** The loop on a wide page, in both orders. The cores keep their places; reservoir and pump change sides. */
import type { Drawing } from './drawing';

const SHARED = {
  width: 980,
  height: 556,
  front: { x: 196, y: 120, w: 58, h: 230 },
  cooler: { x: 700, y: 130, w: 150, h: 92 },
  charge: { x: 775, from: 40, to: 316 },
  airFrom: 60,
} as const;

const TAGS = {
  chargeHot: { x: 796, y: 40, anchor: 'start' },
  chargeCold: { x: 754, y: 280, anchor: 'end' },
  chargeHeat: { x: 686, y: 196, anchor: 'end' },
  frontHeat: { x: 300, y: 216, anchor: 'start' },
  ambient: { x: 20, y: 60, anchor: 'start' },
} as const;

/** Both ends of the run between the cores, and the cooler's other run. */
const NEAR = {
  frontTop: { x: 346, y: 92, anchor: 'middle' },
  coolerLeft: { x: 596, y: 92, anchor: 'middle' },
  coolerRight: { x: 776, y: 388, anchor: 'middle' },
} as const;

export const COOLER_FIRST: Drawing = {
  ...SHARED,
  reservoir: { x: 372, y: 372, w: 124, h: 112 },
  pump: { x: 622, y: 448, r: 26 },
  pumpName: { x: 646, y: 490, anchor: 'start' },
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
  tags: {
    ...TAGS,
    toCooler: NEAR.coolerRight,
    fromCooler: NEAR.coolerLeft,
    toFront: NEAR.frontTop,
    fromFront: { x: 246, y: 388, anchor: 'start' },
    reservoir: { x: 434, y: 300, anchor: 'middle' },
    suction: { x: 546, y: 496, anchor: 'middle' },
    pump: { x: 622, y: 362, anchor: 'middle' },
  },
};

export const FRONT_FIRST: Drawing = {
  ...SHARED,
  reservoir: { x: 496, y: 372, w: 124, h: 112 },
  pump: { x: 380, y: 448, r: 26 },
  pumpName: { x: 356, y: 490, anchor: 'end' },
  runs: {
    suction: [
      [496, 448],
      [406, 448],
    ],
    delivery: [
      [354, 448],
      [225, 448],
      [225, 350],
    ],
    transfer: [
      [254, 152],
      [700, 152],
    ],
    back: [
      [850, 200],
      [884, 200],
      [884, 448],
      [620, 448],
    ],
  },
  tags: {
    ...TAGS,
    toFront: { x: 204, y: 400, anchor: 'end' },
    fromFront: NEAR.frontTop,
    toCooler: NEAR.coolerLeft,
    fromCooler: NEAR.coolerRight,
    reservoir: { x: 558, y: 300, anchor: 'middle' },
    suction: { x: 451, y: 496, anchor: 'middle' },
    pump: { x: 380, y: 362, anchor: 'middle' },
  },
};
