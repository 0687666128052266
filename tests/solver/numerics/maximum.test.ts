import { describe, expect, it } from 'vitest';
import { maximum } from '$lib/solver/numerics/maximum';

// Expected values are the maxima of known functions.
describe('golden-section maximum', () => {
  it('finds a hump inside', () => {
    const { x, value } = maximum((t) => t * Math.exp(-t), 0, 6, 1e-9);
    expect(x).toBeCloseTo(1, 6); // flat at the top: half the digits
    expect(value).toBeCloseTo(1 / Math.E, 14);
  });

  it('takes an end where the function only rises or only falls', () => {
    expect(maximum((t) => t, 0, 3, 1e-9)).toEqual({ x: 3, value: 3 });
    expect(maximum((t) => -t, 0, 3, 1e-9)).toEqual({ x: 0, value: -0 });
  });

  it('ends on a bracket without width', () => {
    expect(maximum((t) => t, 2, 2, 0)).toEqual({ x: 2, value: 2 });
  });
});
