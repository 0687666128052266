import { describe, expect, it } from 'vitest';
import { OutOfRangeError } from '$lib/solver/errors';
import { chiSquareAbove, logGamma } from '$lib/solver/numerics/chiSquare';

describe('chi-square', () => {
  // Percentage points as every table prints them (Abramowitz & Stegun, table 26.8; from memory).
  it.each([
    [0.05, 1, 3.841],
    [0.05, 2, 5.991],
    [0.05, 3, 7.815],
    [0.05, 5, 11.07],
    [0.05, 10, 18.307],
    [0.01, 1, 6.635],
    [0.01, 4, 13.277],
    [0.95, 3, 0.352],
    [0.5, 1, 0.455],
    [0.005, 20, 39.997],
  ])('is above its %d point at %d degrees of freedom: %d', (p, freedom, x) => {
    const half = x < 1 || x > 11 ? 0.0005 + (x === 11.07 ? 0.0045 : 0) : 0.0005;
    // The table prints x to half a unit of its last place; p lies between those of its ends.
    expect(chiSquareAbove(x - half, freedom)).toBeGreaterThanOrEqual(p);
    expect(chiSquareAbove(x + half, freedom)).toBeLessThanOrEqual(p);
  });
  it('with two degrees of freedom is an exponential, exactly', () => {
    for (const x of [1e-6, 0.1, 1, 3, 10, 60, 300]) {
      expect(chiSquareAbove(x, 2) / Math.exp(-x / 2)).toBeCloseTo(1, 12);
    }
  });
  it('falls from one to nothing', () => {
    expect(chiSquareAbove(0, 7)).toBe(1);
    for (let x = 0; x < 80; x += 0.5) {
      expect(chiSquareAbove(x + 0.5, 7)).toBeLessThan(chiSquareAbove(x, 7));
    }
    expect(chiSquareAbove(2000, 7)).toBeLessThan(1e-300);
  });
  it('refuses what it is not defined for', () => {
    expect(() => chiSquareAbove(-1, 2)).toThrow(OutOfRangeError);
    expect(() => chiSquareAbove(NaN, 2)).toThrow(OutOfRangeError);
    expect(() => chiSquareAbove(1, 0)).toThrow(OutOfRangeError);
  });
});

it('gamma: factorials, and the root of pi at one half', () => {
  let factorial = 1;
  for (let n = 1; n <= 20; n++) {
    expect(Math.abs(logGamma(n) - Math.log(factorial))).toBeLessThan(1e-12);
    factorial *= n;
  }
  expect(logGamma(0.5)).toBeCloseTo(Math.log(Math.sqrt(Math.PI)), 13);
  expect(() => logGamma(0)).toThrow(OutOfRangeError);
});
