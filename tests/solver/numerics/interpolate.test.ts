import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InvalidInputError, OutOfRangeError } from '$lib/solver/errors';
import { pchip } from '$lib/solver/numerics/interpolate';

/** Points with x increasing by random steps and y by random steps of one sign. */
const monotonePoints = fc
  .array(
    fc.tuple(
      fc.double({ min: 0.01, max: 10, noNaN: true }),
      fc.double({ min: 0, max: 10, noNaN: true }),
    ),
    { minLength: 2, maxLength: 12 },
  )
  .map((steps) => {
    const x: number[] = [];
    const y: number[] = [];
    let sumX = -20;
    let sumY = 30;
    for (const [dx, dy] of steps) {
      x.push((sumX += dx));
      y.push((sumY -= dy));
    }
    return { x, y };
  });

const grid = (a: number, b: number, n: number) =>
  Array.from({ length: n + 1 }, (_, i) => (i === n ? b : a + ((b - a) * i) / n));

describe('pchip', () => {
  it('passes through its points', () => {
    fc.assert(
      fc.property(monotonePoints, ({ x, y }) => {
        const curve = pchip(x, y);
        x.forEach((v, i) => expect(curve.value(v)).toBe(y[i]));
      }),
    );
  });

  it('stays monotone where the points are, between the points too', () => {
    fc.assert(
      fc.property(monotonePoints, ({ x, y }) => {
        const curve = pchip(x, y);
        const [a, b] = curve.domain;
        let before = Infinity;
        for (const v of grid(a, b, 300)) {
          const now = curve.value(v);
          expect(now).toBeLessThanOrEqual(before + 1e-12 * Math.abs(now));
          expect(curve.slope(v)).toBeLessThanOrEqual(1e-9);
          before = now;
        }
      }),
    );
  });

  it('never leaves the band of its two neighbours, whatever the points', () => {
    const y = [0, 3, 3, 2.9, 10, -4, -4.001, 7];
    const x = [0, 1, 1.5, 4, 4.1, 6, 9, 9.5];
    const curve = pchip(x, y);
    for (let i = 0; i + 1 < x.length; i++) {
      const low = Math.min(y[i]!, y[i + 1]!);
      const high = Math.max(y[i]!, y[i + 1]!);
      for (const v of grid(x[i]!, x[i + 1]!, 50)) {
        expect(curve.value(v)).toBeGreaterThanOrEqual(low - 1e-12);
        expect(curve.value(v)).toBeLessThanOrEqual(high + 1e-12);
      }
    }
  });

  it('gives a straight line back as a straight line', () => {
    const x = [-3, -1, 0, 0.5, 4, 11];
    const curve = pchip(
      x,
      x.map((v) => 7 - 2.5 * v),
    );
    for (const v of grid(-3, 11, 97)) {
      expect(curve.value(v)).toBeCloseTo(7 - 2.5 * v, 12);
      expect(curve.slope(v)).toBeCloseTo(-2.5, 12);
    }
    const two = pchip([1, 3], [10, 4]);
    expect(two.value(2)).toBeCloseTo(7, 12);
    expect(two.slope(1.1)).toBeCloseTo(-3, 12);
  });

  // Worked by hand: x = 0, 1, 3 and y = 0, 1, 2 have secants 1 and 1/2, so the inner slope is
  // 9 / (5/1 + 4/(1/2)) = 9/13; the ends (2·1 + 2)/3 - 1/3·1/2 = 7/6 and (4 + 1)/3·1/2 - 2/3·1 = 1/6.
  it('takes the slopes of the published formulas', () => {
    const curve = pchip([0, 1, 3], [0, 1, 2]);
    expect(curve.slope(0)).toBeCloseTo(7 / 6, 12);
    expect(curve.slope(1)).toBeCloseTo(9 / 13, 12);
    expect(curve.slope(3)).toBeCloseTo(1 / 6, 12);
    // Hermite value halfway: mean of the ends plus h/8 times the difference of the end slopes.
    expect(curve.value(0.5)).toBeCloseTo(0.5 + (7 / 6 - 9 / 13) / 8, 12);
  });

  it('has a slope that is the derivative of its value', () => {
    const curve = pchip([0, 1, 3, 3.5, 8], [5, 4, 3.5, 0, -2]);
    for (const v of [0.3, 0.999, 1.7, 3.2, 3.4999, 5, 7.9]) {
      const e = 1e-5;
      const difference = (curve.value(v + e) - curve.value(v - e)) / (2 * e);
      expect(curve.slope(v)).toBeCloseTo(difference, 4);
    }
  });

  it('gains order three or better on smooth monotone data as the points double', () => {
    const f = Math.exp;
    const error = (n: number) => {
      const x = grid(0, 2, n);
      const curve = pchip(x, x.map(f));
      return Math.max(...grid(0, 2, 997).map((v) => Math.abs(curve.value(v) - f(v))));
    };
    // The harmonic mean is a second-order slope: third order in the value (Fritsch & Carlson).
    const order = Math.log2(error(40) / error(80));
    expect(order).toBeGreaterThan(2.7);
  });

  it('refuses to extrapolate, and NaN', () => {
    const curve = pchip([0, 1, 2], [3, 2, 0]);
    expect(curve.domain).toEqual([0, 2]);
    for (const v of [-1e-9, 2 + 1e-9, NaN, Infinity]) {
      expect(() => curve.value(v)).toThrow(OutOfRangeError);
      expect(() => curve.slope(v)).toThrow(OutOfRangeError);
    }
  });

  it('refuses points that make no curve', () => {
    expect(() => pchip([0], [1])).toThrow(InvalidInputError);
    expect(() => pchip([0, 1], [1])).toThrow(InvalidInputError);
    expect(() => pchip([0, 1, 1], [1, 2, 3])).toThrow(InvalidInputError);
    expect(() => pchip([0, 2, 1], [1, 2, 3])).toThrow(InvalidInputError);
    expect(() => pchip([0, 1, NaN], [1, 2, 3])).toThrow(InvalidInputError);
    expect(() => pchip([0, 1, 2], [1, Infinity, 3])).toThrow(InvalidInputError);
  });
});
