/** How well a log could tell the parameters, before it is driven or fitted. */
import { differences } from '../../fit/difference';
import { covarianceOf } from '../../fit/estimates';
import {
  PARAMETERS,
  type Channels,
  type Drive,
  type ParameterName,
  type Parameters,
  type LogModel,
} from './types';
import { ringProblem, usedRows, type Noise } from './problem';
import type { ChannelName } from './types';

export interface Design {
  readonly model: LogModel;
  readonly drive: Drive;
  /** What is read at every row, and how noisily, K. */
  readonly noise: Noise;
  /** Rows of a channel that are read; left out: all. */
  readonly reads?: (channel: ChannelName, row: number) => boolean;
}

/**
 * Derivatives of every reading over its noise, by central differences, one column after the other.
 * @param at - the parameters at which the loop is taken to stand
 */
export function sensitivities(
  { model, drive, noise, reads }: Design,
  at: Parameters,
  free: readonly ParameterName[],
): Float64Array {
  const names = Object.keys(noise) as ChannelName[];
  // Only which rows are read matters here, not what was read.
  const channels: Channels = Object.fromEntries(
    names.map((channel) => [channel, new Float64Array(drive.t.length)]),
  );
  const used = usedRows(channels, reads && ((channel, row) => !reads(channel, row)));
  const problem = ringProblem({ model, drive, channels, used, noise, known: at, free });
  const p = Float64Array.from(free, (name) => at[name]);
  const here = new Float64Array(problem.count);
  problem.residuals(p, here);
  const J = new Float64Array(problem.count * free.length);
  const range = (end: 0 | 1) => free.map((name) => PARAMETERS[name].range[end]);
  differences(
    problem,
    { p, at: here, lower: range(0), upper: range(1), typical: p.map(Math.abs), by: 'central' },
    J,
  );
  return J;
}

/**
 * Least standard deviation that any unbiased estimate can have: √ of the diagonal of (JᵀJ)⁻¹.
 * @returns SI, in the order of `free`; Infinity where the design tells nothing
 * @source bound of Cramér and Rao; Kay, Fundamentals of Statistical Signal Processing, 1993, ch. 3
 */
export function leastDeviations(
  design: Design,
  at: Parameters,
  free: readonly ParameterName[],
): readonly number[] {
  return deviationsOf([sensitivities(design, at, free)], free.length);
}

/** The same of several designs together, each told by its sensitivities. */
export function deviationsOf(parts: readonly Float64Array[], n: number): readonly number[] {
  const rows = parts.map((J) => J.length / n);
  const m = rows.reduce((a, b) => a + b, 0);
  const J = new Float64Array(m * n);
  let first = 0;
  parts.forEach((part, i) => {
    const own = rows[i]!;
    for (let j = 0; j < n; j++) J.set(part.subarray(j * own, (j + 1) * own), j * m + first);
    first += own;
  });
  const { norms, covariance } = covarianceOf(J, n, 1);
  return Array.from({ length: n }, (_, j) => {
    const variance = covariance[j * n + j]!;
    return norms[j]! > 0 && Number.isFinite(variance) ? Math.sqrt(variance) : Infinity;
  });
}
