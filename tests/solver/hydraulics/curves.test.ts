import { describe, expect, it } from 'vitest';
import { coolantProperties } from '../../../src/lib/solver/fluids/coolant';
import {
  endOfCurve,
  pumpCurve,
  systemCurve,
  systemCurveWithin,
} from '../../../src/lib/solver/hydraulics/curves';
import { hydraulicModel } from '../../../src/lib/solver/hydraulics/operatingPoint';
import type { Loop } from '../../../src/lib/solver/loop/types';
import { exampleLoop, foot, gpm, halfAndHalf } from './exampleLoop';

const liquid = coolantProperties(halfAndHalf, 320);
const model = hydraulicModel(exampleLoop);
const driven = (change: Partial<Loop['pump']>) =>
  hydraulicModel({ ...exampleLoop, pump: { ...exampleLoop.pump, ...change } });

describe('curve of the pump', () => {
  // The example's points: 16 ft without flow, none at 11 gal/min.
  it('runs from shut-off to run-out', () => {
    const points = pumpCurve(model.pump, 1);
    expect(points[0]).toEqual([0, 16 * foot]);
    expect(points.at(-1)![0]).toBeCloseTo(11 * gpm, 12);
    expect(points.at(-1)![1]).toBeCloseTo(0, 9);
    points.slice(1).forEach(([, head], i) => expect(head).toBeLessThan(points[i]![1]));
  });
  it('ends where it is told when that comes first', () =>
    expect(pumpCurve(model.pump, 5 * gpm).at(-1)![0]).toBe(5 * gpm));
  it('is not there without volts', () =>
    expect(pumpCurve(driven({ volts: 0 }).pump, 1)).toEqual([]));
  it('never dips below nothing', () => {
    for (const volts of [3, 9, 13.5, 17]) {
      pumpCurve(driven({ volts }).pump, 1).forEach(([, h]) => expect(h).toBeGreaterThanOrEqual(0));
    }
  });
  // Affinity laws: flow goes with speed; two in parallel share it.
  it('its stated end moves with speed and with a second pump in parallel', () => {
    expect(endOfCurve(driven({ volts: 13.5 / 2 }).pump)).toBeCloseTo(5.5 * gpm, 12);
    expect(endOfCurve(driven({ arrangement: 'two-in-parallel' }).pump)).toBeCloseTo(22 * gpm, 12);
  });
});

describe('curve of the loop', () => {
  it('starts at nothing, rises, and meets the pump at the operating point', () => {
    const point = model.operatingPoint(liquid, 320);
    const points = systemCurve(model, liquid, point.flow);
    expect(points[0]).toEqual([0, 0]);
    points.slice(1).forEach(([, head], i) => expect(head).toBeGreaterThan(points[i]![1]));
    expect(points.at(-1)![1] / point.head).toBeCloseTo(1, 9);
  });
  it('goes a fifth above the shut-off head it is drawn for, and no further than it is told', () => {
    const shutOff = 10 * foot;
    const steep = systemCurveWithin(model, liquid, { flowMax: 40 * gpm, shutOff });
    expect(steep.at(-1)![1] / shutOff).toBeCloseTo(1.2, 9);
    const short = systemCurveWithin(model, liquid, { flowMax: 1 * gpm, shutOff });
    expect(short.at(-1)![0]).toBe(1 * gpm);
  });
});
