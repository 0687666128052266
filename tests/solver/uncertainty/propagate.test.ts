/** Propagation held to the worked examples of GUM Supplement 1 (JCGM 101:2008). Values from memory. */
import { describe, expect, it } from 'vitest';
import {
  normalQuantile,
  quantile,
  standardDeviation,
  type Distribution,
} from '$lib/solver/uncertainty/distributions';
import {
  chance,
  propagate,
  spread,
  squaredCorrelation,
  type Model,
} from '$lib/solver/uncertainty/propagate';
import { InvalidInputError } from '$lib/solver/errors';

const N = 2 ** 17;

function run(inputs: Distribution[], model: (x: Float64Array) => number, seed = 5) {
  const one: Model = (x) => [model(x)];
  const work = propagate({ inputs, outputs: 1, samples: N, seed }, one);
  for (;;) {
    const step = work.next();
    if (step.done) return spread(step.value.results[0]!)!;
  }
}

const sum = (x: Float64Array) => x[0]! + x[1]! + x[2]! + x[3]!;
const rectangular = (sd: number): Distribution => ({
  kind: 'interval',
  low: -sd * Math.sqrt(3),
  high: sd * Math.sqrt(3),
});

describe('additive model, JCGM 101 clause 9.2', () => {
  it('four normal inputs: u = 2.0, interval ±3.92 (9.2.2)', () => {
    const s = run(Array<Distribution>(4).fill({ kind: 'normal', mean: 0, sd: 1 }), sum);
    expect(s.mean).toBeCloseTo(0, 2);
    expect(s.sd).toBeCloseTo(2, 2);
    expect(s.low).toBeCloseTo(-3.92, 1);
    expect(s.high).toBeCloseTo(3.92, 1);
  });
  it('four rectangular inputs: u = 2.0, interval ±3.88 (9.2.3)', () => {
    const s = run(Array<Distribution>(4).fill(rectangular(1)), sum);
    expect(s.sd).toBeCloseTo(2, 2);
    expect(Math.abs(s.low + 3.88)).toBeLessThan(0.02);
    expect(Math.abs(s.high - 3.88)).toBeLessThan(0.02);
  });
  it('one of them ten times as wide: u = 10.1, interval ±17.0 (9.2.4)', () => {
    const s = run([...Array<Distribution>(3).fill(rectangular(1)), rectangular(10)], sum);
    expect(Math.abs(s.sd - 10.1)).toBeLessThan(0.06);
    expect(Math.abs(s.low + 17.0)).toBeLessThan(0.06);
    expect(Math.abs(s.high - 17.0)).toBeLessThan(0.06);
  });
});

describe('mass calibration, JCGM 101 clause 9.3', () => {
  it('1.2340 mg, u = 0.0754 mg, 95 % interval 1.0834 to 1.3825 mg', () => {
    const s = run(
      [
        { kind: 'normal', mean: 100_000, sd: 0.05 },
        { kind: 'normal', mean: 1.234, sd: 0.02 },
        { kind: 'interval', low: 1.1, high: 1.3 },
        { kind: 'interval', low: 7000, high: 9000 },
        { kind: 'interval', low: 7950, high: 8050 },
      ],
      (x) => (x[0]! + x[1]!) * (1 + (x[2]! - 1.2) * (1 / x[3]! - 1 / x[4]!)) - 100_000,
    );
    expect(Math.abs(s.mean - 1.234)).toBeLessThan(0.001);
    expect(Math.abs(s.sd - 0.0754)).toBeLessThan(0.0005);
    // The document gives the shortest interval; the density is nearly symmetric.
    expect(Math.abs(s.low - 1.0834)).toBeLessThan(0.004);
    expect(Math.abs(s.high - 1.3825)).toBeLessThan(0.004);
  });
});

describe('distributions', () => {
  // Table of the standard normal distribution, any text.
  it.each([
    [0.5, 0],
    [0.8413447460685429, 1],
    [0.975, 1.959963984540054],
    [0.9986501019683699, 3],
    [1e-10, -6.361340902404056],
  ])('normal quantile of %f', (p, z) => expect(normalQuantile(p)).toBeCloseTo(z, 9));
  it('the triangle’s halves meet at its mode, and its spread is the published one', () => {
    const d: Distribution = { kind: 'triangular', low: 1, mode: 2, high: 5 };
    expect(quantile(d, 0.25)).toBeCloseTo(2, 12);
    expect(run([d], (x) => x[0]!).sd).toBeCloseTo(standardDeviation(d), 3);
    const even: Distribution = { kind: 'triangular', low: -1, mode: 0, high: 1 };
    expect(standardDeviation(even)).toBeCloseTo(1 / Math.sqrt(6), 12); // JCGM 100, 4.3.9
  });
  it('refuses bounds out of order', () =>
    expect(() => quantile({ kind: 'interval', low: 2, high: 1 }, 0.5)).toThrow(InvalidInputError));
});

describe('draws', () => {
  it('the same seed draws the same points, another does not', () => {
    const d: Distribution[] = [{ kind: 'normal', mean: 0, sd: 1 }];
    expect(run(d, (x) => x[0]!, 1)).toEqual(run(d, (x) => x[0]!, 1));
    expect(run(d, (x) => x[0]!, 2)).not.toEqual(run(d, (x) => x[0]!, 1));
  });
  it('counts and leaves out points without an answer, and tells progress', () => {
    const work = propagate(
      { inputs: [{ kind: 'interval', low: 0, high: 1 }], outputs: 1, samples: 1024, seed: 1 },
      (x) => (x[0]! < 0.25 ? null : [x[0]!]),
    );
    const told: number[] = [];
    let step = work.next();
    for (; !step.done; step = work.next()) told.push(step.value);
    expect(told).toEqual(told.toSorted((a, b) => a - b));
    expect(told.length).toBe(10);
    expect(step.value.failed).toBe(256);
    expect(spread(step.value.results[0]!)!.count).toBe(768);
    expect(chance(step.value.results[0]!, (v) => v > 0.625)).toBeCloseTo(0.5, 2);
  });
});

describe('squared correlation', () => {
  it('is one on a line, nothing for a parabola about its middle, nothing for what stands still', () => {
    const xs = [-2, -1, 0, 1, 2];
    expect(squaredCorrelation(xs.map((x) => [x, 3 - 2 * x]))).toBeCloseTo(1, 12);
    expect(squaredCorrelation(xs.map((x) => [x, x * x]))).toBeCloseTo(0, 12);
    expect(squaredCorrelation(xs.map((x) => [x, 4]))).toBe(0);
  });
});
