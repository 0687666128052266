import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ExchangerArrangement } from '$lib/solver/cores/arrangement';
import { effectiveness, ntuFromEffectiveness } from '$lib/solver/cores/effectiveness';
import { effectivenessFormula, ratedConductance } from '$lib/solver/cores/effectivenessFormulas';

const ALL: readonly ExchangerArrangement[] = [
  'counterflow',
  'parallel',
  'crossflow-both-unmixed',
  'crossflow-both-unmixed-approximate',
  'crossflow-cmin-mixed',
  'crossflow-cmax-mixed',
  'crossflow-both-mixed',
  'shell-and-tube-1-2',
];

describe('the line printed is the relation computed', () => {
  it.each(ALL)('%s', (arrangement) => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 50, noNaN: true }),
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        (NTU, Cr) => {
          const line = effectivenessFormula(arrangement, { NTU, Cr }).value({ NTU, Cr });
          // The textbook form subtracts nearly equal numbers near Cr = 1 and for small NTU: 1e-7 is what is
          // left of a double there (1e-16 over 1e-8); the solver's form keeps all digits.
          expect(Math.abs(line - effectiveness({ arrangement, NTU, Cr }))).toBeLessThan(1e-7);
        },
      ),
    );
  });

  it.each(ALL)('%s has a line where its own form reads 0/0', (arrangement) => {
    for (const [NTU, Cr] of [
      [2, 0],
      [0, 0],
      [0, 1],
      [2, 1],
      [2, 1 - 1e-12],
    ] as const) {
      const line = effectivenessFormula(arrangement, { NTU, Cr }).value({ NTU, Cr });
      expect(line).toBeCloseTo(effectiveness({ arrangement, NTU, Cr }), 8);
    }
  });

  it.each(ALL)('%s, solved for the conductance', (arrangement) => {
    const x = { eps: 0.4, C_min: 500, C_max: 2000 };
    expect(ratedConductance(arrangement).value(x)).toBe(
      500 * ntuFromEffectiveness({ arrangement, effectiveness: x.eps, Cr: 0.25 }),
    );
  });

  it('typesets, and says how to add up the series', () => {
    const line = effectivenessFormula('crossflow-both-unmixed', { NTU: 2, Cr: 0.5 });
    expect(line.tex()).toContain('{NTU},\\; {C_r}');
    expect(line.functions?.crossflow?.says).toContain('Σ');
    // The series as the line tells it, added up with pencil arithmetic at NTU 2, Cr 0.5 (means 2 and 1).
    const tail = (n: number, x: number) => {
      let term = 1;
      let sum = 1;
      for (let k = 1; k <= n; k++) {
        term *= x / k;
        sum += term;
      }
      return 1 - Math.exp(-x) * sum;
    };
    let eps = 0;
    for (let n = 0; n < 30; n++) eps += tail(n, 2) * tail(n, 1);
    expect(line.value({ NTU: 2, Cr: 0.5 })).toBeCloseTo(eps / (0.5 * 2), 12);
  });
});
