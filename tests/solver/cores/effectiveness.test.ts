import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OutOfRangeError } from '$lib/solver/errors';
import type { ExchangerArrangement } from '$lib/solver/cores/arrangement';
import {
  effectiveness,
  effectivenessMax,
  effectivenessMultipass,
  ntuFromEffectiveness,
} from '$lib/solver/cores/effectiveness';

const ALL = [
  'counterflow',
  'parallel',
  'crossflow-both-unmixed',
  'crossflow-both-unmixed-approximate',
  'crossflow-cmin-mixed',
  'crossflow-cmax-mixed',
  'crossflow-both-mixed',
  'shell-and-tube-1-2',
] as const satisfies readonly ExchangerArrangement[];
const RISING = ALL.filter((a) => a !== 'crossflow-both-mixed');

const anyNTU = fc.double({ min: 0, max: 50, noNaN: true });
const anyCr = fc.double({ min: 0, max: 1, noNaN: true });
const rounding = 1e-13;

describe('effectiveness against published values', () => {
  // Source: ht 1.0.7 (second implementation) and, for both unmixed, three independent routes that agree:
  // quadrature of the exact integral, Poisson series, Bessel series. Ten digits as printed there.
  it.each([
    ['counterflow', 4, 0.75, 0.8729856688],
    ['parallel', 4, 0.75, 0.570907496],
    ['crossflow-both-unmixed', 0.1, 0.5, 0.09293588397],
    ['crossflow-both-unmixed', 2, 1, 0.6142472393],
    ['crossflow-both-unmixed', 10, 1, 0.8227134659],
    ['crossflow-both-unmixed', 10, 0.1, 0.999260247],
    ['crossflow-cmin-mixed', 4, 0.75, 0.7183106963],
    ['crossflow-cmax-mixed', 4, 0.75, 0.6947998718],
    ['crossflow-both-mixed', 1.5, 0.6, 0.6128874666],
    ['crossflow-both-unmixed-approximate', 2, 0.5, 0.7387584625],
    ['shell-and-tube-1-2', 2, 0.5, 0.6930921317],
  ] as const)('%s at NTU %d, Cr %d', (arrangement, NTU, Cr, printed) => {
    expect(Math.abs(effectiveness({ arrangement, NTU, Cr }) - printed)).toBeLessThanOrEqual(1e-10);
  });

  // Source: Poisson series summed in 40-digit arithmetic (mpmath). The last four cross the switch to the window.
  it.each([
    [3, 0.5, 0.81970828046250983],
    [50, 1, 0.92031146767577306],
    [149.999, 1, 0.95395316618306582],
    [150, 1, 0.95395331954464559],
    [500, 1, 0.97477182928718011],
    [5000, 1, 0.99202125412941161],
  ])('both unmixed at NTU %d, Cr %d to rounding', (NTU, Cr, exact) => {
    const got = effectiveness({ arrangement: 'crossflow-both-unmixed', NTU, Cr });
    expect(Math.abs(got - exact)).toBeLessThan(rounding);
  });

  it('both unmixed agrees with marching the heat balances over the face, a second route', () => {
    // The two first-order heat balances marched over the face cell by cell (midpoint rule, second order),
    // then extrapolated once.
    const march = (a: number, b: number, n: number) => {
      const cold = new Float64Array(n); // cold temperature entering each strip of the current row
      let mean = 0;
      for (let i = 0; i < n; i++) {
        let hot = 1;
        for (let j = 0; j < n; j++) {
          // One cell: equal mean difference drives both streams, a/n and b/n each.
          const A = a / n;
          const B = b / n;
          const q = (hot - cold[j]!) / (1 + A / 2 + B / 2);
          hot -= A * q;
          cold[j]! += B * q;
        }
        mean += hot / n;
      }
      return 1 - mean;
    };
    for (const [NTU, Cr] of [
      [1, 0.5],
      [2, 1],
      [4, 0.75],
    ] as const) {
      const [coarse, fine] = [march(NTU, Cr * NTU, 200), march(NTU, Cr * NTU, 400)];
      const limit = fine + (fine - coarse) / 3;
      const got = effectiveness({ arrangement: 'crossflow-both-unmixed', NTU, Cr });
      expect(Math.abs(got - limit)).toBeLessThan(1e-7); // error of the grid, fourth order left over
    }
  });

  it('the textbook fit lies up to 3.8 % below the exact series at NTU 0.3, Cr 1', () => {
    // Source: independent comparison of fit and series; printed to two digits.
    const at = { NTU: 0.3, Cr: 1 };
    const fit = effectiveness({ arrangement: 'crossflow-both-unmixed-approximate', ...at });
    const exact = effectiveness({ arrangement: 'crossflow-both-unmixed', ...at });
    expect(((exact - fit) / exact) * 100).toBeCloseTo(3.8, 1);
  });
});

