/** The loop's own numbers, found from its log. */
import { InvalidInputError } from '../../errors';
import { leastSquares } from '../../fit/leastSquares';
import { separability } from '../../fit/separability';
import type { LeastSquaresFit, Loss } from '../../fit/types';
import { differenceNoise, nextCorrelation, robustDeviation } from './noise';
import { ringProblem, usedRows, type Noise, type RingProblem, type Used } from './problem';
import { readNotes } from './readNotes';
import type { ChannelResult, Identified, IdentifyRequest } from './asked';
import { widenedEstimates } from './widen';
import { PARAMETERS, type ChannelName, type Channels, type ParameterName } from './types';

export type { ChannelResult, Identified, IdentifyRequest };

const LOSS: Loss = { kind: 'huber', scale: 2.5 };
/** Rounds in which each channel's noise is taken from what the fit left. */
const NOISE_ROUNDS = 2;

/**
 * Least squares of the ring on a log. Channels whose noise is not given are weighted by what the fit
 * leaves of them, in rounds.
 *
 * @throws {@link InvalidInputError} where nothing is sought or read, or readings are fewer than parameters
 */
export function identify(request: IdentifyRequest): Identified {
  const { channels, free, leaveOut, from } = request;
  const used = usedRows(channels, leaveOut).filter(({ rows }) => rows.length > 0);
  const count = used.reduce((sum, { rows }) => sum + rows.length, 0);
  if (free.length === 0) throw new InvalidInputError('free', 'nothing is sought');
  if (count <= free.length)
    throw new InvalidInputError(
      'log',
      `${count} readings cannot tell ${free.length} parameters`,
      count,
    );

  let noise = firstNoise(used, channels, request.noise);
  let start: readonly number[] = free.map((name) => from[name]);
  let problem!: RingProblem;
  let fit!: LeastSquaresFit;
  const given = used.every(({ channel }) => request.noise?.[channel] !== undefined);
  for (let round = 0; round <= (given ? 0 : NOISE_ROUNDS); round++) {
    problem = ringProblem({ ...request, used, noise, known: from });
    fit = leastSquares(problem, {
      start,
      lower: free.map((name) => PARAMETERS[name].range[0]),
      upper: free.map((name) => PARAMETERS[name].range[1]),
      typical: free.map((name) => Math.abs(from[name]) || 1),
      loss: request.loss ?? LOSS,
      maxSteps: 200,
      settle: !given && round < NOISE_ROUNDS ? 'start' : 'estimate',
      cancelled: request.cancelled,
    });
    if (fit.reason === 'cancelled') break;
    if (!given && round < NOISE_ROUNDS) noise = leftNoise(used, fit, noise, request.noise);
    start = Array.from(fit.parameters);
  }
  return read(request, problem, fit, used, noise);
}

function read(
  request: IdentifyRequest,
  problem: RingProblem,
  fit: LeastSquaresFit,
  used: readonly Used[],
  noise: Noise,
): Identified {
  const parameters = problem.whole(fit.parameters);
  const prediction = problem.predict(parameters);
  let offset = 0;
  const channels = used.map(({ channel, rows }): ChannelResult => {
    const own = fit.residuals.subarray(offset, (offset += rows.length));
    const sigma = noise[channel]!;
    const residuals = prediction[channel].map((x, k) => x - request.channels[channel]![k]!);
    const rms = sigma * Math.sqrt(own.reduce((sum, r) => sum + r * r, 0) / own.length);
    return { channel, noise: sigma, residuals, rows, rms, nextCorrelation: nextCorrelation(own) };
  });
  const { scaled, widened } = widenedEstimates(request, fit, channels);
  const apart = separability(fit, {
    sizes: request.free.map((name) => size(name, parameters[name])),
    noise: scaled.residualDeviation,
  });
  const identified = {
    parameters,
    free: request.free,
    estimates: scaled,
    widened,
    separability: apart,
    prediction,
    channels,
    fit,
  };
  return { ...identified, notes: readNotes(identified) };
}

/** What counts as a change by itself: the value; for a starting temperature 10 K. */
const size = (name: ParameterName, value: number) =>
  name.endsWith('Start')
    ? 10
    : name === 'soakHeat'
      ? Math.max(100, Math.abs(value))
      : Math.abs(value);

function firstNoise(used: readonly Used[], channels: Channels, given: Noise | undefined): Noise {
  const noise: Partial<Record<ChannelName, number>> = {};
  for (const { channel, rows } of used) {
    const readings = Float64Array.from(rows, (row) => channels[channel]![row]!);
    // A channel without any noise would carry the fit alone.
    noise[channel] = given?.[channel] ?? Math.max(differenceNoise(readings) || 0, 0.05);
  }
  return noise;
}

function leftNoise(
  used: readonly Used[],
  fit: LeastSquaresFit,
  before: Noise,
  given: Noise | undefined,
): Noise {
  const noise: Partial<Record<ChannelName, number>> = {};
  let offset = 0;
  for (const { channel, rows } of used) {
    const own = fit.residuals.subarray(offset, (offset += rows.length));
    noise[channel] = given?.[channel] ?? Math.max(1e-3, before[channel]! * robustDeviation(own));
  }
  return noise;
}
