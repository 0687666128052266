/** What a fit starts from, checked once. */
import { InvalidInputError } from '../errors';
import { requireLoss } from './loss';
import type { LeastSquaresOptions, LeastSquaresProblem, Loss } from './types';

export interface SetUp {
  readonly problem: LeastSquaresProblem;
  /** Parameters and residuals. */
  readonly n: number;
  readonly m: number;
  readonly start: Float64Array;
  readonly lower: Float64Array;
  readonly upper: Float64Array;
  readonly typical: Float64Array;
  readonly loss: Loss;
}

/** @throws {@link InvalidInputError} where counts do not fit or bounds cross */
export function setUp(problem: LeastSquaresProblem, options: LeastSquaresOptions): SetUp {
  const n = problem.names.length;
  const array = (given: readonly number[] | undefined, otherwise: number) =>
    Float64Array.from({ length: n }, (_, i) => given?.[i] ?? otherwise);
  const lower = array(options.lower, -Infinity);
  const upper = array(options.upper, Infinity);
  const loss = options.loss ?? { kind: 'squares' };
  requireLoss(loss);
  if (n === 0) throw new InvalidInputError('parameters', 'there is nothing to fit');
  if (options.start.length !== n)
    throw new InvalidInputError('start', `${n} parameters need as many starting values`);
  for (let j = 0; j < n; j++) {
    if (!(lower[j]! < upper[j]!))
      throw new InvalidInputError(problem.names[j]!, 'its lower bound is not below its upper one');
  }
  const typical = array(options.typical, 1);
  const start = within(Float64Array.from(options.start), { lower, upper });
  return { problem, n, m: problem.count, start, lower, upper, typical, loss };
}

/** `p` moved onto its bounds where it lies outside. */
export function within(
  p: Float64Array,
  { lower, upper }: Pick<SetUp, 'lower' | 'upper'>,
): Float64Array<ArrayBuffer> {
  return Float64Array.from(p, (x, j) => Math.min(Math.max(x, lower[j]!), upper[j]!));
}
