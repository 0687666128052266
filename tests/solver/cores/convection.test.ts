import { describe, expect, it } from 'vitest';
import { OutOfRangeError } from '$lib/solver/errors';
import {
  NUSSELT_LAMINAR,
  nusseltDittusBoelter,
  nusseltGnielinski,
  nusseltHausen,
  nusseltSiederTate,
} from '$lib/solver/cores/convection';

// Source of the values: ht 1.0.7 conv_internal, each checked there against the printed formula, ten digits.
const relative = (got: number, expected: number) => Math.abs(got / expected - 1);
const WITHIN = 1e-9;

describe('turbulent', () => {
  it.each([
    [3000, 7, 0.04555910433, 22.46709443],
    [5000, 25, 0.03861947266, 63.00522259],
    [10000, 0.71, 0.03147980276, 30.02784855],
    [50000, 10, 0.02095764667, 381.2322025],
    [10000, 12, 0.034, 101.7357635],
    [40000, 3, 0.025, 206.9410833],
  ])('Gnielinski at Re %d, Pr %d', (Re, Pr, f, Nu) => {
    expect(relative(nusseltGnielinski({ Re, Pr, f }), Nu)).toBeLessThan(WITHIN);
  });

  it.each([
    [10000, 0.71, 'heated', 31.78565575],
    [20000, 15, 'cooled', 143.0142162],
    [100000, 4, 'heated', 400.4532591],
    [60000, 7, 'cooled', 274.0174676],
  ] as const)('Dittus-Boelter at Re %d, Pr %d, %s', (Re, Pr, liquidIs, Nu) => {
    expect(relative(nusseltDittusBoelter({ Re, Pr, liquidIs }), Nu)).toBeLessThan(WITHIN);
  });

  it('neither law speaks of flow that is not turbulent', () => {
    expect(() => nusseltGnielinski({ Re: 2500, Pr: 7, f: 0.04 })).toThrow(OutOfRangeError);
    expect(() => nusseltGnielinski({ Re: NaN, Pr: 7, f: 0.04 })).toThrow(OutOfRangeError);
    expect(() => nusseltDittusBoelter({ Re: 5000, Pr: 7, liquidIs: 'heated' })).toThrow(
      OutOfRangeError,
    );
  });
});

describe('laminar', () => {
  it('developed: what the handbooks print', () => {
    // Source: Bergman et al., ch. 8: 3.66 and 4.36.
    expect(NUSSELT_LAMINAR['constant-temperature']).toBeCloseTo(3.66, 2);
    expect(NUSSELT_LAMINAR['constant-flux']).toBeCloseTo(4.36, 2);
  });

  it.each([
    [800, 30, 0.01, 0.5, 12.94801668],
    [1500, 12, 0.002, 0.4, 6.993851747],
    [300, 50, 0.003, 0.6, 6.587464339],
  ])('Hausen at Re %d, Pr %d', (Re, Pr, D, L, Nu) => {
    expect(relative(nusseltHausen({ Re, Pr, D, L }), Nu)).toBeLessThan(WITHIN);
  });

  it.each([
    [900, 25, 0.008, 0.4, 14.25335544],
    [1600, 10, 0.01, 0.3, 15.08386095],
  ])('Sieder-Tate at Re %d, Pr %d', (Re, Pr, D, L, Nu) => {
    expect(relative(nusseltSiederTate({ Re, Pr, D, L, viscosityRatio: 1 }), Nu)).toBeLessThan(
      WITHIN,
    );
  });

  it('Sieder-Tate refuses a tube so long that it would fall below the developed value', () => {
    expect(() => nusseltSiederTate({ Re: 100, Pr: 5, D: 0.005, L: 1, viscosityRatio: 1 })).toThrow(
      OutOfRangeError,
    );
    expect(() => nusseltHausen({ Re: 3000, Pr: 5, D: 0.005, L: 1 })).toThrow(OutOfRangeError);
  });
});
