import { expect, it } from 'vitest';
import { airCp } from '../../../src/lib/solver/air/air';
import {
  faceAirCp,
  faceAirRise,
  freshAirTemperature,
  heldBack,
  heldBackPressure,
} from '../../../src/lib/solver/loop/faceAir';
import { prepareLoop } from '../../../src/lib/solver/loop/prepare';
import { steady } from '../../../src/lib/solver/loop/steady';
import type { Loop } from '../../../src/lib/solver/loop/types';
import { exampleLoop } from '../hydraulics/exampleLoop';

const behindCondenser: Loop = {
  ...exampleLoop,
  airPath: { ...exampleLoop.airPath, stackHeat: 4000 },
};

it('the rate at which the front exchanger is solved is mass flow times this specific heat', () => {
  for (const loop of [exampleLoop, behindCondenser]) {
    const s = steady(prepareLoop(loop), 'traffic');
    const rate = s.air.totalMassFlow * faceAirCp(loop, s.air);
    expect(s.front.C_air / rate).toBeCloseTo(1, 12);
  }
});

it('fresh air is ambient and what stands in front; the face gets more where air comes round', () => {
  const s = steady(prepareLoop(behindCondenser), 'traffic');
  const fresh = freshAirTemperature(behindCondenser, s.air);
  // First law: 4 kW into the air that passes.
  const cp = airCp(exampleLoop.site.ambientTemperature);
  expect(fresh - 305).toBeCloseTo(4000 / (s.air.totalMassFlow * cp), 9);
  expect(faceAirRise(behindCondenser, s.front.airIn)).toBeGreaterThan(fresh - 305);
});

it('a fan that lifts holds nothing back', () => {
  expect(heldBackPressure({ fanPressure: 40 })).toBe(0);
  expect(heldBackPressure({ fanPressure: -40 })).toBe(40);
});

it('a face that gets 3 of 4 is short of a quarter', () => {
  expect(heldBack(3, 4)).toBeCloseTo(0.25, 12);
  expect(heldBack(5, 4)).toBeLessThan(0);
  expect(heldBack(1, 0)).toBe(0);
});
