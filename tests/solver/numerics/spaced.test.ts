import { expect, it } from 'vitest';
import { spaced } from '../../../src/lib/solver/numerics/spaced';

it('ends where it was told to end, whatever the step rounds to', () => {
  const xs = spaced(0, 0.3, 4);
  expect(xs).toHaveLength(4);
  expect(xs[0]).toBe(0);
  expect(xs[3]).toBe(0.3);
  expect(xs[1]).toBeCloseTo(0.1, 15);
});

it('goes down as well as up', () => {
  expect(spaced(2, -2, 5)).toEqual([2, 1, 0, -1, -2]);
});
