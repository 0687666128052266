/** A fit tried on stretches that it has not seen, each in turn. */
import type { Span } from './span';
import type { LogFit, LogTrial } from './logRecord';
import { foretold, type HeldOut } from '$lib/solver/loop/identify/heldOut';
import {
  identify,
  type Identified,
  type IdentifyRequest,
} from '$lib/solver/loop/identify/identify';

/** One stretch alone is cut into so many parts, each of which the others foretell. */
const PARTS = 4;
/** A shorter part tells nothing, s. */
const SHORTEST = 15;
/** Fits made for it at most: each takes as long as a fit. */
const MOST = 8;

/**
 * Stretches set aside are foretold by the fit itself. Those fitted are left out one after the other and
 * foretold by a fit of the rest; a single one is cut into parts for it, where none was set aside.
 */
export function triedOut(
  request: IdentifyRequest,
  found: Identified,
  spans: readonly Span[],
): LogFit['heldOut'] {
  const aside = spans.filter(({ use }) => use === 'hold-out');
  const fitted = spans.filter(({ use }) => use === 'fit');
  const inTurn =
    fitted.length > 1 ? fitted.slice(0, MOST) : aside.length === 0 ? parted(fitted[0]!) : [];
  const everywhere: IdentifyRequest = { ...request, leaveOut: undefined };
  const noise = Object.fromEntries(found.channels.map((c) => [c.channel, c.noise]));
  const { t } = request.drive;
  return [
    ...aside.map((span) => trialOf(foretold(everywhere, found, span), span)),
    ...inTurn.flatMap((span) => {
      // A beginning that was not read can only be as the whole log has it.
      const begins = span.from <= t[0]!;
      const free = begins ? request.free.filter((name) => !name.endsWith('Start')) : request.free;
      // Where so little is left that a fit cannot be made, nothing is tried.
      const rest = identifyOrNull({
        ...request,
        noise,
        free,
        from: found.parameters,
        leaveOut: (channel, row) =>
          (t[row]! >= span.from && t[row]! <= span.to) ||
          (request.leaveOut?.(channel, row) ?? false),
      });
      return rest ? [trialOf(foretold(everywhere, rest, span), span)] : [];
    }),
  ].filter(({ channels }) => channels.length > 0);
}

function parted({ from, to }: Span): { from: number; to: number }[] {
  const length = (to - from) / PARTS;
  if (length < SHORTEST) return [];
  return Array.from({ length: PARTS }, (_, i) => ({
    from: from + i * length,
    to: from + (i + 1) * length,
  }));
}

function identifyOrNull(request: IdentifyRequest): Identified | null {
  try {
    return identify(request);
  } catch {
    return null;
  }
}

const trialOf = (tried: HeldOut, { from, to }: { from: number; to: number }): LogTrial => ({
  from,
  to,
  overSeen: tried.overSeen,
  overNoise: tried.overNoise,
  channels: tried.channels
    .filter(({ count }) => count > 2)
    .map(({ channel, unseen, noise, count }) => ({ channel, unseen, noise, count })),
});
