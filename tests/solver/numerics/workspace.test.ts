import { describe, expect, it } from 'vitest';
import { integrate, type OdeProblem } from '$lib/solver/numerics/ode';
import { giveWorkspace, takeWorkspace } from '$lib/solver/numerics/workspace';

const decay = (rate: number): OdeProblem => ({
  dimension: 2,
  autonomous: true,
  rhs(_t, y, out) {
    out[0] = -rate * y[0]!;
    out[1] = rate * y[0]! - y[1]!;
  },
});
const OPTIONS = { rtol: 1e-8, atol: 1e-10 };

describe('workspaces of the integrator', () => {
  it('a result stays what it was while others are worked out', () => {
    const first = integrate(decay(1), 0, [1, 0], 1, OPTIONS);
    const kept = [...first.y];
    integrate(decay(3), 0, [5, 5], 2, OPTIONS);
    expect([...first.y]).toEqual(kept);
    expect(first.y[0]).toBeCloseTo(Math.exp(-1), 7);
  });

  it('an integration inside a rate does not disturb the one around it', () => {
    const inner = () => integrate(decay(2), 0, [1, 0], 1, OPTIONS).y[0]!;
    const outer: OdeProblem = {
      dimension: 2,
      rhs(_t, y, out) {
        out[0] = inner() - Math.exp(-2) - y[0]!; // exp(-2) cancels: y' = -y
        out[1] = 0;
      },
    };
    expect(integrate(outer, 0, [1, 0], 1, OPTIONS).y[0]).toBeCloseTo(Math.exp(-1), 6);
  });

  it('a rate that throws leaves nothing behind for the next', () => {
    const broken: OdeProblem = {
      ...decay(1),
      rhs() {
        throw new Error('no');
      },
    };
    expect(() => integrate(broken, 0, [1, 0], 1, OPTIONS)).toThrow('no');
    expect(integrate(decay(1), 0, [1, 0], 1, OPTIONS).y[0]).toBeCloseTo(Math.exp(-1), 7);
  });

  it('what was written for one system is gone for the next', () => {
    const used = takeWorkspace(3);
    used.jacobian.fill(7);
    used.fTime.fill(7);
    giveWorkspace(3, used);
    const next = takeWorkspace(3);
    expect(next).toBe(used);
    expect([...next.jacobian, ...next.fTime].every((x) => x === 0)).toBe(true);
    expect(takeWorkspace(3)).not.toBe(next);
  });
});
