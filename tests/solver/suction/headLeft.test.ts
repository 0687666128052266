import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { OutOfRangeError } from '../../../src/lib/solver/errors';
import { headLeft } from '../../../src/lib/solver/suction/headLeft';
import { headLeftFormula } from '../../../src/lib/solver/suction/formulas';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('share of the head that a suction head leaves', () => {
  // Source: definition of NPSH3 (ISO 9906:2012): there the head has fallen by 3 %.
  it('is 0.97 where the suction head equals NPSH3, whatever that is', () => {
    fc.assert(
      fc.property(between(1e-3, 50), (h) => {
        expect(headLeft({ available: h, required: h })).toBeCloseTo(0.97, 14);
      }),
    );
  });
  it('is nothing where the liquid boils ahead of the impeller', () => {
    expect(headLeft({ available: 0, required: 2 })).toBe(0);
    expect(headLeft({ available: -3, required: 2 })).toBe(0);
    expect(headLeft({ available: -3, required: 0 })).toBe(0);
  });
  it('is everything for a pump that needs none', () =>
    expect(headLeft({ available: 0.1, required: 0 })).toBe(1));
  it('never falls as the suction head grows, and stays a share', () => {
    fc.assert(
      fc.property(between(-20, 40), between(-20, 40), between(0, 10), (a, b, required) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        const less = headLeft({ available: low, required });
        const more = headLeft({ available: high, required });
        expect(less).toBeGreaterThanOrEqual(0);
        expect(more).toBeLessThanOrEqual(1);
        expect(more).toBeGreaterThanOrEqual(less);
      }),
    );
  });
  it('has no jump: a millimetre moves it by less than two percent of a pump that needs a metre', () => {
    fc.assert(
      fc.property(between(-1, 5), (available) => {
        const here = headLeft({ available, required: 1 });
        const near = headLeft({ available: available + 1e-3, required: 1 });
        expect(near - here).toBeLessThan(0.02);
      }),
    );
  });
  it('is the formula on the sheet', () => {
    fc.assert(
      fc.property(between(-20, 40), between(0.01, 10), (NPSH_A, NPSH_R) => {
        const x = headLeft({ available: NPSH_A, required: NPSH_R });
        expect(Math.abs(headLeftFormula.value({ NPSH_A, NPSH_R }) - x)).toBeLessThan(1e-13);
      }),
    );
  });
  it('refuses NaN and a need below nothing', () => {
    expect(() => headLeft({ available: NaN, required: 1 })).toThrow(OutOfRangeError);
    expect(() => headLeft({ available: 1, required: -1 })).toThrow(OutOfRangeError);
  });
});
