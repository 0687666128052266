/** What counts as an event, and what a channel of a loop could read at all. */
import { LOG_CHANNELS, type LogChannel } from '../channels';
import type { EventRule } from '../events';
import type { MarkOptions } from '../marks';
import type { LoggedQuantity } from '../units';

/** Beyond these a reading is an open wire, a short or a wrong column; SI (common practice, no source). */
const COULD_BE: Partial<Record<LoggedQuantity, readonly [number, number]>> = {
  temperature: [233.15, 573.15],
  volumeFlow: [0, 0.003],
  voltage: [0, 36],
  current: [-5, 200],
  speed: [-1, 140],
};

/** How a channel's readings are judged; the air outside may keep to one degree for an hour. */
export const markOptions = (channel: LogChannel): MarkOptions => ({
  span: COULD_BE[LOG_CHANNELS[channel].quantity],
  slow: channel === 'ambient',
});

/** Share of its usual level that a flow loses in an event; volts and kelvins likewise (common practice, no source). */
const FLOW_SHARE = 0.15;
const VOLTS = 0.4;
const KELVINS = 4;
/**
 * Share by which the amps rise. Charging lifts the volts from 12 to 13.6, and amps rise at most as their
 * square, by 0.28: more is a pump that works harder.
 */
const AMPS_SHARE = 0.3;
/** Amps before, as a share of the usual: less is a pump that was off and is switched on. */
const RUNNING = 0.5;
/** A temperature that rises alone: twice what joins another event, well beyond what a loop wanders at one load. */
export const ALONE = 8;
/** Times over which levels are compared, s. The long ones are for sags and creeping rises of minutes. */
const SHORT = 12;
const LONG = 30;
const CREEP = 120;
const SAG = 300;
/** Changes that begin within this belong together, s. */
export const TOGETHER = 45;
/** Readings after an event that are passed on: from its latest onset, s. */
export const AFTERWARDS = [15, 45] as const;

const RISES: readonly LogChannel[] = ['reservoir', 'chargeCoolerOut', 'frontIn', 'chargeAirOut'];

/** Rules for the channels present, quick changes before slow ones; `usual` is the median of a channel. */
export function eventRules(
  present: readonly LogChannel[],
  usual: (channel: LogChannel) => number,
): EventRule[] {
  return present.flatMap((channel): EventRule[] => {
    if (channel === 'flow') {
      const rule = { channel, kind: 'drop', least: FLOW_SHARE * usual('flow') } as const;
      return [
        { ...rule, window: SHORT },
        { ...rule, window: SAG },
      ];
    }
    if (channel === 'volts') return [{ channel, kind: 'drop', least: VOLTS, window: SHORT }];
    if (channel === 'amps') {
      // The usual may be what they rose to: the share is that of the level before.
      const from = RUNNING * usual('amps');
      const share = AMPS_SHARE;
      return [{ channel, kind: 'rise', least: share * from, share, window: SHORT, from }];
    }
    if (!RISES.includes(channel)) return [];
    return [
      { channel, kind: 'rise', least: KELVINS, window: LONG },
      { channel, kind: 'rise', least: ALONE, window: CREEP },
    ];
  });
}
