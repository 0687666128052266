import { describe, expect, it } from 'vitest';
import { DenseSolution } from '$lib/solver/numerics/dense';
import { integrate, type OdeProblem } from '$lib/solver/numerics/ode';
import { RODAS4 } from '$lib/solver/numerics/rodas4';

// Expected values are exact solutions of the equations, so the reference is mathematics itself.

/** y' = -2 t y², y(0) = 1: y = 1 / (1 + t²). Depends on time and is not linear. */
const witch: OdeProblem = {
  dimension: 1,
  rhs: (t, y, out) => {
    out[0] = -2 * t * y[0]! * y[0]!;
  },
};
const witchExact = (t: number) => 1 / (1 + t * t);

/** Harmonic oscillator with the nonlinear detour y3 = y1², checked by its own derivative. */
const oscillator: OdeProblem = {
  dimension: 3,
  autonomous: true,
  rhs: (_t, y, out) => {
    out[0] = y[1]!;
    out[1] = -y[0]!;
    out[2] = 2 * y[0]! * y[1]!;
  },
};

/** Prothero and Robinson's stiff problem: y' = L (y - cos t) - sin t, y(0) = 1, so y = cos t for every L. */
const stiff = (lambda: number): OdeProblem => ({
  dimension: 1,
  rhs: (t, y, out) => {
    out[0] = lambda * (y[0]! - Math.cos(t)) - Math.sin(t);
  },
});

/** Exactly `steps` equal steps: tolerances so loose that none is refused or stretched. */
function fixed(problem: OdeProblem, y0: number[], t1: number, steps: number) {
  const h = t1 / steps;
  const result = integrate(problem, 0, y0, t1, { rtol: 1, atol: 1e6, firstStep: h, maxStep: h });
  expect(result.reason).toBe('finished');
  expect(result.steps).toBe(steps);
  return result;
}

describe('coefficients', () => {
  it('are consistent: transformed back, stage times follow from the weights', () => {
    // alpha_i = sum_j alpha_ij and gamma_i = gamma + sum_j gamma_ij, from A = alpha Gamma^-1 and
    // C = diag(1/gamma) - Gamma^-1 (Hairer and Wanner, IV.7, eq. 7.25 on).
    const s = RODAS4.stages;
    const inverseGamma = RODAS4.c.map((row, i) =>
      Array.from({ length: s }, (_, j) => (j === i ? 1 / RODAS4.gamma : -(row[j] ?? 0))),
    );
    const Gamma = inverseOfLowerTriangle(inverseGamma);
    for (let i = 0; i < s; i++) {
      let alphaSum = 0;
      let gammaSum = 0;
      for (let j = 0; j < s; j++) {
        gammaSum += Gamma[i]![j]!;
        for (let k = 0; k < s; k++) alphaSum += (RODAS4.a[i]![k] ?? 0) * Gamma[k]![j]!;
      }
      expect(alphaSum).toBeCloseTo(RODAS4.alpha[i]!, 12);
      expect(gammaSum).toBeCloseTo(RODAS4.gammaSum[i]!, 12);
    }
  });
});

describe('order of convergence', () => {
  const order = (error: (steps: number) => number, steps: number) =>
    Math.log2(error(steps) / error(2 * steps));

  it('is 4 where f depends on time and is not linear', () => {
    const error = (steps: number) => Math.abs(fixed(witch, [1], 2, steps).y[0]! - witchExact(2));
    // Forward differences for df/dt and df/dy cost about half the digits, hence moderate steps.
    expect(order(error, 16)).toBeGreaterThan(3.7);
    expect(order(error, 16)).toBeLessThan(4.6);
  });

  it('is 4 for a system', () => {
    const error = (steps: number) => {
      const { y } = fixed(oscillator, [1, 0, 1], 3, steps);
      return Math.hypot(y[0]! - Math.cos(3), y[1]! + Math.sin(3), y[2]! - Math.cos(3) ** 2);
    };
    expect(order(error, 24)).toBeGreaterThan(3.7);
    expect(order(error, 24)).toBeLessThan(4.6);
  });

  it('is at least 3 between the steps (local order 4)', () => {
    const error = (steps: number) => {
      const { dense } = fixed(oscillator, [1, 0, 1], 3, steps);
      const y = new Float64Array(3);
      let worst = 0;
      for (let k = 0; k <= 997; k++) {
        const t = (3 * k) / 997;
        dense.value(t, y);
        worst = Math.max(worst, Math.abs(y[0]! - Math.cos(t)), Math.abs(y[1]! + Math.sin(t)));
      }
      return worst;
    };
    expect(order(error, 24)).toBeGreaterThan(2.8);
  });
});

