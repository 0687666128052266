import { describe, expect, it } from 'vitest';
import {
  cellConductance,
  cellRates,
  cellSpread,
  stepThroughCells,
} from '$lib/solver/loop/events/hoseCells';
import { DenseSolution } from '$lib/solver/numerics/dense';
import { integrate } from '$lib/solver/numerics/ode';

/** Outlet of a row of cells after a step of one kelvin, by the integrator. */
function outlet(N: number, tau: number) {
  const C = 1800;
  const dense = new DenseSolution(N);
  const problem = {
    dimension: N,
    autonomous: true,
    rhs: (_t: number, y: Float64Array, out: Float64Array) =>
      void cellRates(C, 301, 0, 0, (C * tau) / N, 0, N, y, out),
  };
  const start = new Float64Array(N).fill(300);
  integrate(problem, 0, start, 6 * tau, { rtol: 1e-10, atol: 1e-10, dense });
  const y = new Float64Array(N);
  return (t: number) => {
    dense.value(t, y);
    return y[N - 1]! - 300;
  };
}

describe('a step through a run of hose', () => {
  const tau = 1.7;
  // Closed form: gamma distribution of N cells in series.
  it.each([1, 2, 4, 8])('%d cells: as the closed form', (N) => {
    const at = outlet(N, tau);
    for (const t of [0.2, 0.8, 1.7, 2.5, 5]) {
      expect(Math.abs(at(t) - stepThroughCells({ t, tau, N }))).toBeLessThan(1e-6);
    }
  });

  /** Integral of |row - plug| over time; the plug is the exact step shifted by tau. */
  const apart = (N: number) => {
    const dt = tau / 4000;
    let sum = 0;
    for (let t = dt / 2; t < 12 * tau; t += dt) {
      sum += Math.abs(stepThroughCells({ t, tau, N }) - (t < tau ? 0 : 1)) * dt;
    }
    return sum;
  };

  it('brings the heat at the right time in the mean, whatever the number of cells', () => {
    for (const N of [1, 2, 4, 8, 32]) {
      const dt = tau / 2000;
      let late = 0;
      for (let t = dt / 2; t < 20 * tau; t += dt)
        late += (1 - stepThroughCells({ t, tau, N })) * dt;
      expect(Math.abs(late - tau)).toBeLessThan(1e-4 * tau);
    }
  });

  // Mean absolute deviation of a gamma law: 2 tau N^N e^-N / N!, close to the normal law's
  // sqrt(2 / pi) of the deviation. Four times the cells, half the error.
  it('comes near the shifted step as the root of the number of cells', () => {
    const factorial = (n: number): number => (n < 2 ? 1 : n * factorial(n - 1));
    for (const N of [1, 4, 16]) {
      const exact = (2 * tau * N ** N * Math.exp(-N)) / factorial(N);
      expect(Math.abs(apart(N) - exact)).toBeLessThan(1e-3 * exact);
      expect(apart(N)).toBeLessThan(cellSpread({ tau, N }));
    }
    expect(apart(4) / apart(16)).toBeCloseTo(2, 1);
  });

  it('takes up as much from around it as one mixed place would', () => {
    const [C, G, N] = [1200, 90, 4];
    const g = cellConductance({ C, G, N });
    // Steady by hand: each cell keeps C / (C + g) of the distance to what is around it.
    expect((C / (C + g)) ** N).toBeCloseTo(C / (C + G), 12);
    expect(cellConductance({ C: 0, G, N })).toBe(G / N);
    expect(cellConductance({ C, G: 0, N })).toBe(0);
  });
});
