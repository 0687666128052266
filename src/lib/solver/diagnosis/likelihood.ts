/** How likely the readings are under one fault at one severity. */
import { logDensity } from '../numerics/gaussian';
import { CHANNELS } from './channels';
import type { Shown } from './grid';
import type { Conditions, Reading } from './types';

/** ± is read as two standard deviations (about 95 in 100). */
export const PLUS_MINUS_SIGMAS = 2;

/**
 * The loop as described is itself not exact: every temperature's height above ambient may be wrong by
 * this share, all together within a duty (cores from a catalogue are good to ±20 %, and half of that
 * reaches a temperature). One standard deviation; our own statement.
 */
export const COMMON_MODEL_SHARE = 0.08;

/** One reading beside its prediction. */
export interface Fitted {
  readonly reading: Reading;
  readonly predicted: number;
  /** Ambient air as the readings were taken, K; NaN for what is tried once. */
  readonly ambient: number;
  /** Standard deviation of reading and model together, shared errors included. */
  readonly sigma: number;
  /** (measured − predicted) / sigma. */
  readonly z: number;
}

export const predictedOf = (
  shown: Shown,
  { channel, place }: Pick<Reading, 'channel' | 'place'>,
) =>
  place === 'once'
    ? shown.once[channel as keyof Shown['once']]
    : shown.duty[place][channel as keyof Shown['duty']['traffic']];

/** Errors of one reading: its own variance, and what it shares with others. */
export interface Errors {
  readonly own: number;
  /** By the loop's description, K: with others of the same duty. */
  readonly byModel: number;
  /** By the ambient reading, K: with every temperature. */
  readonly byAmbient: number;
}

export function errorsOf(
  shown: Shown,
  { channel, place }: Pick<Reading, 'channel' | 'place'>,
  sigma: number,
  conditions: Conditions,
): Errors {
  const { model, modelShare, thermal } = CHANNELS[channel];
  const value = predictedOf(shown, { channel, place });
  const own = sigma ** 2 + model ** 2 + (modelShare * value) ** 2;
  if (!thermal || place === 'once') return { own, byModel: 0, byAmbient: 0 };
  const height = value - shown.duty[place].ambient;
  return { own, byModel: COMMON_MODEL_SHARE * height, byAmbient: conditions.ambientSigma };
}

/** Standard deviation of all of a reading's errors. */
export const sigmaOf = ({ own, byModel, byAmbient }: Errors): number =>
  Math.sqrt(own + byModel ** 2 + byAmbient ** 2);

/** Every reading beside what is predicted for it. */
export function fit(shown: Shown, readings: readonly Reading[], conditions: Conditions): Fitted[] {
  return readings.map((reading) => {
    const predicted = predictedOf(shown, reading);
    const sigma = sigmaOf(errorsOf(shown, reading, reading.sigma, conditions));
    const ambient = reading.place === 'once' ? NaN : shown.duty[reading.place].ambient;
    return { reading, predicted, ambient, sigma, z: (reading.value - predicted) / sigma };
  });
}

/**
 * Logarithm of the density of all readings, Gaussian: instrument and model errors of each reading are
 * its own; the loop's description moves the temperatures of one duty together, ambient moves all.
 * -Infinity where the fault gives no prediction.
 */
export function logLikelihood(
  shown: Shown,
  readings: readonly Reading[],
  conditions: Conditions,
): number {
  const residuals = readings.map((r) => r.value - predictedOf(shown, r));
  if (!residuals.every(Number.isFinite)) return -Infinity;
  const errors = readings.map((r) => errorsOf(shown, r, r.sigma, conditions));
  const by = (place: Reading['place']) =>
    errors.map((e, i) => (readings[i]!.place === place ? e.byModel : 0));
  const shared = [by('traffic'), by('cruise'), errors.map((e) => e.byAmbient)];
  return logDensity(
    residuals,
    errors.map((e) => e.own),
    shared.filter((u) => u.some((x) => x !== 0)),
  );
}

/**
 * The same for a cause that is none of those known: every reading equally likely over all that could
 * be read there. Broad, so it loses to any fault that fits, and wins where nothing does.
 */
export const logLikelihoodOfUnknown = (readings: readonly Reading[]): number =>
  readings.reduce((sum, { channel }) => {
    const [low, high] = CHANNELS[channel].span;
    return sum - Math.log(high - low);
  }, 0);
