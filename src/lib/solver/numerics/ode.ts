/**
 * Integration of y' = f(t, y) for small, mildly stiff systems: a Rosenbrock method of order 4 with an
 * embedded error of order 3, dense output and events. One linear system per step, no iteration, so a
 * step either succeeds or is halved: it cannot hang.
 */
import { DenseSolution } from './dense';
import { locate, type OdeEvent } from './event';
import { luFactor, luSolve } from './lu';
import { RODAS4 } from './rodas4';
import { stepFactor, type StepMemory } from './stepControl';
import { giveWorkspace, takeWorkspace } from './workspace';

export interface OdeProblem {
  readonly dimension: number;
  /** Write f(t, y) into `out`. */
  rhs(t: number, y: Float64Array, out: Float64Array): void;
  /** Write df/dy, row-major, into `out`; forward differences where absent. */
  jacobian?(t: number, y: Float64Array, out: Float64Array): void;
  /** Components on which no rate depends, gathered sums for instance: their columns of df/dy are spared. */
  readonly unused?: readonly number[];
  /** f does not depend on t: saves its time derivative. */
  readonly autonomous?: boolean;
}

export interface OdeOptions {
  readonly rtol: number;
  /** One for all, or one per component. Infinity: that component does not steer the step. */
  readonly atol: number | readonly number[];
  readonly firstStep?: number;
  readonly maxStep?: number;
  /** Tries, accepted or not. */
  readonly maxSteps?: number;
  readonly events?: readonly OdeEvent[];
  /** Steps are appended here; else a fresh one. */
  readonly dense?: DenseSolution;
}

/** Why a run ended. */
export type OdeReason = 'finished' | 'event' | 'too-many-steps' | 'step-too-small' | 'not-finite';

export interface OdeResult {
  readonly reason: OdeReason;
  readonly t: number;
  readonly y: Float64Array;
  /** Which event stopped the run; null otherwise. */
  readonly event: number | null;
  readonly dense: DenseSolution;
  readonly steps: number;
  readonly rejected: number;
  readonly rhsCalls: number;
}

const { stages, gamma, alpha, gammaSum, dense2, dense3 } = RODAS4;
/** Rows of the triangles of coefficients, one after the other. */
const flat = (rows: readonly (readonly number[])[]) =>
  Float64Array.from(
    { length: stages * stages },
    (_, i) => rows[Math.floor(i / stages)]![i % stages] ?? 0,
  );
const a = flat(RODAS4.a);
const c = flat(RODAS4.c);

/**
 * Integrate from `t0` to `t1` > `t0`.
 *
 * The error of a step is the root mean square of the embedded error over `atol + rtol |y|`.
 * The run ends with a reason; only `finished` reached `t1`, `event` stopped where the event lies.
 */
