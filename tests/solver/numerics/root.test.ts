import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { NoRootError } from '$lib/solver/errors';
import { brent } from '$lib/solver/numerics/root';

describe('brent', () => {
  // Roots known in closed form, or to the digits of a mathematical table.
  it.each<[string, (x: number) => number, number, number, number]>([
    ['x^2 - 2', (x) => x * x - 2, 0, 2, Math.SQRT2],
    ['cos x - x (the Dottie number)', (x) => Math.cos(x) - x, 0, 1, 0.7390851332151607],
    ['x e^x - 1 (the omega constant)', (x) => x * Math.exp(x) - 1, 0, 2, 0.5671432904097838],
    ['x^3 - 2x - 5 (Wallis, 1685)', (x) => x ** 3 - 2 * x - 5, 2, 3, 2.0945514815423265],
    ['a step', (x) => (x < 1 / 3 ? -1 : 1), 0, 1, 1 / 3],
    ['a flat crossing', (x) => (x - 0.4) ** 9, 0, 1, 0.4],
  ])('finds the root of %s', (name, f, a, b, root) => {
    // Where the function itself rounds to zero around the root, no method can do better.
    const within = name === 'a flat crossing' ? 1e-2 : 2e-12;
    expect(Math.abs(brent(f, a, b).x - root)).toBeLessThan(within);
    expect(Math.abs(brent(f, b, a).x - root)).toBeLessThan(within);
  });

  it('is far quicker than halving on a smooth function', () => {
    // Halving 2 down to 1e-12 takes 41 steps.
    const { iterations } = brent((x) => Math.exp(x) - 2, 0, 2);
    expect(iterations).toBeLessThan(12);
  });

  it('counts the calls of f', () => {
    let calls = 0;
    const f = (x: number) => {
      calls++;
      return x ** 3 - 2;
    };
    const { iterations } = brent(f, 0, 2);
    expect(calls).toBe(iterations + 2);
    calls = 0;
    expect(brent(f, 0, 2, { fa: -2, fb: 6 }).iterations).toBe(calls);
  });

  it('returns an end that is itself the root', () => {
    expect(brent((x) => x, 0, 5)).toEqual({ x: 0, fx: 0, iterations: 0 });
    expect(brent((x) => x - 5, 0, 5)).toEqual({ x: 5, fx: 0, iterations: 0 });
  });

  it('stays in the bracket, ends on a change of sign and reports f there', () => {
    const real = fc.double({ min: -50, max: 50, noNaN: true });
    fc.assert(
      fc.property(real, real, real, real, (root, stretch, left, right) => {
        const f = (x: number) => Math.atan((x - root) * (1 + Math.abs(stretch)));
        const a = root - Math.abs(left) - 0.01;
        const b = root + Math.abs(right) + 0.01;
        const found = brent(f, a, b);
        expect(Math.abs(found.x - root)).toBeLessThan(1e-11);
        expect(found.fx).toBe(f(found.x));
        expect(found.x).toBeGreaterThanOrEqual(a);
        expect(found.x).toBeLessThanOrEqual(b);
      }),
    );
  });

  it('stops at the tolerance asked for', () => {
    const coarse = brent((x) => Math.exp(x) - 2, 0, 2, { xtol: 1e-3 });
    expect(Math.abs(coarse.x - Math.LN2)).toBeLessThan(1e-3);
    expect(coarse.iterations).toBeLessThan(brent((x) => Math.exp(x) - 2, 0, 2).iterations);
  });

  it('refuses a bracket without a change of sign, and names it', () => {
    expect(() => brent((x) => x * x + 1, -1, 2)).toThrow(NoRootError);
    try {
      brent((x) => x * x + 1, 2, -1);
    } catch (e) {
      expect((e as NoRootError).facts).toMatchObject({ code: 'no-root', range: [-1, 2] });
    }
  });

  it('refuses a function that is not a number, at an end or between', () => {
    expect(() => brent(() => NaN, 0, 1)).toThrow(NoRootError);
    expect(() => brent((x) => (x === 0 ? -1 : x === 1 ? 1 : NaN), 0, 1)).toThrow(NoRootError);
  });

  it('gives up when the iterations run out', () => {
    expect(() => brent((x) => Math.exp(x) - 2, 0, 2, { maxIterations: 3 })).toThrow(NoRootError);
  });

  it('bears an infinite end', () => {
    expect(brent((x) => 1 / x - 4, 0, 1).x).toBeCloseTo(0.25, 10);
  });
});
