/** The residuals and their derivatives where a fit stands. */
import { differences, type Difference } from './difference';
import { fold, type Folded } from './factor';
import { lossSum, rescale } from './loss';
import type { SetUp } from './setUp';

/** Share of a column's largest norm so far that is remembered at the next point. */
const MEMORY = 0.5;

export class Linearised {
  /** Derivatives, one column after the other. */
  readonly J: Float64Array;
  /** Residuals and derivatives as the loss rescales them. */
  readonly rs: Float64Array;
  readonly Js: Float64Array;
  /** Norm of each column here. */
  readonly norms: Float64Array;
  /** Unit in which each parameter is damped: its column's norm, or what is remembered of larger ones. */
  readonly units: Float64Array;
  /** Sum of the losses. */
  readonly cost: number;
  /** Parameters that may move: not those on a bound and pushed against it, nor those that do nothing. */
  readonly free: readonly number[];
  /** Largest cosine between the residuals and a column that may move; 0 at a minimum. */
  readonly slope: number;
  /** How often the residuals were evaluated for the derivatives. */
  readonly evaluations: number;

  constructor(
    readonly setUp: SetUp,
    readonly p: Float64Array,
    readonly r: Float64Array,
    readonly by: Difference,
    before?: Linearised,
  ) {
    const { problem, n, m, loss, lower, upper } = setUp;
    this.J = new Float64Array(m * n);
    if (problem.jacobian) problem.jacobian(p, this.J);
    this.evaluations = problem.jacobian
      ? 0
      : differences(problem, { ...setUp, p, at: r, by }, this.J);
    this.rs = r.slice();
    this.Js = this.J.slice();
    rescale(this.rs, this.Js, loss);
    this.cost = lossSum(r, loss);
    this.norms = Float64Array.from({ length: n }, (_, j) =>
      Math.sqrt(dot(this.column(j), this.column(j))),
    );
    this.units = this.norms.map((norm, j) => Math.max(norm, MEMORY * (before?.units[j] ?? 0)));
    const size = Math.sqrt(dot(this.rs, this.rs));
    const free: number[] = [];
    let slope = 0;
    for (let j = 0; j < n; j++) {
      const push = dot(this.column(j), this.rs);
      const held = (p[j]! <= lower[j]! && push >= 0) || (p[j]! >= upper[j]! && push <= 0);
      if (held || !(this.norms[j]! > 0)) continue;
      free.push(j);
      if (size > 0) slope = Math.max(slope, Math.abs(push) / (this.norms[j]! * size));
    }
    this.free = free;
    this.slope = slope;
  }

  /** The columns that may move, each over its unit, folded. */
  folded(): Folded {
    const { m } = this.setUp;
    const columns = new Float64Array(m * this.free.length);
    this.free.forEach((j, k) => {
      const column = this.column(j);
      for (let i = 0; i < m; i++) columns[k * m + i] = column[i]! / this.units[j]!;
    });
    return fold(columns, m, this.free.length, this.rs.slice());
  }

  /** What the residuals become to first order after a step. */
  after(step: Float64Array): Float64Array {
    const out = this.rs.slice();
    for (let j = 0; j < step.length; j++) {
      const column = this.column(j);
      const h = step[j]!;
      if (h !== 0) for (let i = 0; i < out.length; i++) out[i] = out[i]! + column[i]! * h;
    }
    return out;
  }

  /** A step of the free parameters in their units as one of all in their own. */
  spread(scaled: Float64Array): Float64Array {
    const step = new Float64Array(this.setUp.n);
    this.free.forEach((j, k) => (step[j] = scaled[k]! / this.units[j]!));
    return step;
  }

  /** Column of the rescaled derivatives. */
  column(j: number): Float64Array {
    return this.Js.subarray(j * this.setUp.m, (j + 1) * this.setUp.m);
  }
}

export function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
