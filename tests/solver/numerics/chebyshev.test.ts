import { describe, expect, it } from 'vitest';
import { COUNT, NODES, powers, series } from '$lib/solver/numerics/chebyshev';

const termsOf = (f: (x: number) => number) => series(Float64Array.from(NODES, f));

describe('Chebyshev series of nine points', () => {
  it('of exp(x) has the modified Bessel functions as its terms', () => {
    // exp(x) = I_0(1) + 2 sum I_k(1) T_k(x), Abramowitz & Stegun 9.6.34; I_k(1) from its table 9.8 and 9.9.
    const terms = termsOf(Math.exp);
    expect(terms[0]).toBeCloseTo(1.2660658778, 9);
    expect(terms[1]).toBeCloseTo(2 * 0.565159104, 9);
    expect(terms[2]).toBeCloseTo(2 * 0.1357476698, 9);
    // What nine points cannot tell apart folds back onto the lower terms: 2 I_9(1) = 1e-8 at most.
    expect(Math.abs(terms[8]!)).toBeLessThan(3e-7);
  });

  it('knows T_8 for itself: the last term is halved, not doubled', () => {
    const terms = termsOf((x) => Math.cos(8 * Math.acos(x)));
    terms.forEach((term, j) => expect(term).toBeCloseTo(j === 8 ? 1 : 0, 12));
  });

  it('in powers is the polynomial it came from', () => {
    const given = [3, -1, 0.5, 2, -4, 0.25, 1.5, -0.75, 0.125];
    const f = (x: number) => given.reduceRight((sum, c) => sum * x + c, 0);
    const out = new Float64Array(COUNT + 2);
    powers(termsOf(f), out, 2);
    given.forEach((c, p) => expect(out[p + 2]).toBeCloseTo(c, 11));
  });
});
