/** Whether a fit foretells readings it has not seen. */
import { identify, type Identified, type IdentifyRequest } from './identify';
import { differenceNoise } from './noise';
import type { ChannelName } from './types';

export interface HeldOutChannel {
  readonly channel: ChannelName;
  /** Root mean square of predicted less read, K, where the fit saw the readings and where it did not. */
  readonly seen: number;
  readonly unseen: number;
  readonly count: number;
  /** Noise of the unseen readings by themselves, K: no model can foretell better than that. */
  readonly noise: number;
}

export interface HeldOut {
  readonly found: Identified;
  readonly channels: readonly HeldOutChannel[];
  /**
   * Unseen over seen, all channels together: near 1 the model foretells as well as it fits; well above,
   * it has been bent to what it saw, or something else drove the loop there.
   */
  readonly overSeen: number;
  /** Unseen over the readings' own noise: near 1 nothing is left that a better model could foretell. */
  readonly overNoise: number;
}

interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** Fit with the readings from `from` to `to` (s) left out, then compare what is foretold there. */
export function heldOut(request: IdentifyRequest, stretch: Stretch): HeldOut {
  const found = identify({
    ...request,
    leaveOut: (channel, row) =>
      isIn(request, row, stretch) || (request.leaveOut?.(channel, row) ?? false),
  });
  return foretold(request, found, stretch);
}

const isIn = ({ drive }: IdentifyRequest, row: number, { from, to }: Stretch) =>
  drive.t[row]! >= from && drive.t[row]! <= to;

/**
 * What a fit foretells of a stretch that it has not seen.
 * @param request - with `leaveOut` for what does not count even there
 */
export function foretold(request: IdentifyRequest, found: Identified, stretch: Stretch): HeldOut {
  const hidden = (row: number) => isIn(request, row, stretch);
  const channels = found.channels.map(({ channel, residuals, rms }): HeldOutChannel => {
    const missed: number[] = [];
    const readings: number[] = [];
    residuals.forEach((r, row) => {
      if (!hidden(row) || !Number.isFinite(r) || request.leaveOut?.(channel, row)) return;
      missed.push(r);
      readings.push(request.channels[channel]![row]!);
    });
    const squares = missed.reduce((sum, r) => sum + r * r, 0);
    return {
      channel,
      seen: rms,
      unseen: Math.sqrt(squares / missed.length),
      count: missed.length,
      noise: differenceNoise(readings),
    };
  });
  return {
    found,
    channels,
    overSeen: over(channels, ({ seen }) => seen),
    overNoise: over(channels, ({ noise }) => noise),
  };
}

/** Root mean square over all unseen readings, each over its channel's `by`. */
function over(channels: readonly HeldOutChannel[], by: (c: HeldOutChannel) => number): number {
  const count = channels.reduce((sum, c) => sum + c.count, 0);
  const squares = channels.reduce(
    (sum, c) => (c.count > 0 ? sum + c.count * (c.unseen / by(c)) ** 2 : sum),
    0,
  );
  return Math.sqrt(squares / count);
}
