import { describe, expect, it } from 'vitest';
import { bandOf } from '$lib/solver/uncertainty/band';
import { normalQuantile } from '$lib/solver/uncertainty/distributions';

/** Evenly spread draws of a normal distribution. */
const normal = (mean: number, sd: number, n = 40001) =>
  Float64Array.from({ length: n }, (_, i) => mean + sd * normalQuantile((i + 0.5) / n));

describe('band of a curve', () => {
  it('holds 95 % at each place: ±1.96 standard deviations of a normal one', () => {
    const band = bandOf([10, 20], [normal(5, 1), normal(-2, 3)]);
    expect(band.map(([x]) => x)).toEqual([10, 20]);
    expect(band[0]![1]).toBeCloseTo(5 - 1.96, 2);
    expect(band[0]![2]).toBeCloseTo(5 + 1.96, 2);
    expect(band[1]![1]).toBeCloseTo(-2 - 3 * 1.96, 2);
    expect(band[1]![3]).toBeCloseTo(-2, 6);
  });
  it('leaves out a place where too many draws have no answer', () => {
    const holes = normal(0, 1).map((v, i) => (i % 10 === 0 ? NaN : v));
    expect(bandOf([1, 2], [holes, normal(0, 1)]).map(([x]) => x)).toEqual([2]);
    expect(bandOf([1], [holes], 0.5)).toHaveLength(1);
  });
});
