import { describe, expect, it } from 'vitest';
import { DenseSolution } from '$lib/solver/numerics/dense';
import { integrateSharply } from '$lib/solver/numerics/sharpEvent';
import type { OdeProblem } from '$lib/solver/numerics/ode';

const decay: OdeProblem = {
  dimension: 1,
  autonomous: true,
  rhs: (_t, y, out) => void (out[0] = -y[0]!),
};
const swing: OdeProblem = {
  dimension: 2,
  autonomous: true,
  rhs: (_t, y, out) => {
    out[0] = y[1]!;
    out[1] = -y[0]!;
  },
};
const below = (level: number) => ({
  direction: -1 as const,
  value: (_t: number, y: Float64Array) => y[0]! - level,
});

describe('a moment placed by the steps', () => {
  // Closed form: exp(-t) = level at t = -ln(level).
  it.each([0.9, 0.5, 0.1, 0.013])('decay to %d, to a microsecond', (level) => {
    const run = integrateSharply(decay, 0, [1], 100, {
      rtol: 1e-8,
      atol: 1e-10,
      events: [below(level)],
    });
    expect(run.reason).toBe('event');
    expect(Math.abs(run.t + Math.log(level))).toBeLessThan(1e-6);
    expect(Math.abs(run.y[0]! - level)).toBeLessThan(2e-7 * level + 1e-9);
  });

  // Closed form: sin t falls through 0.3 at t = pi - asin 0.3.
  it('a swing through a level, and the record of steps ends there', () => {
    const dense = new DenseSolution(2);
    const events = [below(0.3)];
    const run = integrateSharply(swing, 0, [0, 1], 10, { rtol: 1e-9, atol: 1e-10, events, dense });
    expect(Math.abs(run.t - (Math.PI - Math.asin(0.3)))).toBeLessThan(1e-7);
    expect(dense.endOf(dense.steps - 1)).toBeCloseTo(run.t, 12);
    const y = new Float64Array(2);
    dense.value(run.t, y);
    expect(y[0]).toBeCloseTo(run.y[0]!, 12);
    // The whole record still follows the sine.
    for (let t = 0; t < run.t; t += 0.1) {
      dense.value(t, y);
      expect(Math.abs(y[0]! - Math.sin(t))).toBeLessThan(1e-5);
    }
  });

  it('the earliest of several, and none beyond the end', () => {
    const events = [below(0.2), below(0.6), below(0.4)];
    const run = integrateSharply(decay, 0, [1], 100, { rtol: 1e-8, atol: 1e-10, events });
    expect(run.event).toBe(1);
    expect(integrateSharply(decay, 0, [1], 0.1, { rtol: 1e-8, atol: 1e-10, events }).reason).toBe(
      'finished',
    );
  });
});
