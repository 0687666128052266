/** Nonlinear least squares with bounds and robust losses, by damped Gauss-Newton steps. */
import { InvalidInputError } from '../errors';
import type { Difference } from './difference';
import type { Folded } from './factor';
import { Linearised, dot } from './linearised';
import { lossSum } from './loss';
import { setUp, within, type SetUp } from './setUp';
import { dampedStep, fullStep } from './step';
import type {
  EndReason,
  LeastSquaresFit,
  LeastSquaresOptions,
  LeastSquaresProblem,
  Settle,
} from './types';

/** Converged: cosine between residuals and every column, step and gain as shares. */
const LEVEL = 1e-10;
const STEP = { start: 1e-3, estimate: 1e-6, exact: 1e-11 } as const satisfies Record<
  Settle,
  number
>;
const GAIN = 1e-15;
/** Share of the promised gain that a step must bring. */
const ACCEPTED = 1e-4;
const REFUSED_IN_A_ROW = 60;
const DAMPING = { first: 1e-3, afresh: 1e-6, least: 1e-15 } as const;
/** Steps without damping at the end, where the sum no longer shows a gain for rounding. */
const POLISH = 4;

/**
 * Least squares from `start`. Levenberg and Marquardt's damping in units of each column's norm, driven by
 * the gain ratio; each step is bent by the residuals' second derivative along it and refused where that
 * is large. Bounds: a parameter that stands on one and is pushed against it is held; others stop where
 * they meet it. Without a Jacobian, derivatives are forward differences on the way, central at the end.
 *
 * @throws {@link InvalidInputError} where counts do not fit, bounds cross or the residuals at the start
 *   are not finite
 * @source Moré, LNM 630 (1978) 105-116 (units); Nielsen, IMM-REP-1999-05 (damping); Transtrum & Sethna,
 *   arXiv:1201.5885 (geodesic acceleration); all from memory
 */
export function leastSquares(
  problem: LeastSquaresProblem,
  options: LeastSquaresOptions,
): LeastSquaresFit {
  const run = new Run(setUp(problem, options), options.settle ?? 'exact');
  return run.result(run.minimise(options.maxSteps ?? 1000, options.cancelled));
}

class Run {
  private at: Linearised;
  private by: Difference = 'forward';
  private damping: number = DAMPING.first;
  private steps = 0;
  private evaluations = 1;

  constructor(
    private readonly setUp: SetUp,
    private readonly settle: Settle,
  ) {
    const r = new Float64Array(setUp.m);
    setUp.problem.residuals(setUp.start, r);
    if (!Number.isFinite(lossSum(r, setUp.loss)))
      throw new InvalidInputError('start', 'the model gives no number at the starting values');
    this.at = this.linearised(setUp.start, r);
  }

  minimise(maxSteps: number, cancelled?: () => boolean): EndReason {
    const { settle } = this;
    for (;;) {
      if (cancelled?.()) return 'cancelled';
      let stuck = false;
      if (this.at.slope > LEVEL) {
        if (this.steps >= maxSteps) return 'too-many-steps';
        const outcome = this.advance();
        if (outcome === 'moved') continue;
        stuck = outcome === 'stuck';
        if (stuck && this.by === 'central') return 'no-better-step';
      }
      if (settle === 'start') return 'converged';
      if (this.setUp.problem.jacobian || this.by === 'central') {
        if (settle === 'exact') this.polish();
        return 'converged';
      }
      this.by = 'central';
      this.damping = DAMPING.afresh;
      this.at = this.linearised(this.at.p, this.at.r);
      if (settle === 'estimate' && !stuck) return 'converged';
    }
  }

  result(reason: EndReason): LeastSquaresFit {
    const { at, setUp } = this;
    return {
      names: setUp.problem.names,
      parameters: at.p,
      residuals: at.r,
      jacobian: at.J,
      sumOfSquares: dot(at.r, at.r),
      loss: setUp.loss,
      atBound: Array.from(at.p, (x, j) => x <= setUp.lower[j]! || x >= setUp.upper[j]!),
      reason,
      steps: this.steps,
      evaluations: this.evaluations,
    };
  }

  /** Shorten the step until it is worth taking. */
  private advance(): 'moved' | 'settled' | 'stuck' {
    const folded = this.at.folded();
    let growth = 2;
    for (let refused = 0; refused < REFUSED_IN_A_ROW; refused++) {
      const { gain, relative, saved, next } = this.attempt(folded);
      if (gain > ACCEPTED && next) {
        this.steps++;
        this.damping *= Math.max(1 / 3, 1 - (2 * Math.min(gain, 1.5) - 1) ** 3);
        this.damping = Math.max(this.damping, DAMPING.least);
        this.at = this.linearised(next.p, next.r);
        return relative <= STEP[this.settle] || saved <= GAIN ? 'settled' : 'moved';
      }
      if (relative <= STEP.exact) return 'settled';
      this.damping *= growth;
      growth *= 2;
    }
    return 'stuck';
  }

  /** One step with the damping as it stands, and what it gains of what it promised. */
  private attempt(folded: Folded) {
    const { at, setUp } = this;
    const step = dampedStep(at, folded, this.damping);
    if (!step) return { gain: -1, relative: 1, saved: 1, next: null };
    this.evaluations += step.evaluations;
    const p = within(
      at.p.map((x, j) => x + step.bent[j]!),
      setUp,
    );
    // Where a bound cuts the step, it cuts what is promised too.
    const promise = at.after(
      step.straight.map((h, j) => (p[j] === at.p[j]! + step.bent[j]! ? h : p[j]! - at.p[j]!)),
    );
    const { r, cost } = this.evaluate(p);
    const promised = dot(at.rs, at.rs) - dot(promise, promise);
    const won = at.cost - cost;
    return {
      gain: won > 0 && promised > 0 ? won / promised : -1,
      relative: this.relative(p),
      saved: Math.max(won, promised) / at.cost,
      next: { p, r },
    };
  }

  /** Undamped steps as long as each levels the slope further and costs nothing that can be seen. */
  private polish(): void {
    for (let i = 0; i < POLISH && this.at.slope > 0; i++) {
      const full = fullStep(this.at, this.at.folded());
      const p = within(
        this.at.p.map((x, j) => x + full[j]!),
        this.setUp,
      );
      if (this.relative(p) > 1e-3) return;
      const { r, cost } = this.evaluate(p);
      if (!(cost <= this.at.cost * (1 + 1e-9))) return;
      const next = this.linearised(p, r);
      if (!(next.slope < this.at.slope)) return;
      this.at = next;
    }
  }

  /** Largest move of a parameter on the way to `p`, as a share of its size. */
  private relative(p: Float64Array): number {
    const { typical } = this.setUp;
    return this.at.p.reduce(
      (most, x, j) => Math.max(most, Math.abs(p[j]! - x) / (Math.abs(x) + 1e-6 * typical[j]!)),
      0,
    );
  }

  private evaluate(p: Float64Array) {
    const r = new Float64Array(this.setUp.m);
    this.setUp.problem.residuals(p, r);
    this.evaluations++;
    return { r, cost: lossSum(r, this.setUp.loss) };
  }

  private linearised(p: Float64Array, r: Float64Array): Linearised {
    const next = new Linearised(this.setUp, p, r, this.by, this.at);
    this.evaluations += next.evaluations;
    return next;
  }
}
