import { describe, expect, it } from 'vitest';
import { resistanceFromRatio } from '$lib/solver/instruments/probe/divider';
import { countStep, countSteps, countStepsBetween } from '$lib/solver/instruments/probe/fineness';
import { probeOf, sensitivity } from '$lib/solver/instruments/probe/probe';
import { FACTORY } from './factory';

const probe = probeOf({ kind: 'table', points: FACTORY });
const circuit = { probe, divider: { supply: 5, bias: 1000, input: Infinity, bits: 10 } };

describe('degrees per count', () => {
  // By the divider itself, counts of 1023: half a count up and half a count down from where it stands.
  it.each([0, 40, 80, 100])('at %d °C is what one count up or down changes', (t) => {
    const R = probe.resistance(t + 273.15);
    const x = R / (R + 1000);
    const at = (share: number) => probe.temperature(resistanceFromRatio(share, 1000));
    const byCount = at(x - 0.5 / 1023) - at(x + 0.5 / 1023);
    expect(countStep(circuit, 1000, t + 273.15) / byCount).toBeCloseTo(1, 1);
  });
  it('covers the range, ends included', () => {
    const steps = countSteps(circuit, 1000, 273.15, 373.15);
    expect(steps[0]).toEqual([273.15, countStep(circuit, 1000, 273.15)]);
    expect(steps.at(-1)).toEqual([373.15, countStep(circuit, 1000, 373.15)]);
  });
  it('of any bias between two lies between finest and coarsest, which are met', () => {
    const band = countStepsBetween(circuit, [500, 2000], 273.15, 373.15);
    for (const [T, finest, coarsest] of band) {
      const all: number[] = [];
      for (let bias = 500; bias <= 2000; bias += 0.5) all.push(countStep(circuit, bias, T));
      expect(Math.min(...all) / finest).toBeCloseTo(1, 5);
      expect(Math.max(...all) / coarsest).toBeCloseTo(1, 9);
    }
  });
});

it('the slope of a probe is told up to both ends of its law', () => {
  const beta = probeOf({ kind: 'beta', R25: 2200, beta: 3600 });
  // Slope of the Beta law: Beta over the square of the temperature.
  for (const T of beta.range) expect(sensitivity(beta, T) * T * T).toBeCloseTo(3600, -1);
  expect(() => sensitivity(probe, probe.range[1])).not.toThrow();
});
