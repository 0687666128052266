import { describe, expect, it } from 'vitest';
import { lattice } from '$lib/solver/numerics/lattice';
import { LATTICE_VECTOR } from '$lib/solver/numerics/lattice.coefficients';
import { OutOfRangeError } from '$lib/solver/errors';

describe('lattice sequence', () => {
  it('has 250 odd steps below half of 2^20, as the construction makes them', () => {
    expect(LATTICE_VECTOR).toHaveLength(250);
    expect(LATTICE_VECTOR.every((z) => z % 2 === 1 && z > 0 && z < 2 ** 20)).toBe(true);
    expect(new Set(LATTICE_VECTOR).size).toBe(250);
  });
  it('puts one of the first 2^m points into each of 2^m slices of every axis', () => {
    const dimensions = 250;
    const at = lattice(dimensions, 3);
    const n = 256;
    const counts = Array.from({ length: dimensions }, () => new Set<number>());
    const x = new Float64Array(dimensions);
    const first = new Float64Array(dimensions);
    at(0, first);
    for (let i = 0; i < n; i++) {
      at(i, x);
      // Slices counted from the shift, which is the first point.
      x.forEach((v, j) => counts[j]!.add(Math.round((v - first[j]! + 1) * n) % n));
    }
    expect(counts.every((c) => c.size === n)).toBe(true);
  });
  // Each factor has mean 1, and so has their product.
  it('averages a smooth function of ten values far better than chance would', () => {
    const d = 10;
    const at = lattice(d, 11);
    const x = new Float64Array(d);
    const n = 4096;
    let sum = 0;
    for (let i = 0; i < n; i++) {
      at(i, x);
      sum += x.reduce((product, v) => product * (1 + (v - 0.5) / 2), 1);
    }
    // The variance of the product is (1 + 1/48)^10 - 1.
    const chance = Math.sqrt((1 + 1 / 48) ** d - 1) / Math.sqrt(n);
    expect(Math.abs(sum / n - 1)).toBeLessThan(chance / 5);
  });
  it('refuses more dimensions than it has', () =>
    expect(() => lattice(251, 1)).toThrow(OutOfRangeError));
});
