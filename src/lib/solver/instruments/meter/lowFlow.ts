/** Where a meter stops telling the truth: its slip at low flow, and the reach of the pulse input. */
import { spaced } from '../../numerics/spaced';
import type { KFactor } from './kFactor';

/**
 * Straight line of frequency over flow, weighted like the runs: a turbine held back by its bearing turns
 * only above some flow and stays that much behind.
 */
export interface SlipLine {
  /** Pulses per volume far above the slip, 1/m³. */
  readonly K: number;
  /** Flow at which the line reaches zero, m³/s; negative where K rises towards low flow. */
  readonly slip: number;
  /** Standard deviation of the slip, m³/s. */
  readonly slipSigma: number;
  /** Standard deviation of the frequency that the line gives at a flow, Hz. */
  sigmaAt(flow: number): number;
}

/** Flows must span this ratio before a line through them says anything of low flow. */
export const SPAN_AT_LEAST = 2;

/**
 * Slip from runs at different flows: f = K (Q - Q_0), least squares with weights by the ± of each run.
 * Null with fewer than three runs, or where their flows lie within {@link SPAN_AT_LEAST}.
 *
 * The law is a stated model (a constant drag of the bearing), common practice, no source.
 *
 * @formula u^2(f) = (S Q^2 - 2 S_x Q + S_xx) / (S S_xx - S_x^2)
 * @symbol S - sums over the runs of their weights, times Q, times Q^2
 * @source weighted least squares: JCGM 100:2008, H.3.5, with weights
 */
export function slipLine({ runs }: KFactor): SlipLine | null {
  const flows = runs.map((r) => r.flow);
  if (runs.length < 3 || Math.max(...flows) < SPAN_AT_LEAST * Math.min(...flows)) return null;
  let S = 0;
  let Sx = 0;
  let Sy = 0;
  let Sxx = 0;
  let Sxy = 0;
  for (const { flow: x, frequency: y, share } of runs) {
    // Of the frequency at that flow, one standard deviation.
    const sigma = (share * y) / 2;
    const w = 1 / (sigma * sigma);
    S += w;
    Sx += w * x;
    Sy += w * y;
    Sxx += w * x * x;
    Sxy += w * x * y;
  }
  const determinant = S * Sxx - Sx * Sx;
  const K = (S * Sxy - Sx * Sy) / determinant;
  const intercept = (Sxx * Sy - Sx * Sxy) / determinant;
  return {
    K,
    slip: -intercept / K,
    slipSigma: Math.sqrt(Sxx / determinant) / K,
    sigmaAt: (Q) => Math.sqrt((S * Q * Q - 2 * Sx * Q + Sxx) / determinant),
  };
}

/**
 * Flow above which the meter reads low by less than `share`: below it the one K-factor does not hold.
 *
 * @formula Q_low = Q_0 / x
 * @symbol Q_0 - slip, m³/s
 * @symbol x - allowed share, 1
 * @returns m³/s; 0 for a meter without slip
 */
export const linearAbove = (slip: number, share: number): number => Math.max(0, slip) / share;

/** What the pulse input does with a frequency. */
export type InputState = 'counts' | 'too-fast' | 'too-slow';

export interface PulseInput {
  /** Highest frequency it counts, Hz. */
  readonly highest: number;
  /** Lowest it takes for a flow at all, Hz: slower pulses read as standing still. */
  readonly lowest: number;
}

/** @returns what that input does with pulses at `frequency`, Hz */
export const inputState = (frequency: number, { highest, lowest }: PulseInput): InputState =>
  frequency > highest ? 'too-fast' : frequency < lowest ? 'too-slow' : 'counts';

/** What bounds the flows that may be believed. */
export type RangeLimit = 'slip' | 'maker' | 'input';

export interface RangeEnd {
  /** m³/s */
  readonly flow: number;
  readonly by: RangeLimit;
}

/** Flows at which meter, slip and input all tell the truth; the ends cross where there are none. */
export interface ReadableRange {
  readonly from: RangeEnd;
  readonly to: RangeEnd;
}

/**
 * Flows whose reading may be believed: above slip, maker's lowest and the input's slowest pulses, below
 * the maker's highest and the input's fastest.
 *
 * @param above - flow above which one K holds, m³/s; null where no slip was found
 * @param K - pulses per volume, 1/m³
 */
export function readableRange(
  above: number | null,
  made: { readonly lowest: number; readonly highest: number },
  input: PulseInput,
  K: number,
): ReadableRange {
  const ends: RangeEnd[] = [
    { flow: made.lowest, by: 'maker' },
    { flow: input.lowest / K, by: 'input' },
    ...(above === null ? [] : [{ flow: above, by: 'slip' } as const]),
  ];
  const top: RangeEnd[] = [
    { flow: made.highest, by: 'maker' },
    { flow: input.highest / K, by: 'input' },
  ];
  return {
    from: ends.reduce((a, b) => (b.flow > a.flow ? b : a)),
    to: top.reduce((a, b) => (b.flow < a.flow ? b : a)),
  };
}

/**
 * Step of the flow as read by an input that counts whole pulses over a gate.
 *
 * @formula dQ = 1 / (K * t_g)
 * @symbol K - pulses per volume, 1/m³
 * @symbol t_g - gate, s
 * @returns m³/s
 */
export const flowStep = (K: number, gate: number): number => 1 / (K * gate);

/** Runs as points of a plot: flow, K, ± of K. */
export const kSpots = ({
  runs,
}: KFactor): (readonly [flow: number, K: number, plusMinus: number])[] =>
  runs.map(({ flow, K, share }) => [flow, K, K * share] as const);

/** A flow with the ends of K there, 1/m³. */
type KBand = readonly (readonly [flow: number, low: number, high: number])[];

/** Places of the curve. */
const STEPS = 40;

const flowsOf = ({ runs }: KFactor): number[] => {
  const flows = runs.map((r) => r.flow);
  return spaced(Math.min(...flows), Math.max(...flows), STEPS);
};

/** K over the flows of the runs, by the line through them: K (1 - Q_0 / Q). */
export const slipCurve = (
  factor: KFactor,
  { K, slip }: SlipLine,
): (readonly [flow: number, K: number])[] =>
  flowsOf(factor).map((Q) => [Q, K * (1 - slip / Q)] as const);

/** {@link slipCurve} with its ±: two standard deviations of the line, and the bucket's own marks. */
export function slipBand(factor: KFactor, line: SlipLine): KBand {
  const bucket = factor.plusMinus ** 2 - factor.fromRuns ** 2;
  return slipCurve(factor, line).map(([Q, K]) => {
    const plusMinus = Math.sqrt((2 * line.sigmaAt(Q)) ** 2 / Q ** 2 + Math.max(0, bucket));
    return [Q, K - plusMinus, K + plusMinus] as const;
  });
}

/** The one K by all runs with its ±, over their flows. */
export const kBand = (factor: KFactor): KBand =>
  flowsOf(factor).map(
    (Q) => [Q, factor.K - factor.plusMinus, factor.K + factor.plusMinus] as const,
  );