describe('stiff problem of Prothero and Robinson', () => {
  const solve = (lambda: number) =>
    integrate(stiff(lambda), 0, [1], 10, { rtol: 1e-6, atol: 1e-6 });

  it.each([-1e2, -1e4, -1e6])('lambda %d: within the tolerance', (lambda) => {
    const { y, reason } = solve(lambda);
    expect(reason).toBe('finished');
    expect(Math.abs(y[0]! - Math.cos(10))).toBeLessThan(2e-6);
  });

  it('needs no more steps as it gets stiffer (an explicit method: in proportion to lambda)', () => {
    const tries = (lambda: number) => solve(lambda).steps + solve(lambda).rejected;
    expect(tries(-1e6)).toBeLessThanOrEqual(tries(-1e2));
  });

  it('damps what a stiff mode leaves in one step (L-stable)', () => {
    const decay: OdeProblem = {
      dimension: 1,
      autonomous: true,
      rhs: (_t, y, out) => {
        out[0] = -1e9 * y[0]!;
      },
    };
    expect(Math.abs(fixed(decay, [1], 1, 1).y[0]!)).toBeLessThan(1e-6);
  });
});

describe('adaptive steps', () => {
  it.each([1e-4, 1e-6, 1e-8])('keep the global error near rtol %d', (rtol) => {
    const { y } = integrate(oscillator, 0, [1, 0, 1], 20, { rtol, atol: rtol });
    expect(Math.abs(y[0]! - Math.cos(20))).toBeLessThan(40 * rtol);
  });

  it('leave alone a component with an infinite tolerance', () => {
    const slow = { rtol: 1e-6, atol: [1e-6, Infinity] };
    const problem: OdeProblem = {
      dimension: 2,
      autonomous: true,
      rhs: (_t, y, out) => {
        out[0] = -y[0]!;
        out[1] = 1e6 * y[0]!;
      },
    };
    const { y, steps } = integrate(problem, 0, [1, 0], 5, slow);
    expect(steps).toBeLessThan(60);
    expect(y[1]! / 1e6).toBeCloseTo(1 - Math.exp(-5), 5);
  });

  it('keep a linear invariant to rounding', () => {
    const exchange: OdeProblem = {
      dimension: 3,
      autonomous: true,
      rhs: (_t, y, out) => {
        const a = 3 * (y[0]! - y[1]!) * (1 + 0.1 * y[0]!);
        const b = 0.2 * (y[1]! - y[2]!);
        out[0] = -a;
        out[1] = a - b;
        out[2] = b;
      },
    };
    const { y } = integrate(exchange, 0, [5, 1, 2], 30, { rtol: 1e-4, atol: 1e-4 });
    expect(Math.abs(y[0]! + y[1]! + y[2]! - 8)).toBeLessThan(1e-9);
  });
});

