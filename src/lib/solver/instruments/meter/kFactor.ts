/**
 * Pulses per volume of a flow meter from bucket and watch. A ± is that of its instrument and is read as
 * two standard deviations; here everything is carried as ±, since all of it scales alike.
 */
import { InvalidInputError, requireWithin, type Interval } from '../../errors';
import { chiSquareAbove } from '../../numerics/chiSquare';

/** One filling of the bucket. */
export interface BucketRun {
  /** m³ */
  readonly volume: number;
  /** s */
  readonly time: number;
  /** Pulses counted in that time. */
  readonly pulses: number;
}

/** ± of one run, and what all runs share. */
export interface BucketErrors {
  /** Reading the level in the bucket, m³; fresh in each run. */
  readonly volume: number;
  /** Starting and stopping the watch, s; fresh in each run. */
  readonly time: number;
  /** Counting, pulses; fresh in each run. */
  readonly pulses: number;
  /** The bucket's own marks, share; the same in every run, so that no number of runs removes it. */
  readonly bucket: number;
}

/** How the pulses were counted. */
export type Counting =
  /** From first to last drop into the bucket, by a counter: the watch gives only the flow. */
  | 'whole-run'
  /** As a steady frequency times the watch's time: what the watch errs, the count errs. */
  | 'by-watch';

export interface RunResult {
  readonly run: BucketRun;
  /** Mean flow, m³/s. */
  readonly flow: number;
  /** Mean frequency, Hz. */
  readonly frequency: number;
  /** Pulses per volume, 1/m³. */
  readonly K: number;
  /** ± of K from what is fresh in each run, as a share of K. */
  readonly share: number;
}

export const RUN_RANGE = {
  volume: [1e-5, 1],
  time: [0.5, 3600],
  pulses: [1, 1e8],
} as const satisfies Record<string, Interval>;

/** Runs agree where chance alone would give their scatter at least this often. */
export const AGREES_ABOVE = 0.05;
/** Two standard deviations make a ±. */
const SIGMAS = 2;

/**
 * K of one run and its ±, by the GUM's law of propagation for a quotient.
 *
 * @formula K = N / V
 * @formula s = sqrt((u_N / N)^2 + (u_V / V)^2 + (u_t / t)^2)
 * @symbol s - ± of K as a share of it, 1
 * @symbol N - pulses
 * @symbol V - volume, m³
 * @symbol t - time, s; its part only where the count is by the watch
 * @throws {@link OutOfRangeError} outside {@link RUN_RANGE}
 * @source JCGM 100:2008 (GUM), 5.1.2 and 5.1.6
 * @example kOfRun({ volume: 0.01, time: 20, pulses: 4500 }, none, 'whole-run').K // 450000
 */
export function kOfRun(run: BucketRun, errors: BucketErrors, counting: Counting): RunResult {
  const { volume, time, pulses } = run;
  requireWithin('bucket test', RUN_RANGE, { volume, time, pulses });
  const K = pulses / volume;
  const share = Math.hypot(
    errors.pulses / pulses,
    errors.volume / volume,
    counting === 'by-watch' ? errors.time / time : 0,
  );
  return { run, flow: volume / time, frequency: pulses / time, K, share };
}

export interface KFactor {
  readonly runs: readonly RunResult[];
  /** 1/m³ */
  readonly K: number;
  /** ± from the runs: widened by their scatter where they do not agree. */
  readonly fromRuns: number;
  /** ± with the bucket's own marks. */
  readonly plusMinus: number;
  /** Sum of the squared deviations over their standard deviations. */
  readonly chiSquare: number;
  /** Runs less one. */
  readonly freedom: number;
  /** Chance of as large a scatter; null for one run. */
  readonly chance: number | null;
  readonly agree: boolean;
  /** Birge's ratio: by how much the scatter exceeds what the ± would give; 1 where it does not. */
  readonly widened: number;
}

/**
 * K from several runs: mean weighted by inverse variances (as shares, so that a run that happens to read
 * low does not weigh more for it), its consistency by chi-square, its ± widened by
 * Birge's ratio where the runs scatter more than their ± allows.
 *
 * @formula K = sum(K_i / s_i^2) / sum(1 / s_i^2)
 * @throws {@link InvalidInputError} without a run, or with runs that carry no ± at all
 * @throws {@link OutOfRangeError} outside {@link RUN_RANGE}
 * @source weighted mean: any text of statistics; Birge, Phys. Rev. 40 (1932) 207
 */
export function kFactor(
  runs: readonly BucketRun[],
  errors: BucketErrors,
  counting: Counting,
): KFactor {
  if (runs.length === 0) throw new InvalidInputError('meter.runs', 'needs one run or more', 0);
  const each = runs.map((run) => kOfRun(run, errors, counting));
  if (each.some(({ share }) => !(share > 0))) {
    throw new InvalidInputError(
      'meter.volumePm',
      'a bucket and a count without any ± are no measurement: state one above zero',
      0,
    );
  }
  const weight = each.reduce((sum, r) => sum + 1 / r.share ** 2, 0);
  const K = each.reduce((sum, r) => sum + r.K / r.share ** 2, 0) / weight;
  const chiSquare = each.reduce((sum, r) => sum + ((SIGMAS * (r.K / K - 1)) / r.share) ** 2, 0);
  const freedom = each.length - 1;
  const chance = freedom > 0 ? chiSquareAbove(chiSquare, freedom) : null;
  const widened = freedom > 0 ? Math.max(1, Math.sqrt(chiSquare / freedom)) : 1;
  const fromRuns = (K * widened) / Math.sqrt(weight);
  return {
    runs: each,
    K,
    fromRuns,
    plusMinus: Math.hypot(fromRuns, K * errors.bucket),
    chiSquare,
    freedom,
    chance,
    agree: chance === null || chance >= AGREES_ABOVE,
    widened,
  };
}

/**
 * What a reader shows of the true flow while it divides by another K-factor.
 *
 * @formula x = K / K_r
 * @symbol K - pulses per volume the meter gives, 1/m³
 * @symbol K_r - pulses per volume set in the reader, 1/m³
 */
export const readingFactor = (K: number, K_r: number): number => K / K_r;
