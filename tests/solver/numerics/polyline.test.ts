import { describe, expect, it } from 'vitest';
import { along, stopsOf, thinned } from '$lib/solver/numerics/polyline';

describe('a curve given by points', () => {
  const curve = [
    [0, 1],
    [2, 5],
    [2, 9],
    [4, 9],
  ] as const;

  it('is straight between them, and at a jump what it was before', () => {
    expect(along(curve, 0)).toBe(1);
    expect(along(curve, 1)).toBe(3);
    expect(along(curve, 2)).toBe(5);
    expect(along(curve, 3)).toBe(9);
    expect(along(curve, 4)).toBe(9);
  });
  it('says nothing beyond its ends but for rounding', () => {
    expect(along(curve, -0.1)).toBeNaN();
    expect(along(curve, 4.1)).toBeNaN();
    expect(along(curve, 4 + 1e-12)).toBe(9);
    expect(along([], 1)).toBeNaN();
    expect(along([[3, 7]], 3)).toBe(7);
  });
  it('says nothing beside a point without a value', () => {
    const holed = [[0, 0], [1, NaN], [2, 4], [3, 5]] as const; // prettier-ignore
    expect(along(holed, 0.5)).toBeNaN();
    expect(along(holed, 2.5)).toBe(4.5);
    expect(stopsOf(holed, 9)).toEqual([0, 2, 3]);
  });
  it('is thinned with both ends kept', () => {
    expect(thinned([0, 1, 2, 3, 4, 5, 6, 7, 8], 3)).toEqual([0, 4, 8]);
    expect(thinned([1, 2], 5)).toEqual([1, 2]);
    expect(stopsOf(curve, 9)).toEqual([0, 2, 4]);
  });
});
