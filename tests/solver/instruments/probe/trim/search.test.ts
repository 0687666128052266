/** The search against brute force: every network of a small stock, written out another way. */
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { InvalidInputError, OutOfRangeError } from '$lib/solver/errors';
import { preferredValues } from '$lib/solver/instruments/preferred';
import {
  networkBand,
  networkResistance,
  trimParallel,
  trimSeries,
} from '$lib/solver/instruments/probe/trim/network';
import { nearestNetworks, stockOf, type Stock } from '$lib/solver/instruments/probe/trim/search';

const side = (...R: number[]) => 1 / R.reduce((sum, r) => sum + 1 / r, 0);

/** Resistances of all networks of `size`, each network once, used no oftener than there are. */
function bruteForce(list: readonly number[], counts: readonly number[], size: 1 | 2 | 3): number[] {
  const all: number[] = [];
  const n = list.length;
  const enough = (...places: number[]) =>
    places.every((p) => places.filter((q) => q === p).length <= counts[p]!);
  for (let i = 0; i < n; i++) {
    if (size === 1) {
      if (enough(i)) all.push(list[i]!);
      continue;
    }
    for (let j = i; j < n; j++) {
      const [a, b] = [list[i]!, list[j]!];
      if (size === 2) {
        if (enough(i, j)) all.push(a + b, side(a, b));
        continue;
      }
      for (let k = 0; k < n; k++) {
        const c = list[k]!;
        if (!enough(i, j, k)) continue;
        all.push(side(a + b, c), side(a, b) + c);
        if (k >= j) all.push(a + b + c, side(a, b, c));
      }
    }
  }
  return all;
}

const close = (got: readonly number[], want: readonly number[]) => {
  expect(got).toHaveLength(want.length);
  got.forEach((R, i) => expect(Math.abs(R / want[i]! - 1)).toBeLessThan(1e-12));
};

function expectExhaustive(stock: Stock, counts: readonly number[], target: number, keep: number) {
  for (const size of [1, 2, 3] as const) {
    const { below, above } = nearestNetworks(target, stock, size, keep);
    const all = bruteForce(stock.values, counts, size);
    // Two values of one network that differ in the last bits straddle an exact hit: set it aside.
    const eps = 1e-12 * target;
    const want = {
      below: all
        .filter((R) => R <= target - eps)
        .sort((a, b) => b - a)
        .slice(0, keep),
      above: all
        .filter((R) => R >= target + eps)
        .sort((a, b) => a - b)
        .slice(0, keep),
    };
    const got = {
      below: below.map((f) => f.R).filter((R) => R <= target - eps),
      above: above.map((f) => f.R).filter((R) => R >= target + eps),
    };
    close(got.below, want.below.slice(0, got.below.length));
    close(got.above, want.above.slice(0, got.above.length));
    const hits = below.length + above.length - got.below.length - got.above.length;
    expect(got.below.length + hits).toBeGreaterThanOrEqual(want.below.length);
    expect(got.above.length + hits).toBeGreaterThanOrEqual(want.above.length);
    for (const { network, R } of [...below, ...above]) {
      expect(networkResistance(network)).toBe(R);
      expect(network.parts).toHaveLength(size);
    }
  }
}

describe('every network of the stock is weighed', () => {
  const E12 = preferredValues('E12', 100, 8200);
  it.each([37, 145.7, 999, 2449.5, 5000, 31000])('two decades of E12, %d ohm', (target) => {
    const stock = stockOf(E12.map((R) => ({ R })));
    expectExhaustive(
      stock,
      E12.map(() => Infinity),
      target,
      6,
    );
  });
  it('a drawer of odd values, counted, any target', () => {
    const drawer = fc.uniqueArray(fc.integer({ min: 1, max: 20000 }), {
      minLength: 1,
      maxLength: 8,
    });
    fc.assert(
      fc.property(
        drawer,
        fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 8, maxLength: 8 }),
        fc.double({ min: 1, max: 50000, noNaN: true }),
        fc.integer({ min: 1, max: 5 }),
        (list, counts, target, keep) => {
          const stock = stockOf(list.map((R, i) => ({ R, count: counts[i]! })));
          expectExhaustive(stock, stock.counts!, target, keep);
        },
      ),
      { numRuns: 150 },
    );
  });
  it('finds an exact hit', () => {
    const stock = stockOf([{ R: 6800 }, { R: 10000 }, { R: 1000 }]);
    expect(nearestNetworks(16800, stock, 2, 1).below[0]?.network).toEqual({
      form: 'a+b',
      parts: [6800, 10000],
    });
  });
  it('does not use one resistor twice', () => {
    const stock = stockOf([
      { R: 1000, count: 1 },
      { R: 4700, count: 1 },
    ]);
    const { below, above } = nearestNetworks(2000, stock, 2, 9);
    for (const { network } of [...below, ...above]) {
      expect(network.parts).toEqual([1000, 4700]);
    }
    expect(nearestNetworks(2000, stock, 3, 9)).toEqual({ below: [], above: [] });
  });
});

describe('a list of resistors', () => {
  it('is put in order, doubles together', () => {
    expect(stockOf([{ R: 4700 }, { R: 100, count: 2 }, { R: 100, count: 1 }])).toEqual({
      values: [100, 4700],
      counts: [3, Infinity],
    });
  });
  it('that is empty or nonsense is refused', () => {
    expect(() => stockOf([])).toThrow(InvalidInputError);
    expect(() => stockOf([{ R: 100, count: 0 }])).toThrow(InvalidInputError);
    expect(() => stockOf([{ R: -3 }])).toThrow(OutOfRangeError);
    expect(() => stockOf([{ R: NaN }])).toThrow(OutOfRangeError);
    expect(() => stockOf([{ R: 100, count: -1 }])).toThrow(InvalidInputError);
  });
});

describe('networks', () => {
  it('band: all low and all high are the ends', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('a+b+c', 'a|b|c', '(a+b)|c', '(a|b)+c'),
        fc.array(fc.double({ min: 10, max: 1e5, noNaN: true }), { minLength: 3, maxLength: 3 }),
        fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 3, maxLength: 3 }),
        (form, parts, corner) => {
          const [low, high] = networkBand({ form, parts }, [0.05, 0.01, 0.1]);
          const tolerances = [0.05, 0.01, 0.1];
          const R = networkResistance({
            form,
            parts: parts.map((p, i) => p * (1 + corner[i]! * tolerances[i]!)),
          });
          expect(R).toBeGreaterThanOrEqual(low * (1 - 1e-12));
          expect(R).toBeLessThanOrEqual(high * (1 + 1e-12));
        },
      ),
    );
  });
  it('trims that cannot be are refused', () => {
    expect(() => trimParallel(2490, 2700)).toThrow(InvalidInputError);
    expect(() => trimSeries(2700, 2490)).toThrow(InvalidInputError);
    expect(() => trimParallel(2490, NaN)).toThrow(InvalidInputError);
  });
});