describe('laws every arrangement obeys', () => {
  it.each(ALL)('%s lies between 0 and 1 and is 1 - e^-NTU at Cr 0', (arrangement) => {
    fc.assert(
      fc.property(anyNTU, anyCr, (NTU, Cr) => {
        const eps = effectiveness({ arrangement, NTU, Cr });
        expect(eps).toBeGreaterThanOrEqual(0);
        expect(eps).toBeLessThanOrEqual(1);
        const oneStream = effectiveness({ arrangement, NTU, Cr: 0 });
        expect(Math.abs(oneStream + Math.expm1(-NTU))).toBeLessThan(rounding);
      }),
    );
  });

  it.each(RISING)('%s rises with NTU', (arrangement) => {
    fc.assert(
      fc.property(anyNTU, anyNTU, anyCr, (a, b, Cr) => {
        const low = effectiveness({ arrangement, NTU: Math.min(a, b), Cr });
        const high = effectiveness({ arrangement, NTU: Math.max(a, b), Cr });
        expect(high).toBeGreaterThanOrEqual(low - rounding);
      }),
    );
  });

  it.each(ALL)('%s falls with Cr', (arrangement) => {
    fc.assert(
      fc.property(anyNTU, anyCr, anyCr, (NTU, a, b) => {
        const low = effectiveness({ arrangement, NTU, Cr: Math.max(a, b) });
        const high = effectiveness({ arrangement, NTU, Cr: Math.min(a, b) });
        expect(high).toBeGreaterThanOrEqual(low - rounding);
      }),
    );
  });

  it.each([
    'crossflow-both-unmixed',
    'crossflow-cmin-mixed',
    'crossflow-cmax-mixed',
    'shell-and-tube-1-2',
  ] as const)('%s lies between parallel and counterflow', (arrangement) => {
    fc.assert(
      fc.property(anyNTU, anyCr, (NTU, Cr) => {
        const eps = effectiveness({ arrangement, NTU, Cr });
        expect(eps).toBeLessThanOrEqual(
          effectiveness({ arrangement: 'counterflow', NTU, Cr }) + rounding,
        );
        expect(eps).toBeGreaterThanOrEqual(
          effectiveness({ arrangement: 'parallel', NTU, Cr }) - rounding,
        );
      }),
    );
  });

  it('with both streams mixed more surface can carry less heat', () => {
    // Known of the relation: Kays & London's chart bends down for Cr near 1.
    const at = (NTU: number) => effectiveness({ arrangement: 'crossflow-both-mixed', NTU, Cr: 1 });
    expect(at(10)).toBeLessThan(at(4));
  });

  it('refuses what is outside, NaN included', () => {
    for (const [NTU, Cr] of [
      [NaN, 0.5],
      [1, NaN],
      [-0.1, 0.5],
      [1, 1.01],
      [Infinity, 0],
    ] as const) {
      expect(() => effectiveness({ arrangement: 'counterflow', NTU, Cr })).toThrow(OutOfRangeError);
    }
  });
});

