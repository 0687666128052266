/** How sure a fit is of each parameter. */
import { fold } from './factor';
import { lossSlopes } from './loss';
import { studentHalfWidth } from './studentT';
import type { LeastSquaresFit } from './types';

export interface Estimate {
  readonly name: string;
  readonly value: number;
  /** One standard deviation; Infinity where the readings say nothing of it. */
  readonly deviation: number;
  /** Ends of the interval at the confidence asked. */
  readonly low: number;
  readonly high: number;
  /** One standard deviation if every other parameter were known: what this log could tell at best. */
  readonly alone: number;
  /** It ended on a bound, so its deviation is that of a fit that was not let go. */
  readonly atBound: boolean;
}

export interface Estimates {
  readonly parameters: readonly Estimate[];
  /** n × n, row by row. */
  readonly covariance: Float64Array;
  readonly correlation: Float64Array;
  /** Standard deviation of a residual, with the parameters' share taken off. */
  readonly residualDeviation: number;
  readonly freedom: number;
  readonly confidence: number;
}

/** A direction weaker than this share of the strongest is rounding: nothing is known along it. */
const NOTHING = 1e-12;

/**
 * Covariance s² (JᵀJ)⁻¹, with s² = Σr²/(m - n); for a robust loss Huber's correction stands for s².
 * Parameters are scaled by their columns first, so units do not matter.
 *
 * @param noise - when the standard deviation of the residuals is known beforehand, that instead of s
 * @source Seber & Wild, Nonlinear Regression, 1989, ch. 5; Huber, Robust Statistics, 1981, sec. 7.6 (from memory)
 */
export function estimates(
  fit: LeastSquaresFit,
  { confidence = 0.95, noise }: { confidence?: number; noise?: number } = {},
): Estimates {
  const n = fit.parameters.length;
  const m = fit.residuals.length;
  const freedom = Math.max(0, m - n);
  const s = noise ?? residualDeviation(fit);
  const { norms, covariance } = covarianceOf(fit.jacobian, n, s);
  const deviation = (i: number) => {
    const variance = covariance[i * n + i]!;
    return norms[i]! > 0 && Number.isFinite(variance) ? Math.sqrt(variance) : Infinity;
  };
  const correlation = new Float64Array(n * n);
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++)
      correlation[i * n + j] = i === j ? 1 : covariance[i * n + j]! / (deviation(i) * deviation(j));
  const wide = freedom >= 1 ? studentHalfWidth(confidence, freedom) : Infinity;
  const parameters = fit.names.map((name, i): Estimate => {
    const value = fit.parameters[i]!;
    const d = deviation(i);
    return {
      name,
      value,
      deviation: d,
      low: value - wide * d,
      high: value + wide * d,
      alone: norms[i]! > 0 ? s / norms[i]! : Infinity,
      atBound: fit.atBound[i]!,
    };
  });
  return { parameters, covariance, correlation, residualDeviation: s, freedom, confidence };
}

/**
 * Covariance s² (JᵀJ)⁻¹ of parameters from derivatives of the readings, one column after the other, and
 * the norms of the columns. At the true parameters this is the bound of Cramér and Rao.
 */
export function covarianceOf(jacobian: Float64Array, n: number, s: number) {
  const { norms, inverse } = scaledInverse(jacobian, jacobian.length / n, n);
  const covariance = inverse.map((x, at) => {
    const scale = norms[Math.floor(at / n)]! * norms[at % n]!;
    return (s * s * x) / scale;
  });
  return { norms, covariance };
}

/** Norms of the columns and (JᵀJ)⁻¹ of the columns over their norms; Infinity along what is unknown. */
function scaledInverse(jacobian: Float64Array, m: number, n: number) {
  const J = jacobian.slice();
  const norms = new Float64Array(n);
  for (let j = 0; j < n; j++) {
    const column = J.subarray(j * m, (j + 1) * m);
    norms[j] = Math.sqrt(column.reduce((sum, x) => sum + x * x, 0));
    if (norms[j]! > 0) for (let i = 0; i < m; i++) column[i] = column[i]! / norms[j]!;
  }
  const { s, v } = fold(J, m, n, new Float64Array(m));
  const inverse = new Float64Array(n * n);
  for (let a = 0; a < n; a++) {
    const known = s[a]! > NOTHING * s[0]!;
    for (let i = 0; i < n; i++) {
      for (let j = 0; j < n; j++) {
        const share = v[a * n + i]! * v[a * n + j]!;
        if (known) inverse[i * n + j] = inverse[i * n + j]! + share / (s[a]! * s[a]!);
        else if (Math.abs(share) > 1e-12) inverse[i * n + j] = Infinity;
      }
    }
  }
  return { norms, inverse };
}

/** s; for a robust loss K √(Σψ²/(m-n)) / mean ψ', which for plain squares is the same s. */
function residualDeviation({ residuals, parameters, loss }: LeastSquaresFit): number {
  const m = residuals.length;
  const n = parameters.length;
  if (m <= n) return NaN;
  let psiSquares = 0;
  let slopes = 0;
  let slopeSquares = 0;
  for (const r of residuals) {
    const [first, second] = lossSlopes(r, loss);
    const z = loss.kind === 'squares' ? 0 : (r / loss.scale) ** 2;
    // ψ = r ρ'(z) and dψ/dr = ρ' + 2 z ρ''.
    const slope = first + 2 * z * second;
    psiSquares += (r * first) ** 2;
    slopes += slope;
    slopeSquares += slope * slope;
  }
  const mean = slopes / m;
  const scatter = slopeSquares / m - mean * mean;
  const correction = 1 + (n / m) * (scatter / (mean * mean));
  return (correction * Math.sqrt(psiSquares / (m - n))) / mean;
}
