import { describe, expect, it } from 'vitest';
import { OutOfRangeError } from '../../../src/lib/solver/errors';
import {
  fanLaws,
  headOf,
  hydraulicPower,
  pumpAffinity,
  pumpLoss,
  shaftPower,
} from '../../../src/lib/solver/hydraulics/affinity';

// Source: affinity laws worked by hand; g = 9.80665 m/s².
describe('affinity and fan laws', () => {
  it('a pump at 0.8 of its speed', () => {
    const { Q, H, P } = pumpAffinity({ Q: 0.001, H: 6, P: 100 }, 0.8);
    expect(Q).toBeCloseTo(0.0008, 12);
    expect(H).toBeCloseTo(3.84, 12);
    expect(P).toBeCloseTo(51.2, 12);
  });
  it('a fan at 0.9259 of its speed in thin air', () => {
    const { Q, dp, P } = fanLaws(
      { Q: 1.1, dp: 150, P: 300 },
      { speedRatio: 0.9259259259, densityRatio: 0.95 },
    );
    expect(Q).toBeCloseTo(1.018518519, 8);
    expect(dp).toBeCloseTo(122.1707819, 6);
    expect(P).toBeCloseTo(226.2421887, 6);
  });
  it('hydraulic power', () =>
    expect(hydraulicPower({ rho: 1040, Q: 0.001, H: 5 })).toBeCloseTo(50.99458, 10));
  it('head of a pressure', () => expect(headOf({ dp: 9806.65, rho: 1000 })).toBeCloseTo(1, 12));
  it('shaft power, and what of it the pump loses inside', () => {
    const shaft = { P_hydraulic: 50, efficiency: 0.4 };
    expect(shaftPower(shaft)).toBeCloseTo(125, 12);
    expect(pumpLoss(shaft)).toBeCloseTo(75, 12);
    expect(pumpLoss({ P_hydraulic: 50, efficiency: 1 })).toBe(0);
  });
  it.each([0, -0.2, 1.01, NaN])('refuses an efficiency of %d', (efficiency) =>
    expect(() => shaftPower({ P_hydraulic: 50, efficiency })).toThrow(OutOfRangeError),
  );
});
