import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { spaced } from '$lib/solver/numerics/spaced';
import { crossings, stretches, survey } from '$lib/solver/numerics/survey';

const NOISE = 1e-10;
const over = (from: number, to: number, count = 21) => ({
  places: spaced(from, to, count),
  noise: NOISE,
});
const roots = (f: (x: number) => number, level: number, from: number, to: number, count = 21) =>
  crossings(f, survey(f, over(from, to, count)), level, { noise: NOISE });

describe('a function looked at over a range', () => {
  it('names its shape', () => {
    const shape = (f: (x: number) => number) => survey(f, over(-1, 2)).shape;
    expect(shape((x) => x ** 3)).toBe('rising');
    expect(shape((x) => Math.exp(-x))).toBe('falling');
    expect(shape((x) => x * x)).toBe('turns');
    expect(shape(() => 4)).toBe('flat');
    expect(shape(() => NaN)).toBe('none');
  });

  it('finds the tip between its looks', () => {
    const { greatest, least } = survey((x) => -((x - 0.333) ** 2), over(0, 1, 7));
    expect(greatest!.x).toBeCloseTo(0.333, 4);
    expect(greatest!.y).toBeCloseTo(0, 8);
    expect(least!.x).toBe(1);
  });

  it('keeps what does not exist out, its edge placed', () => {
    const seen = survey((x) => (x < 0.7 ? NaN : x), over(0, 1, 5));
    expect(seen.shape).toBe('rising');
    expect(Math.abs(seen.least!.x - 0.7)).toBeLessThan(1e-4);
    expect(seen.looks.filter(({ y }) => Number.isNaN(y)).map(({ x }) => x)).toEqual([0, 0.25, 0.5]);
  });

  it('every root of a polynomial whose roots it may separate', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 1, max: 19 }), { minLength: 1, maxLength: 6 }),
        (wanted) => {
          const f = (x: number) => wanted.reduce((product, r) => product * (x - r - 0.3), 1);
          const found = roots(f, 0, 0, 20, 41).map(({ x }) => x);
          expect(found).toHaveLength(wanted.length);
          wanted
            .toSorted((a, b) => a - b)
            .forEach((r, i) => expect(found[i]).toBeCloseTo(r + 0.3, 9));
        },
      ),
    );
  });

  it('a pair between two looks, once their turn is seen', () => {
    const f = (x: number) => (x - 0.5) ** 2;
    expect(roots(f, 1e-4, 0, 1, 4).map(({ x }) => x.toFixed(6))).toEqual(['0.490000', '0.510000']);
    expect(roots(f, -1e-9, 0, 1, 4)).toEqual([]);
  });

  it('tells a jump over the level from a crossing', () => {
    const f = (x: number) => (x < 0.61 ? 1 : 3);
    const [only, ...none] = roots(f, 2, 0, 1, 5);
    expect(none).toEqual([]);
    expect(only!.jump).toBe(true);
    expect(only!.x).toBeCloseTo(0.61, 9);
  });
});

describe('stretches on one side of a level', () => {
  const of = (f: (x: number) => number, level: number, side: 'below' | 'above') => {
    const seen = survey(f, over(0, 1, 9));
    return stretches(seen, crossings(f, seen, level, { noise: NOISE }), level, side, NOISE);
  };
  it('end where the level is crossed, at the range, or where nothing exists', () => {
    const f = (x: number) => (x > 0.8 ? NaN : Math.sin(2 * Math.PI * x));
    const [first, second] = of(f, 0.5, 'below');
    expect(first).toMatchObject({ from: 0, fromEnd: 'range', toEnd: 'crossing' });
    expect(first!.to).toBeCloseTo(1 / 12, 9); // sin 30° = 1/2
    expect(second!.from).toBeCloseTo(5 / 12, 9);
    expect(second!.toEnd).toBe('edge');
    expect(Math.abs(second!.to - 0.8)).toBeLessThan(1e-3);
    expect(of(f, 2, 'above')).toEqual([]);
  });

  it('together they are just where the function meets the level', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -0.95, max: 0.95, noNaN: true }),
        fc.double({ min: 0.3, max: 3, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (level, waves, x) => {
          const f = (at: number) => Math.cos(2 * waves * at);
          fc.pre(Math.abs(f(x) - level) > 1e-6);
          const inside = of(f, level, 'below').some(({ from, to }) => x >= from && x <= to);
          expect(inside).toBe(f(x) < level);
        },
      ),
    );
  });
});
