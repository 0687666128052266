/** Kinds of ± held to the examples of JCGM 100:2008 (GUM) and JCGM 101:2008. Values from memory. */
import { describe, expect, it } from 'vitest';
import {
  calibrated,
  quantile,
  standardDeviation,
  within,
  type Distribution,
} from '$lib/solver/uncertainty/distributions';
import { InvalidInputError } from '$lib/solver/errors';
import { propagate, spread } from '$lib/solver/uncertainty/propagate';
import { finished } from '$lib/job/sure/sureness';

const run = (inputs: Distribution[], model: (x: Float64Array) => number) =>
  spread(
    finished(propagate({ inputs, outputs: 1, samples: 2 ** 19, seed: 9 }, (x) => [model(x)]))
      .results[0]!,
  )!;

describe('standard uncertainty from what is stated, JCGM 100', () => {
  it('4.3.3: 240 µg at three standard deviations is 80 µg', () =>
    expect(standardDeviation(calibrated(1000.000325, 240e-6, 3))).toBeCloseTo(80e-6, 15));
  it('4.3.7: copper, 16.52e-6 within 0.40e-6, u² = 53.3e-15, u = 0.23e-6', () => {
    const u = standardDeviation(within('interval', 16.52e-6, 0.4e-6));
    expect(Math.abs(u * u - 53.3e-15)).toBeLessThan(0.05e-15);
    expect(Math.abs(u - 0.23e-6)).toBeLessThan(0.005e-6);
  });
  it('4.3.9: bounds with a likely middle, u² = a²/6', () =>
    expect(standardDeviation(within('triangular', 5, 3)) ** 2).toBeCloseTo(9 / 6, 12));
  it('6.2.1: U = k u, the other way round', () => {
    expect(standardDeviation(calibrated(20, 0.5, 2))).toBe(0.25);
    expect(() => calibrated(20, 0.5, 0)).toThrow(InvalidInputError);
    expect(() => calibrated(20, 0.5, NaN)).toThrow(InvalidInputError);
    expect(() => within('interval', 20, -1)).toThrow(InvalidInputError);
  });
});

describe('drawn, JCGM 101', () => {
  it('6.4.4 and 6.4.5: two equal intervals add to a triangle', () => {
    const s = run([within('interval', 0, 1), within('interval', 0, 1)], (x) => x[0]! + x[1]!);
    const triangle = within('triangular', 0, 2);
    expect(Math.abs(s.low - quantile(triangle, 0.025))).toBeLessThan(0.005);
    expect(Math.abs(s.high - quantile(triangle, 0.975))).toBeLessThan(0.005);
    expect(s.sd).toBeCloseTo(standardDeviation(triangle), 3);
  });
  it('9.2.3: four intervals of u = 1, ends at 2 √3 (2 − (3/5)^(1/4)) = 3.88', () => {
    const s = run(
      Array<Distribution>(4).fill(within('interval', 0, Math.sqrt(3))),
      (x) => x[0]! + x[1]! + x[2]! + x[3]!,
    );
    const analytic = 2 * Math.sqrt(3) * (2 - 0.6 ** 0.25);
    expect(analytic.toFixed(2)).toBe('3.88');
    // Symmetric: the shortest interval of the document and the one with equal tails are the same.
    expect(Math.abs(s.high - analytic)).toBeLessThan(0.01);
    expect(Math.abs(s.low + analytic)).toBeLessThan(0.01);
  });
});
