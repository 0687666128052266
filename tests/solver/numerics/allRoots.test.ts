import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { allRoots } from '$lib/solver/numerics/allRoots';

const product = (roots: readonly number[]) => (x: number) =>
  roots.reduce((all, root) => all * (x - root), 1);

describe('all roots of a function', () => {
  it('finds every root of a polynomial whose roots lie farther apart than the resolution', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -3, max: 3, noNaN: true }),
        fc.array(fc.double({ min: 0.2001, max: 2, noNaN: true }), { minLength: 0, maxLength: 6 }),
        (first, gaps) => {
          const roots = gaps.reduce((all, gap) => [...all, all.at(-1)! + gap], [first]);
          const found = allRoots(product(roots), [-4, 18], 0.2);
          expect(found).toHaveLength(roots.length);
          roots.forEach((root, i) => expect(found[i]).toBeCloseTo(root, 9));
        },
      ),
    );
  });

  it('finds a pair far closer than the resolution where the function dips between looks', () => {
    const found = allRoots((x) => (x - 3.37) ** 2 - 1e-4, [0, 10], 1);
    expect(found).toHaveLength(2);
    expect(found[0]).toBeCloseTo(3.36, 9);
    expect(found[1]).toBeCloseTo(3.38, 9);
  });

  it('gives none where a dip stays clear of zero', () => {
    expect(allRoots((x) => (x - 3.37) ** 2 + 1e-3, [0, 10], 1)).toEqual([]);
  });

  it('finds a root between the last look and the edge beyond which the function does not exist', () => {
    const f = (x: number) => (x > 4.7 ? NaN : x - 4.65);
    expect(allRoots(f, [0, 10], 1)[0]).toBeCloseTo(4.65, 9);
    expect(allRoots((x) => (x < 2.2 ? NaN : x - 2.25), [0, 10], 1)[0]).toBeCloseTo(2.25, 9);
  });

  it('counts a root that lies on a look once', () => {
    expect(allRoots((x) => x - 3, [0, 10], 1)).toEqual([3]);
    expect(allRoots((x) => x, [0, 10], 1)).toEqual([0]);
    expect(allRoots((x) => x, [2, 2], 1)).toEqual([]);
  });
});
