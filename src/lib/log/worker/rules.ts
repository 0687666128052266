/** What counts as an event, and what a channel of a loop could read at all. */
import { LOG_CHANNELS, type LogChannel } from '../channels';
import type { EventRule } from '../events';
import type { LoggedQuantity } from '../units';

/** Beyond these a reading is an open wire, a short or a wrong column; SI (common practice, no source). */
const COULD_BE: Partial<Record<LoggedQuantity, readonly [number, number]>> = {
  temperature: [233.15, 573.15],
  volumeFlow: [0, 0.003],
  voltage: [0, 36],
  current: [-5, 200],
  speed: [-1, 140],
};

export const couldBe = (channel: LogChannel) => COULD_BE[LOG_CHANNELS[channel].quantity];

/** Share of its usual level that a flow loses in an event; volts and kelvins likewise (common practice, no source). */
const FLOW_SHARE = 0.15;
const VOLTS = 0.4;
const KELVINS = 4;
/** Time over which levels are compared, s. */
const SHORT = 12;
const LONG = 30;
/** Changes that begin within this belong together, s. */
export const TOGETHER = 45;
/** Readings after an event that are passed on: from its latest onset, s. */
export const AFTERWARDS = [15, 45] as const;

const RISES: readonly LogChannel[] = ['reservoir', 'chargeCoolerOut', 'frontIn', 'chargeAirOut'];

/** Rules for the channels present; `usual` is the median of a channel. */
export function eventRules(
  present: readonly LogChannel[],
  usual: (channel: LogChannel) => number,
): EventRule[] {
  const rules: EventRule[] = [];
  for (const channel of present) {
    if (channel === 'flow')
      rules.push({ channel, kind: 'drop', least: FLOW_SHARE * usual('flow'), window: SHORT });
    if (channel === 'volts') rules.push({ channel, kind: 'drop', least: VOLTS, window: SHORT });
    if (RISES.includes(channel))
      rules.push({ channel, kind: 'rise', least: KELVINS, window: LONG });
  }
  return rules;
}