describe('events', () => {
  it('lie where the exact solution crosses', () => {
    const result = integrate(oscillator, 0, [1, 0, 1], 100, {
      rtol: 1e-8,
      atol: 1e-8,
      events: [
        { value: (_t, y) => y[0]! - 0.5, direction: 1 },
        { value: (_t, y) => y[0]! + 5, direction: 0 },
      ],
    });
    expect(result.reason).toBe('event');
    expect(result.event).toBe(0);
    expect(result.t).toBeCloseTo((5 * Math.PI) / 3, 6); // cos rises through 1/2
    expect(result.dense.endOf(result.dense.steps - 1)).toBeCloseTo(result.t, 12);
  });

  it('take the earliest of several and the asked direction only', () => {
    const at = (direction: -1 | 0 | 1) =>
      integrate(oscillator, 0, [1, 0, 1], 100, {
        rtol: 1e-8,
        atol: 1e-8,
        events: [
          { value: (t) => t - 50, direction: 0 },
          { value: (_t, y) => y[1]!, direction },
        ],
      }).t;
    expect(at(1)).toBeCloseTo(Math.PI, 6); // -sin rises through zero
    expect(at(-1)).toBeCloseTo(2 * Math.PI, 6); // it starts at zero, which is no crossing
  });

  it('leave a dense output that still follows the solution in the shortened step', () => {
    const { t, dense } = integrate(oscillator, 0, [1, 0, 1], 100, {
      rtol: 1e-7,
      atol: 1e-7,
      events: [{ value: (_t, y) => y[0]!, direction: -1 }],
    });
    const y = new Float64Array(3);
    for (const share of [0.2, 0.5, 0.9, 1]) {
      const start = dense.startOf(dense.steps - 1);
      const at = start + share * (t - start);
      dense.value(at, y);
      expect(Math.abs(y[0]! - Math.cos(at))).toBeLessThan(1e-5);
    }
  });
});

describe('ends with a reason', () => {
  it('too many steps', () => {
    const { reason, t } = integrate(oscillator, 0, [1, 0, 1], 1e6, {
      rtol: 1e-6,
      atol: 1e-6,
      maxSteps: 50,
    });
    expect(reason).toBe('too-many-steps');
    expect(t).toBeLessThan(1e6);
  });

  it('a solution that runs away in finite time', () => {
    // y' = y², y(0) = 1 has its pole at t = 1.
    const pole: OdeProblem = {
      dimension: 1,
      autonomous: true,
      rhs: (_t, y, out) => {
        out[0] = y[0]! * y[0]!;
      },
    };
    const { reason, t } = integrate(pole, 0, [1], 2, { rtol: 1e-6, atol: 1e-6 });
    expect(['step-too-small', 'not-finite']).toContain(reason);
    expect(t).toBeGreaterThan(0.99);
    expect(t).toBeLessThan(1.01);
  });

  it('NaN at the start', () => {
    expect(integrate(oscillator, 0, [NaN, 0, 1], 1, { rtol: 1e-6, atol: 1e-6 }).reason).toBe(
      'not-finite',
    );
  });

  it('nothing to do', () => {
    const { reason, y } = integrate(oscillator, 0, [1, 0, 1], 0, { rtol: 1e-6, atol: 1e-6 });
    expect(reason).toBe('finished');
    expect([...y]).toEqual([1, 0, 1]);
  });
});

describe('dense solution', () => {
  it('joins runs one after the other', () => {
    const dense = new DenseSolution(3);
    const settings = { rtol: 1e-8, atol: 1e-8, dense };
    const first = integrate(oscillator, 0, [1, 0, 1], 2, settings);
    integrate(oscillator, 2, first.y, 300, settings); // long enough to grow the store
    expect(dense.steps).toBeGreaterThan(64);
    const y = new Float64Array(3);
    for (const t of [0, 0.7, 2, 2.0001, 17, 299.5, 300]) {
      dense.value(t, y);
      expect(Math.abs(y[0]! - Math.cos(t))).toBeLessThan(2e-5);
    }
  });
});

function inverseOfLowerTriangle(m: number[][]): number[][] {
  const n = m.length;
  const out = m.map((row) => row.map(() => 0));
  for (let j = 0; j < n; j++) {
    for (let i = j; i < n; i++) {
      let sum = i === j ? 1 : 0;
      for (let k = j; k < i; k++) sum -= m[i]![k]! * out[k]![j]!;
      out[i]![j] = sum / m[i]![i]!;
    }
  }
  return out;
}
