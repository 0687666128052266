import { describe, expect, it } from 'vitest';
import { traceCurve, type Place } from '$lib/solver/numerics/continuation';

const within =
  ([x0, x1]: Place, [y0, y1]: Place) =>
  (x: number, y: number) =>
    x >= x0 && x <= x1 && y >= y0 && y <= y1;

describe('pseudo-arclength continuation', () => {
  it('passes the fold of y² + x = 0, which lies at the origin', () => {
    const f = (x: number, y: number) => y * y + x;
    const { points, folds, ended } = traceCurve(f, [-1, -1], 1, {
      scale: [1, 1],
      inside: within([-1.0000001, 1], [-2, 2]),
    });
    expect(ended).toBe('left');
    expect(folds).toHaveLength(1);
    expect(folds[0]![0]).toBeCloseTo(0, 9);
    expect(folds[0]![1]).toBeCloseTo(0, 6);
    // Both branches are on it, and every point of it satisfies the equation.
    expect(points.at(-1)![1]).toBeCloseTo(1, 4);
    for (const [x, y] of points) expect(Math.abs(f(x, y))).toBeLessThan(1e-9);
  });

  it('passes both folds of the cubic x = y³ - 3y, at (2, -1) and (-2, 1)', () => {
    const f = (x: number, y: number) => y ** 3 - 3 * y - x;
    const start: Place = [-18, -3];
    const { points, folds, ended } = traceCurve(f, start, 1, {
      scale: [4, 2],
      inside: within([-18.1, 18], [-4, 4]),
    });
    expect(ended).toBe('left');
    expect(folds).toHaveLength(2);
    expect(folds[0]![0]).toBeCloseTo(2, 8);
    expect(folds[0]![1]).toBeCloseTo(-1, 5);
    expect(folds[1]![0]).toBeCloseTo(-2, 8);
    expect(folds[1]![1]).toBeCloseTo(1, 5);
    expect(points.at(-1)![1]).toBeCloseTo(3, 3);
  });

  it('walks a circle once round and says that it is closed', () => {
    const { folds, points, ended } = traceCurve((x, y) => x * x + y * y - 1, [0, -1], 1, {
      scale: [1, 1],
      inside: () => true,
    });
    expect(ended).toBe('closed');
    expect(folds.map(([x]) => Math.round(x))).toEqual([1, -1]);
    for (const [x, y] of points) expect(Math.hypot(x, y)).toBeCloseTo(1, 9);
  });

  it('goes on over a kink', () => {
    const { points, ended } = traceCurve((x, y) => y - Math.abs(x), [-1, 1], 1, {
      scale: [1, 1],
      inside: within([-1.1, 1], [-1, 2]),
    });
    expect(ended).toBe('left');
    expect(points.at(-1)![0]).toBeCloseTo(1, 4);
  });

  it('ends where the function does not exist', () => {
    const { points, ended } = traceCurve((x, y) => (x > 0.5 ? NaN : y - x), [0, 0], 1, {
      scale: [1, 1],
      inside: () => true,
    });
    expect(ended).toBe('left');
    expect(points.at(-1)![0]).toBeCloseTo(0.5, 4);
  });
});
