import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as formulas from '$lib/solver/loop/formulas';
import {
  lumpedTemperature,
  settleTemperature,
  timeConstant,
  timeToReach,
} from '$lib/solver/loop/lumped';

const mass = fc.record({
  C: fc.double({ min: 1e3, max: 1e5, noNaN: true }),
  G: fc.double({ min: 20, max: 2000, noNaN: true }),
  Q: fc.double({ min: 0, max: 3e4, noNaN: true }),
  T_surroundings: fc.double({ min: 250, max: 330, noNaN: true }),
  T0: fc.double({ min: 250, max: 400, noNaN: true }),
});

describe('the lines compute what the functions compute', () => {
  it('time constant', () => {
    fc.assert(
      fc.property(mass, ({ C, G }) => {
        expect(formulas.timeConstantFormula.value({ C, G })).toBe(timeConstant({ C, G }));
      }),
    );
  });

  it('temperature after a time', () => {
    fc.assert(
      fc.property(mass, fc.double({ min: 0, max: 5000, noNaN: true }), (m, t) => {
        const x = { T_s: settleTemperature(m), T_0: m.T0, t, tau: timeConstant(m) };
        // Two forms of one law: differences of temperatures near 1e3 K, rounded.
        const scale = Math.abs(x.T_s) + m.T0;
        const difference = formulas.temperatureAfter.value(x) - lumpedTemperature(m, t);
        expect(Math.abs(difference)).toBeLessThan(1e-11 * scale);
      }),
    );
  });

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
