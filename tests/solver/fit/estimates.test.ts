import { describe, expect, it } from 'vitest';
import { estimates } from '$lib/solver/fit/estimates';
import { leastSquares } from '$lib/solver/fit/leastSquares';
import { separability } from '$lib/solver/fit/separability';
import { studentHalfWidth } from '$lib/solver/fit/studentT';
import type { LeastSquaresProblem } from '$lib/solver/fit/types';
import { seededRandom } from '$lib/solver/numerics/random';

// Source: Abramowitz & Stegun, Table 26.10, percentage points of the t-distribution, two-sided.
describe('Student t', () => {
  it.each([
    [0.95, 1, 12.706],
    [0.95, 2, 4.303],
    [0.95, 5, 2.571],
    [0.95, 10, 2.228],
    [0.95, 30, 2.042],
    [0.95, 120, 1.98],
    [0.95, 1e8, 1.96],
    [0.99, 5, 4.032],
    [0.99, 20, 2.845],
    [0.9, 8, 1.86],
  ])('%d at %d degrees of freedom is %d', (confidence, freedom, printed) => {
    expect(Math.abs(studentHalfWidth(confidence, freedom) - printed)).toBeLessThanOrEqual(0.00051);
  });

  it('one degree of freedom is Cauchy: tan(π p / 2)', () => {
    expect(studentHalfWidth(0.8, 1)).toBeCloseTo(Math.tan(0.4 * Math.PI), 10);
  });

  it('joins where the two ways to its beta function meet', () => {
    const [below, above] = [studentHalfWidth(0.95, 19999), studentHalfWidth(0.95, 20001)];
    expect(below - above).toBeGreaterThan(0);
    expect(below - above).toBeLessThan(1e-7);
  });
});

const x = Array.from({ length: 40 }, (_, i) => i / 10);
const line = (y: readonly number[]): LeastSquaresProblem => ({
  names: ['level', 'slope'],
  count: x.length,
  residuals: ([a, b], out) => x.forEach((t, i) => (out[i] = a! + b! * t - y[i]!)),
  jacobian: (_p, J) => J.set([...x.map(() => 1), ...x]),
});

describe('estimates', () => {
  it('of a straight line are those of the closed form', () => {
    const random = seededRandom(11);
    const y = x.map((t) => 1 + 2 * t + 0.3 * random.normal());
    const { parameters, correlation, residualDeviation, freedom } = estimates(
      leastSquares(line(y), { start: [0, 0] }),
    );
    const n = x.length;
    const mean = x.reduce((a, b) => a + b, 0) / n;
    const Sxx = x.reduce((sum, t) => sum + (t - mean) ** 2, 0);
    expect(freedom).toBe(38);
    expect(parameters[1]!.deviation).toBeCloseTo(residualDeviation / Math.sqrt(Sxx), 12);
    expect(parameters[0]!.deviation).toBeCloseTo(
      residualDeviation * Math.sqrt(1 / n + mean ** 2 / Sxx),
      12,
    );
    const square = x.reduce((sum, t) => sum + t * t, 0) / n;
    expect(correlation[1]!).toBeCloseTo(-mean / Math.sqrt(square), 9);
  });

  it('cover the truth as often as they say: 95 % of 1000 seeded lines', () => {
    const random = seededRandom(5);
    let covered = 0;
    for (let run = 0; run < 1000; run++) {
      const y = x.map((t) => 1 + 2 * t + 0.3 * random.normal());
      const slope = estimates(leastSquares(line(y), { start: [0, 0] })).parameters[1]!;
      if (slope.low <= 2 && 2 <= slope.high) covered++;
    }
    // 95 % ± 3 binomial standard deviations of 0.69 %.
    expect(covered / 1000).toBeGreaterThan(0.929);
    expect(covered / 1000).toBeLessThan(0.971);
  });

  it('with Huber’s loss cover it too, one reading in twenty wild', () => {
    const random = seededRandom(6);
    let covered = 0;
    for (let run = 0; run < 600; run++) {
      const y = x.map(
        (t) =>
          1 + 2 * t + 0.3 * random.normal() + (random.uniform() < 0.05 ? 3 * random.normal() : 0),
      );
      const fit = leastSquares(line(y), { start: [0, 0], loss: { kind: 'huber', scale: 0.4 } });
      const slope = estimates(fit).parameters[1]!;
      if (slope.low <= 2 && 2 <= slope.high) covered++;
    }
    // 95 % ± 3 binomial standard deviations of 0.89 %.
    expect(covered / 600).toBeGreaterThan(0.923);
    expect(covered / 600).toBeLessThan(0.977);
  });
});

describe('separability', () => {
  // Only the product of a and b enters, and c not at all.
  const product: LeastSquaresProblem = {
    names: ['a', 'b', 'c', 'd'],
    count: x.length,
    residuals: ([a, b, , d], out) => x.forEach((t, i) => (out[i] = a! * b! * t + d! - (6 * t + 1))),
  };
  const fit = leastSquares(product, { start: [2, 2.5, 5, 0] });

  it('names the pair of which only the product enters, and what does not enter', () => {
    const { weak } = separability(fit, { sizes: fit.parameters, noise: 0.01 });
    expect(weak.map(({ parameters }) => [...parameters].sort())).toEqual(
      expect.arrayContaining([['a', 'b'], ['c']]),
    );
    expect(weak).toHaveLength(2);
    const pair = weak.find(({ parameters }) => parameters.length === 2)!;
    // Product kept: one up by a share, the other down by the same.
    expect(pair.moves[1]!).toBeCloseTo(-1, 3);
  });

  it('gives them endless deviations and the others finite ones', () => {
    const { parameters } = estimates(fit, { noise: 0.01 });
    expect(parameters.map(({ deviation }) => Number.isFinite(deviation))).toEqual([
      false,
      false,
      false,
      true,
    ]);
  });

  it('finds nothing weak where all is told', () => {
    const y = x.map((t) => 1 + 2 * t);
    const told = leastSquares(line(y), { start: [0, 0] });
    expect(separability(told, { sizes: [1, 2], noise: 0.1 }).weak).toEqual([]);
  });
});
