import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  npshAvailableFormula,
  suctionMarginFormula,
} from '../../../src/lib/solver/suction/formulas';
import { npshAvailable, suctionMargin } from '../../../src/lib/solver/suction/npsh';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('each formula is the plain function, over its range', () => {
  it('suction head available and its margin', () => {
    const side = fc.record({
      p_ambient: between(5e4, 1.1e5),
      p_tank_gauge: between(-2e4, 2e5),
      p_vapour: between(0, 3e5),
      rho: between(900, 1150),
      z: between(-3, 3),
      h_suction: between(0, 20),
    });
    fc.assert(
      fc.property(side, between(0, 5), (x, NPSH_R) => {
        const available = npshAvailable(x);
        expect(Math.abs(npshAvailableFormula.value(x) - available)).toBeLessThan(1e-12);
        expect(suctionMarginFormula.value({ NPSH_A: available, NPSH_R })).toBe(
          suctionMargin({ available, required: NPSH_R }),
        );
      }),
    );
  });
  it('can be typeset', () =>
    expect(npshAvailableFormula.tex()).toContain('\\frac{{p_a} + {p_t} - {p_v}}'));
});
