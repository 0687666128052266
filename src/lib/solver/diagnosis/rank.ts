/** Which fault the readings speak for, how strongly, how bad it is, and what they cannot tell apart. */
import { logSum } from '../numerics/gaussian';
import type { Loop } from '../loop/types';
import { faultGrid, type Grid, type Shown } from './grid';
import { fit, logLikelihood, logLikelihoodOfUnknown, predictedOf, type Fitted } from './likelihood';
import type { Conditions, Fault, Reading } from './types';

/** Weight of "none of these" before any measurement, as {@link Fault.weight}. */
export const UNKNOWN_WEIGHT = 0.5;

/** Share of belief that the stated set comes to. */
export const SET_SHARE = 0.9;

/**
 * Up to this ratio of likelihoods two causes are not told apart.
 * @source Kass & Raftery, J. Amer. Statist. Assoc. 90 (1995) 773-795: 1 to 3, not worth more than a
 *   bare mention (from memory)
 */
export const NOT_TOLD_APART = 3;

/** A cause more than this unlikely is not worth a sentence. */
const WORTH_A_WORD = 0.02;

export interface Cause {
  /** Null: none of these. */
  readonly fault: Fault | null;
  /** Before the readings. */
  readonly prior: number;
  readonly logLikelihood: number;
  /** After them; all causes sum to 1. */
  readonly probability: number;
  /** Best and spread of its severity; null where it has none. */
  readonly severity: { readonly mean: number; readonly sigma: number } | null;
  /** At the likeliest severity; empty for none of these. */
  readonly fit: readonly Fitted[];
  /** Every severity with its share of this cause's belief. */
  readonly spread: readonly { readonly shown: Shown; readonly share: number }[];
}

export interface Diagnosis {
  /** Likeliest first. */
  readonly causes: readonly Cause[];
  /** The leading causes whose sum comes nearest to {@link SET_SHARE}, at least one. */
  readonly set: readonly Cause[];
  /** Pairs, the likelier first, that the readings do not tell apart. */
  readonly pairs: readonly (readonly [Cause, Cause])[];
  /** Readings that no known cause predicts (heat stated outright has no charge air). */
  readonly unused: readonly Reading[];
  /** Likeliest severity of the best cause misses a reading by this many standard deviations. */
  readonly worst: Fitted | null;
  /** No known cause comes near the readings: they contradict each other, or the cause is none of these. */
  readonly contradicts: boolean;
  readonly readings: readonly Reading[];
  readonly grid: Grid;
}

/**
 * Rank the causes by Bayes: probability ∝ weight × likelihood, the likelihood of a fault being the mean
 * over its severities. Nothing measured gives the weights back.
 * @throws {@link SolverError} where the loop as described cannot be solved
 * @source Bayes' theorem; the sum over severities is a quadrature by middles of equal parts
 */
export function diagnose(
  loop: Loop,
  readings: readonly Reading[],
  conditions: Conditions,
): Diagnosis {
  return rank(faultGrid(loop, conditions), readings, conditions);
}

/** As {@link diagnose}, on a grid already solved. */
export function rank(grid: Grid, given: readonly Reading[], conditions: Conditions): Diagnosis {
  const described = grid[0]!.shown[0]!;
  const readings = given.filter((r) => Number.isFinite(predictedOf(described, r)));
  const unused = given.filter((r) => !readings.includes(r));
  const total = grid.reduce((sum, { fault }) => sum + fault.weight, UNKNOWN_WEIGHT);

  const raw = grid.map(({ fault, shown }) => {
    const logs = shown.map((s) => logLikelihood(s, readings, conditions));
    const all = logSum(logs);
    const shares = logs.map((l) => (all === -Infinity ? 1 / logs.length : Math.exp(l - all)));
    return {
      fault,
      prior: fault.weight / total,
      logLikelihood: all - Math.log(shown.length),
      spread: shown.map((s, i) => ({ shown: s, share: shares[i]! })),
    };
  });
  const unknown = {
    fault: null,
    prior: UNKNOWN_WEIGHT / total,
    logLikelihood: logLikelihoodOfUnknown(readings),
    spread: [],
  };
  const evidence = logSum([...raw, unknown].map((c) => Math.log(c.prior) + c.logLikelihood));
  const causes = [...raw, unknown]
    .map(({ fault, prior, logLikelihood, spread }): Cause => {
      const best = spread.reduce<(typeof spread)[number] | null>(
        (top, s) => (top && top.share >= s.share ? top : s),
        null,
      );
      return {
        fault,
        prior,
        logLikelihood,
        probability: Math.exp(Math.log(prior) + logLikelihood - evidence),
        severity: fault?.severity ? momentsOf(spread) : null,
        fit: best ? fit(best.shown, readings, conditions) : [],
        spread,
      };
    })
    .sort((a, b) => b.probability - a.probability);

  const set = nearestSet(causes);
  const known = causes.find((c) => c.fault)!;
  return {
    causes,
    set,
    pairs: pairsOf(set),
    unused,
    worst: known.fit.reduce<Fitted | null>(
      (top, f) => (top && Math.abs(top.z) >= Math.abs(f.z) ? top : f),
      null,
    ),
    contradicts: causes[0]!.fault === null,
    readings,
    grid,
  };
}

function momentsOf(spread: Cause['spread']): { mean: number; sigma: number } {
  const mean = spread.reduce((sum, { shown, share }) => sum + share * shown.severity, 0);
  const square = spread.reduce(
    (sum, { shown, share }) => sum + share * (shown.severity - mean) ** 2,
    0,
  );
  return { mean, sigma: Math.sqrt(square) };
}

/** Rounding up to the next cause would claim too much: the sum nearest to the share asked is taken. */
function nearestSet(causes: readonly Cause[]): Cause[] {
  let sum = 0;
  let n = 0;
  for (; n < causes.length; n++) {
    const next = sum + causes[n]!.probability;
    if (n > 0 && Math.abs(next - SET_SHARE) >= Math.abs(sum - SET_SHARE)) break;
    sum = next;
  }
  return causes.slice(0, n);
}

function pairsOf(set: readonly Cause[]): [Cause, Cause][] {
  const worth = set.filter((c) => c.fault && c.probability > WORTH_A_WORD);
  return worth.flatMap((a, i) =>
    worth
      .slice(i + 1)
      .filter((b) => Math.abs(a.logLikelihood - b.logLikelihood) < Math.log(NOT_TOLD_APART))
      .map((b): [Cause, Cause] => [a, b]),
  );
}

/** Terms of the line that shows Bayes for the leading cause; null where it has no likelihood to divide by. */
export function bayesTerms({ causes }: Diagnosis) {
  const [first, second, third] = causes;
  if (!first || !second || !third) return null;
  const over = (c: Cause) => Math.exp(c.logLikelihood - first.logLikelihood);
  const terms = {
    w_1: first.prior,
    w_2: second.prior,
    B_2: over(second),
    w_3: third.prior,
    B_3: over(third),
    R: causes.slice(3).reduce((sum, c) => sum + c.prior * over(c), 0),
  };
  return Object.values(terms).every(Number.isFinite) ? terms : null;
}
