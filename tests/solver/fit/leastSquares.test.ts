import { describe, expect, it } from 'vitest';
import { InvalidInputError } from '$lib/solver/errors';
import { estimates } from '$lib/solver/fit/estimates';
import { leastSquares } from '$lib/solver/fit/leastSquares';
import type { LeastSquaresProblem } from '$lib/solver/fit/types';
import { seededRandom } from '$lib/solver/numerics/random';
import { STRD, type Certified } from './strd';

function problemOf({ x, y, model, parameters }: Certified): LeastSquaresProblem {
  return {
    names: parameters.map((_, i) => `b${i + 1}`),
    count: x.length,
    residuals: (b, out) => x.forEach((xi, i) => (out[i] = model(xi, b) - y[i]!)),
  };
}

/** Relative difference from a value. */
const off = (got: number, certified: number) => Math.abs(got / certified - 1);

describe('certified problems of NIST, parameters and residual deviation to 6 digits', () => {
  for (const set of STRD) {
    for (const which of [0, 1] as const) {
      it(`${set.name} (${set.difficulty}) from start ${which + 1}`, () => {
        const fit = leastSquares(problemOf(set), { start: set.starts[which] });
        expect(fit.reason).toBe('converged');
        set.parameters.forEach((b, i) => expect(off(fit.parameters[i]!, b)).toBeLessThan(5e-7));
        expect(off(fit.sumOfSquares, set.residualSum)).toBeLessThan(1e-9);
        const { parameters, residualDeviation } = estimates(fit);
        expect(off(residualDeviation, set.residualDeviation)).toBeLessThan(5e-7);
        set.deviations.forEach((d, i) =>
          expect(off(parameters[i]!.deviation, d)).toBeLessThan(1e-5),
        );
      });
    }
  }
});

// Rosenbrock's valley as residuals (1 - a, 10 (b - a²)); minimum 0 at (1, 1), from the definition.
const valley: LeastSquaresProblem = {
  names: ['a', 'b'],
  count: 2,
  residuals: ([a, b], out) => {
    out[0] = 1 - a!;
    out[1] = 10 * (b! - a! * a!);
  },
};

describe('derivatives', () => {
  it('given by the model lead to the same minimum with fewer evaluations', () => {
    const start = [-1.2, 1];
    const plain = leastSquares(valley, { start });
    const given = leastSquares(
      {
        ...valley,
        jacobian: ([a], J) => J.set([-1, -20 * a!, 0, 10]),
      },
      { start },
    );
    for (const fit of [plain, given]) {
      expect(fit.parameters[0]!).toBeCloseTo(1, 9);
      expect(fit.parameters[1]!).toBeCloseTo(1, 9);
    }
    expect(given.evaluations).toBeLessThan(plain.evaluations);
  });
});

describe('bounds', () => {
  it('hold the minimum of a bounded valley: a ≤ 0.5 gives b = a²', () => {
    const fit = leastSquares(valley, { start: [-1.2, 1], upper: [0.5, 2] });
    expect(fit.reason).toBe('converged');
    expect(fit.parameters[0]!).toBe(0.5);
    expect(fit.parameters[1]!).toBeCloseTo(0.25, 9);
    expect(fit.atBound).toEqual([true, false]);
  });

  it('are never passed, on the way or by a difference', () => {
    const seen: number[] = [];
    leastSquares(
      {
        ...valley,
        residuals: (p, out) => {
          seen.push(p[0]!);
          valley.residuals(p, out);
        },
      },
      { start: [-3, 1], lower: [-3, -5], upper: [0.5, 2] },
    );
    expect(Math.min(...seen)).toBeGreaterThanOrEqual(-3);
    expect(Math.max(...seen)).toBeLessThanOrEqual(0.5);
  });

  it('let go again where the minimum lies inside', () => {
    const fit = leastSquares(valley, { start: [0.5, 0.25], lower: [0.5, 0.25], upper: [3, 3] });
    expect(fit.parameters[0]!).toBeCloseTo(1, 8);
    expect(fit.atBound).toEqual([false, false]);
  });
});

describe('robust losses', () => {
  const random = seededRandom(3);
  const x = Array.from({ length: 200 }, (_, i) => i / 20);
  const clean = x.map((t) => 2 + 0.5 * t + 0.1 * random.normal());
  const wild = clean.map((y, i) => (i % 10 === 0 ? y + 8 : y));
  const line = (y: readonly number[]): LeastSquaresProblem => ({
    names: ['level', 'slope'],
    count: x.length,
    residuals: ([a, b], out) => x.forEach((t, i) => (out[i] = a! + b! * t - y[i]!)),
  });

  it.each(['huber', 'soft-l1'] as const)(
    '%s holds the line where every tenth reading is wild',
    (kind) => {
      const plain = leastSquares(line(wild), { start: [0, 0] });
      const fit = leastSquares(line(wild), { start: [0, 0], loss: { kind, scale: 0.1345 } });
      expect(fit.reason).toBe('converged');
      expect(Math.abs(plain.parameters[0]! - 2)).toBeGreaterThan(0.5);
      expect(Math.abs(fit.parameters[0]! - 2)).toBeLessThan(0.06);
      expect(Math.abs(fit.parameters[1]! - 0.5)).toBeLessThan(0.01);
    },
  );

  it('of Huber is at the point where its slope sums to nothing', () => {
    const fit = leastSquares(line(wild), { start: [0, 0], loss: { kind: 'huber', scale: 0.2 } });
    const psi = Array.from(fit.residuals, (r) => Math.max(-0.2, Math.min(0.2, r)));
    expect(Math.abs(psi.reduce((a, b) => a + b, 0))).toBeLessThan(1e-7);
    expect(Math.abs(psi.reduce((a, b, i) => a + b * x[i]!, 0))).toBeLessThan(1e-6);
  });
});

describe('refusals', () => {
  it('crossed bounds, a start of the wrong length, a start without a value', () => {
    expect(() => leastSquares(valley, { start: [0, 0], lower: [1, 1], upper: [0, 2] })).toThrow(
      InvalidInputError,
    );
    expect(() => leastSquares(valley, { start: [0] })).toThrow(InvalidInputError);
    const log: LeastSquaresProblem = {
      names: ['a'],
      count: 1,
      residuals: ([a], out) => (out[0] = Math.log(a!)),
    };
    expect(() => leastSquares(log, { start: [-1] })).toThrow(InvalidInputError);
    expect(leastSquares(log, { start: [5] }).parameters[0]!).toBeCloseTo(1, 8);
  });

  it('a run that is cancelled or out of steps says so', () => {
    expect(leastSquares(valley, { start: [-1.2, 1], maxSteps: 2 }).reason).toBe('too-many-steps');
    expect(leastSquares(valley, { start: [-1.2, 1], cancelled: () => true }).reason).toBe(
      'cancelled',
    );
  });
});