describe('NTU from effectiveness', () => {
  it.each(RISING)('%s: the inverse brings NTU back', (arrangement) => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 12, noNaN: true }), anyCr, (NTU, Cr) => {
        const eps = effectiveness({ arrangement, NTU, Cr });
        fc.pre(effectivenessMax(arrangement, Cr) - eps > 1e-6); // near its limit eps no longer tells NTU
        const back = ntuFromEffectiveness({ arrangement, effectiveness: eps, Cr });
        expect(effectiveness({ arrangement, NTU: back, Cr })).toBeCloseTo(eps, 12);
        // 1e-6 of the range left and 1e-16 of rounding: ten digits of NTU are lost at worst.
        expect(Math.abs(back - NTU)).toBeLessThan(1e-8 * Math.max(1, NTU));
      }),
    );
  });

  it('both mixed: the answer lies on the rising side of the peak', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 2, noNaN: true }), anyCr, (NTU, Cr) => {
        const eps = effectiveness({ arrangement: 'crossflow-both-mixed', NTU, Cr });
        const back = ntuFromEffectiveness({
          arrangement: 'crossflow-both-mixed',
          effectiveness: eps,
          Cr,
        });
        expect(back).toBeCloseTo(NTU, 8);
      }),
    );
  });

  it.each(ALL)('%s refuses what no surface can reach', (arrangement) => {
    const most = effectivenessMax(arrangement, 0.8);
    expect(() =>
      ntuFromEffectiveness({ arrangement, effectiveness: most * 1.001, Cr: 0.8 }),
    ).toThrow(OutOfRangeError);
    expect(() => ntuFromEffectiveness({ arrangement, effectiveness: NaN, Cr: 0.8 })).toThrow(
      OutOfRangeError,
    );
    for (const Cr of [0, 0.8, 1]) {
      expect(() => ntuFromEffectiveness({ arrangement, effectiveness: 1, Cr })).toThrow(
        OutOfRangeError,
      );
    }
    expect(ntuFromEffectiveness({ arrangement, effectiveness: 0, Cr: 0.8 })).toBe(0);
  });
});

it('equal crossflow streams: the inverse follows up to where it says it stops', () => {
  const back = (eps: number) =>
    ntuFromEffectiveness({ arrangement: 'crossflow-both-unmixed', effectiveness: eps, Cr: 1 });
  // For large NTU the shortfall tends to 1 / sqrt(pi NTU): expected |difference| of two equal Poisson counts.
  expect(back(0.999) * Math.PI * 0.001 ** 2).toBeCloseTo(1, 3);
  expect(() => back(0.9999)).toThrow(OutOfRangeError);
});

describe('passes in overall counterflow', () => {
  it('one pass is the pass itself, and counterflow passes make counterflow', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 8, noNaN: true }), anyCr, (NTU, Cr) => {
        const one = effectivenessMultipass({
          arrangement: 'crossflow-both-unmixed',
          NTU,
          Cr,
          passes: 1,
        });
        expect(one).toBeCloseTo(
          effectiveness({ arrangement: 'crossflow-both-unmixed', NTU, Cr }),
          11,
        );
        const three = effectivenessMultipass({ arrangement: 'counterflow', NTU, Cr, passes: 3 });
        expect(three).toBeCloseTo(effectiveness({ arrangement: 'counterflow', NTU, Cr }), 11);
      }),
    );
  });

  it('crossflow passes tend to counterflow as their number grows', () => {
    const limit = effectiveness({ arrangement: 'counterflow', NTU: 2, Cr: 0.9 });
    const gap = (passes: number) =>
      limit -
      effectivenessMultipass({ arrangement: 'crossflow-both-unmixed', NTU: 2, Cr: 0.9, passes });
    expect(gap(1)).toBeGreaterThan(gap(2));
    expect(gap(2)).toBeGreaterThan(gap(4));
    expect(gap(20)).toBeGreaterThan(0);
    expect(gap(20)).toBeLessThan(gap(1) / 10);
  });
});
