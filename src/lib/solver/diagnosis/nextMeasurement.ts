/** Which measurement to take next: what it can be expected to tell, for the minutes it costs. */
import { mutualInformation, type NormalPart } from '../numerics/information';
import { CHANNELS, DUTY_CHANNELS, ONCE_CHANNELS, ROAD_MINUTES, usualPlusMinus } from './channels';
import { errorsOf, PLUS_MINUS_SIGMAS, predictedOf, sigmaOf } from './likelihood';
import type { Cause, Diagnosis } from './rank';
import {
  SETTLED_DUTIES,
  type Channel,
  type Conditions,
  type DutyChannel,
  type OnceChannel,
  type Place,
} from './types';

export interface NextMeasurement {
  readonly channel: Channel;
  readonly place: Place;
  /** Expected, nat: by how much it narrows which cause it is. */
  readonly information: number;
  /** The same as a share of all that is not yet known of the cause, 0 to 1. */
  readonly doubt: number;
  readonly minutes: number;
  /** {@link doubt} for each minute. */
  readonly perMinute: number;
  /** What the two leading causes expect there, where they differ by severity its mean. */
  readonly expects: readonly { readonly cause: Cause; readonly value: number }[];
}

/** Causes less likely are left out of the sum, and severities with less of a cause's belief. */
const FAINT_CAUSE = 0.005;
const FAINT_SEVERITY = 0.05;
/** Severities of one cause that are taken together. */
const TOGETHER = 4;

/**
 * Candidates for the next measurement, best per minute first; what is measured already is left out.
 *
 * Information is the mutual information of cause and outcome ({@link mutualInformation}), the
 * density of an outcome under a cause being a mixture over its severities as they now stand. The outcome's errors are taken as independent of those of the
 * readings in hand, which understates a second thermometer beside the first a little.
 *
 * @source Lindley, Ann. Math. Statist. 27 (1956) 986-1005 (from memory); minutes: common practice
 */
export function nextMeasurements(diagnosis: Diagnosis, conditions: Conditions): NextMeasurement[] {
  const known = diagnosis.causes.filter((c) => c.fault && c.probability > FAINT_CAUSE);
  const sum = known.reduce((s, c) => s + c.probability, 0);
  if (known.length === 0) return [];
  const entropy = known.reduce(
    (s, c) => s - (c.probability / sum) * Math.log(c.probability / sum),
    0,
  );
  const taken = new Set(diagnosis.readings.map((r) => `${r.place}.${r.channel}`));
  return candidates()
    .filter(({ channel, place }) => !taken.has(`${place}.${channel}`))
    .flatMap(({ channel, place }): NextMeasurement[] => {
      const mixtures = known.map((c) => mixture(c, channel, place, conditions));
      if (mixtures.some((m) => m === null)) return [];
      const parts = mixtures as NormalPart[][];
      const information = mutualInformation(
        parts,
        known.map((c) => c.probability / sum),
      );
      // One cause alone leaves nothing to ask.
      const doubt = entropy > 0 ? Math.min(information / entropy, 1) : 0;
      const minutes = CHANNELS[channel].minutes + (place === 'cruise' ? ROAD_MINUTES : 0);
      return [
        {
          channel,
          place,
          information,
          doubt,
          minutes,
          perMinute: doubt / minutes,
          expects: known.slice(0, 2).map((cause, i) => ({
            cause,
            value: parts[i]!.reduce((m, p) => m + p.share * p.mean, 0),
          })),
        },
      ];
    })
    .sort((a, b) => b.perMinute - a.perMinute);
}

function candidates(): { channel: Channel; place: Place }[] {
  const once = (Object.keys(ONCE_CHANNELS) as OnceChannel[]).map((channel) => ({
    channel,
    place: 'once' as const,
  }));
  // A bucket is filled standing, not on the road.
  const onRoad = (channel: DutyChannel) => channel !== 'bucket' && channel !== 'pumpRise';
  const inDuty = SETTLED_DUTIES.flatMap((place) =>
    (Object.keys(DUTY_CHANNELS) as DutyChannel[])
      .filter((channel) => place === 'traffic' || onRoad(channel))
      .map((channel) => ({ channel, place })),
  );
  return [...once, ...inDuty];
}

/** What a cause expects of an outcome; null where it says nothing. */
function mixture(
  cause: Cause,
  channel: Channel,
  place: Place,
  conditions: Conditions,
): NormalPart[] | null {
  const parts = cause.spread
    .filter(({ share }) => share >= FAINT_SEVERITY / cause.spread.length)
    .map(({ shown, share }) => {
      const mean = predictedOf(shown, { channel, place });
      const instrument = usualPlusMinus(channel, mean) / PLUS_MINUS_SIGMAS;
      return {
        share,
        mean,
        sigma: sigmaOf(errorsOf(shown, { channel, place }, instrument, conditions)),
      };
    });
  if (parts.length === 0 || !parts.every((p) => Number.isFinite(p.mean))) return null;
  const sum = parts.reduce((s, p) => s + p.share, 0);
  return merged(parts.map((p) => ({ ...p, share: p.share / sum })));
}

/** Neighbouring severities as one part of the same mean and variance. */
function merged(parts: readonly NormalPart[]): NormalPart[] {
  const groups: NormalPart[] = [];
  for (let i = 0; i < parts.length; i += TOGETHER) {
    const group = parts.slice(i, i + TOGETHER);
    const share = group.reduce((s, p) => s + p.share, 0);
    const mean = group.reduce((s, p) => s + p.share * p.mean, 0) / share;
    const square = group.reduce((s, p) => s + p.share * (p.sigma ** 2 + (p.mean - mean) ** 2), 0);
    groups.push({ share, mean, sigma: Math.sqrt(square / share) });
  }
  return groups;
}