export function integrate(
  problem: OdeProblem,
  t0: number,
  y0: ArrayLike<number>,
  t1: number,
  options: OdeOptions,
): OdeResult {
  const n = problem.dimension;
  const { rtol, maxStep = t1 - t0, maxSteps = 100_000, events = [] } = options;
  const atol = Float64Array.from({ length: n }, (_, i) =>
    typeof options.atol === 'number' ? options.atol : options.atol[i]!,
  );
  const dense = options.dense ?? new DenseSolution(n);

  let t = t0;
  let y = Float64Array.from(y0);
  let next = new Float64Array(n);
  const workspace = takeWorkspace(n);
  const { f, shifted, slope, fTime, jacobian, matrix, pivot, u, look } = workspace;
  let rhsCalls = 0;
  let steps = 0;
  let rejected = 0;

  const rhs = (at: number, x: Float64Array, out: Float64Array) => {
    rhsCalls++;
    problem.rhs(at, x, out);
  };
  const end = (reason: OdeReason, event: number | null = null): OdeResult => {
    giveWorkspace(n, workspace);
    return { reason, t, y, event, dense, steps, rejected, rhsCalls };
  };

  rhs(t, y, f);
  if (!allFinite(f) || !allFinite(y)) return end('not-finite');
  if (!(t1 > t0)) return end('finished');
  let h = Math.min(options.firstStep ?? firstStep(y, f, atol, rtol, t1 - t0), maxStep, t1 - t0);
  const memory: StepMemory = { step: 0, error: 0 };
  let justRejected = false;
  let haveJacobian = false;
  const before = events.map((event) => event.value(t, y));

  for (let tries = 0; tries < maxSteps; tries++) {
    if (h < 8 * Number.EPSILON * Math.max(Math.abs(t), t1 - t0)) return end('step-too-small');
    // A last sliver would only cost a step of its own.
    const last = t + 1.0000001 * h >= t1;
    if (last) h = t1 - t;

    if (!haveJacobian) {
      if (problem.jacobian) problem.jacobian(t, y, jacobian);
      else differenceJacobian(rhs, t, y, f, jacobian, shifted, slope, problem.unused);
      if (!problem.autonomous) timeDerivative(rhs, t, h, y, f, fTime, slope);
      haveJacobian = true;
    }
    const diagonal = 1 / (h * gamma);
    for (let i = 0; i < n * n; i++) matrix[i] = -jacobian[i]!;
    for (let i = 0; i < n; i++) matrix[i * n + i] = matrix[i * n + i]! + diagonal;
    let ok = luFactor(matrix, n, pivot);

    for (let stage = 0; ok && stage < stages; stage++) {
      const row = stage * stages;
      const o = stage * n;
      if (stage === 0) slope.set(f);
      else {
        for (let i = 0; i < n; i++) {
          let sum = y[i]!;
          for (let j = 0, p = i; j < stage; j++, p += n) sum += a[row + j]! * u[p]!;
          next[i] = sum;
        }
        rhs(t + alpha[stage]! * h, next, slope);
      }
      const timeWeight = h * gammaSum[stage]!;
      for (let i = 0; i < n; i++) {
        let sum = 0;
        for (let j = 0, p = i; j < stage; j++, p += n) sum += c[row + j]! * u[p]!;
        u[o + i] = slope[i]! + sum / h + timeWeight * fTime[i]!;
      }
      luSolve(matrix, n, pivot, u, o);
    }

    // Stiffly accurate: the last stage is the error, and the last argument plus it the result.
    let error = 0;
    let steering = 0;
    const o6 = (stages - 1) * n;
    for (let i = 0; i < n; i++) {
      const e = u[o6 + i]!;
      next[i] = next[i]! + e;
      if (atol[i] === Infinity) continue;
      const scale = atol[i]! + rtol * Math.max(Math.abs(y[i]!), Math.abs(next[i]!));
      error += (e / scale) ** 2;
      steering++;
    }
    error = Math.sqrt(error / Math.max(steering, 1));
    ok &&= Number.isFinite(error) && allFinite(next);

    if (!ok || error > 1) {
      rejected++;
      h *= ok ? stepFactor(error, h, memory, true) : 0.25;
      justRejected = true;
      continue;
    }

    steps++;
    const offset = dense.append(t, h);
    for (let i = 0; i < n; i++) {
      let q2 = 0;
      let q3 = 0;
      for (let j = 0; j < 5; j++) {
        q2 += dense2[j]! * u[j * n + i]!;
        q3 += dense3[j]! * u[j * n + i]!;
      }
      dense.put(offset, i, y[i]!, next[i]!, q2, q3);
    }
    const tNext = last ? t1 : t + h;
    const found = locate(events, before, dense, t, tNext, look);
    [y, next] = [next, y];
    t = tNext;
    if (found) {
      t = found.t;
      dense.value(t, y);
      dense.shorten(t);
      return end('event', found.index);
    }
    if (last) return end('finished');

    let factor = stepFactor(error, h, memory, false);
    if (justRejected) factor = Math.min(factor, 1);
    justRejected = false;
    h = Math.min(h * factor, maxStep);
    rhs(t, y, f);
    if (!allFinite(f)) return end('not-finite');
    haveJacobian = false;
  }
  return end('too-many-steps');
}

function allFinite(x: Float64Array): boolean {
  let sum = 0;
  for (let i = 0; i < x.length; i++) sum += x[i]! * 0; // NaN and infinities leave a NaN
  return sum === 0;
}

/** A step over which the fastest component moves by ten tolerances. */
function firstStep(
  y: Float64Array,
  f: Float64Array,
  atol: Float64Array,
  rtol: number,
  span: number,
): number {
  let fastest = 0;
  for (let i = 0; i < y.length; i++) {
    if (atol[i] === Infinity) continue;
    fastest = Math.max(fastest, Math.abs(f[i]!) / (atol[i]! + rtol * Math.abs(y[i]!)));
  }
  // The error of a step goes with its fourth power, so this is cautious; later steps grow fast.
  return fastest > 0 ? Math.min(10 / fastest, span) : span;
}

type Rhs = OdeProblem['rhs'];

function differenceJacobian(
  rhs: Rhs,
  t: number,
  y: Float64Array,
  f: Float64Array,
  out: Float64Array,
  shifted: Float64Array,
  slope: Float64Array,
  unused: readonly number[] = [],
): void {
  const n = y.length;
  shifted.set(y);
  for (let j = 0; j < n; j++) {
    if (unused.includes(j)) continue; // the column was zero from the start
    const delta = Math.sqrt(Number.EPSILON) * Math.max(1e-5, Math.abs(y[j]!));
    shifted[j] = y[j]! + delta;
    const exact = shifted[j]! - y[j]!; // what the double really moved
    rhs(t, shifted, slope);
    for (let i = 0; i < n; i++) out[i * n + j] = (slope[i]! - f[i]!) / exact;
    shifted[j] = y[j]!;
  }
}

function timeDerivative(
  rhs: Rhs,
  t: number,
  h: number,
  y: Float64Array,
  f: Float64Array,
  out: Float64Array,
  slope: Float64Array,
): void {
  // Never past the step, where f might jump.
  const delta = Math.min(Math.sqrt(Number.EPSILON) * Math.max(1, Math.abs(t)), h);
  const exact = t + delta - t;
  rhs(t + delta, y, slope);
  for (let i = 0; i < y.length; i++) out[i] = (slope[i]! - f[i]!) / exact;
}
