import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as formulas from '$lib/solver/loop/formulas';
import { settleTemperature, timeConstant, timeToReach } from '$lib/solver/loop/lumped';

const mass = fc.record({
  C: fc.double({ min: 1e3, max: 1e5, noNaN: true }),
  G: fc.double({ min: 60, max: 2000, noNaN: true }),
  Q: fc.double({ min: 0, max: 3e4, noNaN: true }),
  T_surroundings: fc.double({ min: 250, max: 330, noNaN: true }),
  T0: fc.double({ min: 250, max: 400, noNaN: true }),
});

describe('the lines compute what the functions compute', () => {
  it('time to reach', () => {
    fc.assert(
      fc.property(mass, fc.double({ min: 0.05, max: 0.95, noNaN: true }), (m, share) => {
        const T_s = settleTemperature(m);
        fc.pre(Math.abs(T_s - m.T0) > 1);
        const T_1 = m.T0 + share * (T_s - m.T0);
        const tau = timeConstant(m);
        const line = formulas.timeToReachFormula.value({ tau, T_s, T_0: m.T0, T_1 });
        expect(Math.abs(line - timeToReach(m, T_1)!)).toBeLessThan(1e-9 * tau);
      }),
    );
  });

  it('approach is a difference', () => {
    expect(formulas.approachFormula.value({ T_res: 320.5, T_amb: 305 })).toBe(15.5);
  });
});
