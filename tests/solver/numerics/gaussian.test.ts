import { describe, expect, it } from 'vitest';
import { SolverError } from '$lib/solver/errors';
import { logDensity, logSum } from '$lib/solver/numerics/gaussian';
import { seededRandom } from '$lib/solver/numerics/random';

describe('density of residuals', () => {
  // Source: ordinates of the standard normal, Abramowitz & Stegun, table 26.1.
  it.each([
    [0, 0.39894228],
    [1, 0.24197072],
    [2, 0.05399097],
  ])('at %d sigma is that of the table', (z, ordinate) => {
    expect(Math.abs(Math.exp(logDensity([z], [1], [])) - ordinate)).toBeLessThan(5e-9);
  });

  it('with shared errors is the bivariate normal written out', () => {
    // Closed form of any statistics text: 1/(2π√D) exp(-(c22 r1² - 2 c12 r1 r2 + c11 r2²)/(2D)).
    const [r1, r2] = [0.7, -1.1];
    const [u, w] = [
      [0.8, 0.5],
      [-0.3, 1.2],
    ] as const;
    const c11 = 2 + u[0] * u[0] + w[0] * w[0];
    const c22 = 0.5 + u[1] * u[1] + w[1] * w[1];
    const c12 = u[0] * u[1] + w[0] * w[1];
    const D = c11 * c22 - c12 * c12;
    const square = (c22 * r1 * r1 - 2 * c12 * r1 * r2 + c11 * r2 * r2) / D;
    const expected = -Math.log(2 * Math.PI * Math.sqrt(D)) - square / 2;
    expect(logDensity([r1, r2], [2, 0.5], [u, w])).toBeCloseTo(expected, 12);
  });

  it('does not depend on the order of three shared errors', () => {
    const [a, b, c] = [
      [1, 0.2, 0.4],
      [0.3, 0.9, -0.2],
      [-0.5, 0.1, 0.7],
    ];
    const of = (...shared: number[][]) => logDensity([1, -2, 0.5], [1, 2, 0.3], shared);
    expect(of(a!, b!, c!)).toBeCloseTo(of(c!, a!, b!), 12);
  });

  it('refuses a variance of zero', () => {
    expect(() => logDensity([0], [0], [])).toThrow(SolverError);
    expect(() => logDensity([0], [NaN], [])).toThrow(SolverError);
  });
});

describe('sum of exponentials', () => {
  it('holds where each term alone would vanish', () => {
    expect(logSum([-2000, -2000])).toBeCloseTo(-2000 + Math.log(2), 10);
    expect(logSum([])).toBe(-Infinity);
    expect(logSum([-Infinity, -Infinity])).toBe(-Infinity);
  });
});

describe('random numbers', () => {
  const N = 40_000;
  it('are the same for the same start, others for another', () => {
    const three = (seed: number) => {
      const r = seededRandom(seed);
      return [r.uniform(), r.normal(), r.uniform()];
    };
    expect(three(7)).toEqual(three(7));
    expect(three(7)).not.toEqual(three(8));
  });

  it('have the moments of their laws within four standard errors', () => {
    const r = seededRandom(1);
    const u = Array.from({ length: N }, () => r.uniform());
    const z = Array.from({ length: N }, () => r.normal());
    const mean = (x: number[]) => x.reduce((s, v) => s + v, 0) / N;
    expect(Math.abs(mean(u) - 0.5)).toBeLessThan(4 / Math.sqrt(12 * N));
    expect(Math.abs(mean(z))).toBeLessThan(4 / Math.sqrt(N));
    expect(Math.abs(mean(z.map((v) => v * v)) - 1)).toBeLessThan(4 * Math.sqrt(2 / N));
    // Neighbours do not go together.
    expect(Math.abs(mean(z.map((v, i) => v * z[(i + 1) % N]!)))).toBeLessThan(4 / Math.sqrt(N));
    expect(Math.min(...u)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...u)).toBeLessThan(1);
  });
});
