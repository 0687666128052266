/** Words of nonlinear least squares: what is asked, what comes back. Numbers without units. */

/** What is fitted: residuals as a function of the parameters. */
export interface LeastSquaresProblem {
  /** Names of the parameters, in their order; used in what is told about them. */
  readonly names: readonly string[];
  /** How many residuals there are. */
  readonly count: number;
  /** Fill `out` with the residuals at `p`; a number that is not finite refuses the step. */
  residuals(p: Float64Array, out: Float64Array): void;
  /** Fill `out` with the derivatives, one column after the other; left out: by differences. */
  jacobian?(p: Float64Array, out: Float64Array): void;
}

/** How a residual counts. `scale`: from this size on it counts as an outlier. */
export type Loss =
  | { readonly kind: 'squares' }
  | { readonly kind: 'huber'; readonly scale: number }
  | { readonly kind: 'soft-l1'; readonly scale: number };

/**
 * `start`: to a thousandth of a parameter, a start for another fit. `estimate`: to a millionth, far below
 * any deviation, with central differences where it ends. `exact`: to the last digits that differences give.
 */
export type Settle = 'start' | 'estimate' | 'exact';

export interface LeastSquaresOptions {
  readonly start: readonly number[];
  /** Bounds of each parameter; they may be infinite. */
  readonly lower?: readonly number[];
  readonly upper?: readonly number[];
  /** A usual size of each parameter, for differences where its value is near zero; 1 unless told. */
  readonly typical?: readonly number[];
  readonly loss?: Loss;
  readonly maxSteps?: number;
  /** How closely the minimum is sought; `exact` unless told. */
  readonly settle?: Settle;
  /** Called before each step; true ends the run as it stands. */
  readonly cancelled?: () => boolean;
}

/** Why a run ended. Only `converged` is a minimum. */
export type EndReason = 'converged' | 'too-many-steps' | 'no-better-step' | 'cancelled';

export interface LeastSquaresFit {
  readonly names: readonly string[];
  readonly parameters: Float64Array;
  readonly residuals: Float64Array;
  /** Derivatives at the solution, one column after the other. */
  readonly jacobian: Float64Array;
  /** Sum of squares of the residuals, each counted in full. */
  readonly sumOfSquares: number;
  readonly loss: Loss;
  /** Which parameters ended on a bound. */
  readonly atBound: readonly boolean[];
  readonly reason: EndReason;
  readonly steps: number;
  readonly evaluations: number;
}
