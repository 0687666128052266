import { describe, expect, it } from 'vitest';
import { mutualInformation } from '$lib/solver/numerics/information';

const normal = (mean: number, sigma: number) => [{ share: 1, mean, sigma }];
const HALF = [0.5, 0.5];

describe('what an outcome tells', () => {
  it('is nothing where both causes give the same', () => {
    expect(mutualInformation([normal(3, 1), normal(3, 1)], HALF)).toBeCloseTo(0, 12);
  });

  it('is which of two, where they never give the same', () => {
    expect(mutualInformation([normal(0, 1), normal(40, 1)], HALF)).toBeCloseTo(Math.log(2), 6);
    const thirds = [0.2, 0.3, 0.5];
    const entropy = -thirds.reduce((s, w) => s + w * Math.log(w), 0);
    const apart = [normal(0, 1), normal(40, 1), normal(80, 1)];
    expect(mutualInformation(apart, thirds)).toBeCloseTo(entropy, 4);
  });

  // Source: the noise at which a binary symbol ±1 in Gaussian noise carries half a bit is 0.9787
  // (Richardson, Shokrollahi & Urbanke, IEEE Trans. Inf. Theory 47 (2001) 619, table of thresholds; from memory).
  it('is half a bit for ±1 in noise of 0.9787', () => {
    const bits = mutualInformation([normal(-1, 0.9787), normal(1, 0.9787)], HALF) / Math.log(2);
    expect(Math.abs(bits - 0.5)).toBeLessThan(1e-4);
  });

  it('does not change when a part is written as two', () => {
    const split = [
      { share: 0.4, mean: 1, sigma: 1 },
      { share: 0.6, mean: 1, sigma: 1 },
    ];
    expect(mutualInformation([normal(-1, 1), split], HALF)).toBeCloseTo(
      mutualInformation([normal(-1, 1), normal(1, 1)], HALF),
      12,
    );
  });
});
