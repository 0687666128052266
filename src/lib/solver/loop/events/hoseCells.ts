/** A run of hose as a row of equal, well-mixed cells: how it carries a change of temperature. */
import { requireWithin, type Interval } from '../../errors';

/**
 * Rates of change of one run.
 *
 * C_cell dT_i/dt = C (T_before - T_i) + g (T_around - T_i). What enters leaves, or stays, or comes from
 * around: nothing is lost on the way, at any flow and at none.
 *
 * @param C - capacity rate of the liquid, W/K
 * @param T_in - entering, K
 * @param g - conductance of each cell to its surroundings, W/K
 * @param T_around - K
 * @param cellCapacity - J/K
 * @param first - where its cells begin in `y` and `out`
 * @param count - of cells
 * @returns heat taken from around, W
 */
export function cellRates(
  C: number,
  T_in: number,
  g: number,
  T_around: number,
  cellCapacity: number,
  first: number,
  count: number,
  y: Float64Array,
  out: Float64Array,
): number {
  let before = T_in;
  let taken = 0;
  for (let i = first; i < first + count; i++) {
    const T = y[i]!;
    const heat = g === 0 ? 0 : g * (T_around - T);
    out[i] = (C * (before - T) + heat) / cellCapacity;
    taken += heat;
    before = T;
  }
  return taken;
}

/**
 * Conductance of each cell so that the whole row takes up, at a steady flow, what one mixed place of
 * conductance `G` would: then a drive settles where the steady solution lies. Standing: shared evenly.
 *
 * @formula g = C * ((1 + G / C)^(1 / N) - 1)
 * @symbol C - capacity rate of the liquid, W/K
 * @symbol G - of the whole run, W/K
 * @symbol N - number of cells
 * @returns g, W/K
 * @source (C / (C + g))^N = C / (C + G)
 * @example cellConductance({ C: 1000, G: 10, N: 2 }) // 4.98756
 */
export function cellConductance({ C, G, N }: { C: number; G: number; N: number }): number {
  if (G === 0) return 0;
  return C > 0 ? C * Math.expm1(Math.log1p(G / C) / N) : G / N;
}

export const CELLS_RANGE = {
  N: [1, 100],
  t: [0, 1e9],
  tau: [1e-9, 1e9],
} as const satisfies Record<string, Interval>;

/**
 * Share of a step at the inlet that has arrived at the outlet of a row of cells. A plug would bring
 * nothing before `tau` and all of it after; the row brings it at `tau` in the mean, spread by
 * {@link cellSpread}.
 *
 * @formula x = 1 - exp(-N t / tau) * sum((N t / tau)^k / k!, k = 0 .. N - 1)
 * @symbol t - since the step, s
 * @symbol tau - volume over flow, s
 * @symbol N - number of cells
 * @returns x, 0 to 1
 * @throws {@link OutOfRangeError} outside {@link CELLS_RANGE}
 * @source Tanks in series, Levenspiel, Chemical Reaction Engineering (from memory)
 * @example stepThroughCells({ t: 2, tau: 2, N: 1 }) // 0.632121
 */
export function stepThroughCells(at: { t: number; tau: number; N: number }): number {
  requireWithin('cells in series', CELLS_RANGE, at);
  const x = (at.N * at.t) / at.tau;
  let term = Math.exp(-x);
  let notYet = term;
  for (let k = 1; k < at.N; k++) {
    term *= x / k;
    notYet += term;
  }
  return 1 - notYet;
}

/**
 * Standard deviation of the time that liquid takes through a row of cells: the error of the row, as a
 * plug has none.
 *
 * @formula s = tau / sqrt(N)
 * @symbol tau - volume over flow, s
 * @symbol N - number of cells
 * @throws {@link OutOfRangeError} outside {@link CELLS_RANGE}
 * @source Tanks in series, Levenspiel, Chemical Reaction Engineering (from memory)
 * @example cellSpread({ tau: 2, N: 4 }) // 1
 */
export function cellSpread({ tau, N }: { tau: number; N: number }): number {
  requireWithin('cells in series', CELLS_RANGE, { tau, N, t: 0 });
  return tau / Math.sqrt(N);
}
