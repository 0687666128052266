/** The loop on a narrow page, in both orders. The cores keep their places; reservoir and pump change sides. */
import type { Drawing } from './drawing';

const SHARED = {
  width: 330,
  height: 700,
  front: { x: 40, y: 210, w: 42, h: 170 },
  cooler: { x: 196, y: 112, w: 96, h: 70 },
  charge: { x: 244, from: 30, to: 262 },
  airFrom: 4,
} as const;

const TAGS = {
  chargeHot: { x: 232, y: 30, anchor: 'end' },
  chargeCold: { x: 232, y: 220, anchor: 'end' },
  chargeHeat: { x: 190, y: 156, anchor: 'end' },
  frontHeat: { x: 122, y: 318, anchor: 'start' },
  ambient: { x: 76, y: 402, anchor: 'start' },
} as const;

/** Both ends of the run between the cores, and the outer end of either core's other run. */
const NEAR = {
  frontTop: { x: 8, y: 74, anchor: 'start' },
  frontFoot: { x: 76, y: 462, anchor: 'start' },
  coolerLeft: { x: 232, y: 74, anchor: 'end' },
  coolerRight: { x: 303, y: 470, anchor: 'end' },
} as const;

export const COOLER_FIRST: Drawing = {
  ...SHARED,
  reservoir: { x: 30, y: 540, w: 100, h: 96 },
  pump: { x: 216, y: 610, r: 20 },
  pumpName: { x: 240, y: 642, anchor: 'start' },
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
      [61, 210],
    ],
    back: [
      [61, 380],
      [61, 540],
    ],
  },
  tags: {
    ...TAGS,
    toCooler: NEAR.coolerRight,
    fromCooler: NEAR.coolerLeft,
    toFront: NEAR.frontTop,
    fromFront: NEAR.frontFoot,
    reservoir: { x: 30, y: 658, anchor: 'start' },
    suction: { x: 150, y: 658, anchor: 'start' },
    pump: { x: 216, y: 544, anchor: 'middle' },
  },
};

export const FRONT_FIRST: Drawing = {
  ...SHARED,
  reservoir: { x: 176, y: 540, w: 100, h: 96 },
  pump: { x: 61, y: 610, r: 20 },
  pumpName: { x: 78, y: 590, anchor: 'start' },
  runs: {
    suction: [
      [176, 610],
      [81, 610],
    ],
    delivery: [
      [61, 590],
      [61, 380],
    ],
    transfer: [
      [61, 210],
      [61, 130],
      [196, 130],
    ],
    back: [
      [292, 164],
      [314, 164],
      [314, 610],
      [276, 610],
    ],
  },
  tags: {
    ...TAGS,
    toFront: NEAR.frontFoot,
    fromFront: NEAR.frontTop,
    toCooler: NEAR.coolerLeft,
    fromCooler: NEAR.coolerRight,
    reservoir: { x: 236, y: 658, anchor: 'start' },
    suction: { x: 130, y: 658, anchor: 'start' },
    pump: { x: 8, y: 658, anchor: 'start' },
  },
};
