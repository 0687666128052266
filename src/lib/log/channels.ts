/** Which column is which channel of the loop: a guess from names and units, for the user to confirm. */
import type { LogColumn } from './reader';
import { logScale, quantitiesOf, type LoggedQuantity } from './units';

export interface ChannelFacts {
  readonly name: string;
  readonly quantity: LoggedQuantity;
  /** Words that speak for it, each with a weight; matched in the heading, lower case. */
  readonly words: readonly (readonly [pattern: RegExp, weight: number])[];
}

const hot: readonly [RegExp, number] = [/temp|°|thermo|\bt_?\d?\b/, 1];

/** Channels of a loop. Words are common practice, no source. */
export const LOG_CHANNELS = {
  time: {
    name: 'Time',
    quantity: 'time',
    words: [
      [/^(time|t|elapsed|seconds?|timestamp|zeit|temps|date)\b|_time$|timestamp/, 6],
      [/time|elapsed|clock/, 3],
    ],
  },
  reservoir: {
    name: 'Reservoir',
    quantity: 'temperature',
    words: [[/reservoir|tank/, 6], [/ic(e)? ?(box|chest)/, 4], hot],
  },
  chargeCoolerOut: {
    name: 'Liquid out of the charge cooler',
    quantity: 'temperature',
    words: [
      [/(charge ?cooler|cooler|brick|core).*(out|exit|after)/, 5],
      [/liquid|water|coolant/, 1],
      hot,
    ],
  },
  frontIn: {
    name: 'Liquid into the front exchanger',
    quantity: 'temperature',
    words: [
      [/(front|exchanger|h\/?x|radiator|\bhe\b).*(in|inlet|before)\b/, 6],
      [/liquid|water|coolant/, 1],
      hot,
    ],
  },
  frontOut: {
    name: 'Liquid out of the front exchanger',
    quantity: 'temperature',
    words: [
      [/(front|exchanger|h\/?x|radiator|\bhe\b).*(out|outlet|exit|after)\b/, 6],
      [/liquid|water|coolant/, 1],
      hot,
    ],
  },
  chargeAirIn: {
    name: 'Charge air before the cooler',
    quantity: 'temperature',
    words: [
      [/(charge|boost|comp\w*|discharge).*(out|before|pre|in\b|hot)/, 4],
      [/pre.?cool|compressor out|discharge/, 5],
      [/\bair\b/, 1],
      hot,
    ],
  },
  chargeAirOut: {
    name: 'Charge air to the engine',
    quantity: 'temperature',
    words: [
      [/\biat\d?\b|intake (air )?temp|manifold (air )?temp|\bmat\b|\bact\b/, 6],
      [/charge.*(out|after|post|engine)/, 4],
      [/intake|manifold/, 2],
      hot,
    ],
  },
  ambient: {
    name: 'Ambient air',
    quantity: 'temperature',
    words: [[/ambient|outside|\boat\b|\baat\b/, 6], [/\bair\b/, 0.5], hot],
  },
  flow: {
    name: 'Flow of the liquid',
    quantity: 'volumeFlow',
    words: [
      [/flow/, 4],
      [/coolant|liquid|water|pump/, 1],
      [/gpm|lpm|l\/min/, 3],
    ],
  },
  volts: {
    name: 'Volts at the pump',
    quantity: 'voltage',
    words: [
      [/pump.*(volt|\bv\b|supply)|volts?.*pump/, 6],
      [/volt|supply|batt/, 3],
    ],
  },
  amps: {
    name: 'Amps of the pump',
    quantity: 'current',
    words: [
      [/pump.*(amp|current|\ba\b)/, 6],
      [/amp|current/, 3],
    ],
  },
  vehicleSpeed: {
    name: 'Vehicle speed',
    quantity: 'speed',
    words: [
      [/vehicle ?speed|\bvss\b|ground ?speed|road ?speed/, 6],
      [/mph|km\/?h|speed/, 3],
    ],
  },
  engineSpeed: {
    name: 'Engine speed',
    quantity: 'rotation',
    words: [
      [/engine ?speed|\brpm\b|\bn_?eng/, 6],
      [/engine|revs/, 2],
    ],
  },
  manifold: {
    name: 'Manifold pressure',
    quantity: 'pressure',
    words: [
      [/\bmap\b|manifold.*press|boost|manifold/, 5],
      [/press/, 2],
    ],
  },
  airFlow: {
    name: 'Charge-air flow',
    quantity: 'airMassFlow',
    words: [[/\bmaf\b|air ?(mass ?)?flow|mass ?air/, 6]],
  },
  heat: {
    name: 'Heat into the loop',
    quantity: 'heat',
    words: [[/heat|load/, 4]],
  },
} as const satisfies Record<string, ChannelFacts>;

export type LogChannel = keyof typeof LOG_CHANNELS;

export interface Guess {
  readonly channel: LogChannel;
  /** Index of the column. */
  readonly column: number;
  /** Unit as written, or null: none was, and the user must say. */
  readonly unit: string | null;
  /** 0 to 1: how much the name says; below 0.5 look twice. */
  readonly confidence: number;
}

const ENOUGH = 3;
const SURE = 7;

/**
 * Give each channel its best column and each column one channel, best matches first. A unit that cannot
 * measure the channel rules it out.
 */
export function guessChannels(columns: readonly LogColumn[]): readonly Guess[] {
  const candidates: (Guess & { readonly score: number })[] = [];
  columns.forEach((column, index) => {
    const { name, unit } = column.heading;
    const words = name.toLowerCase().replace(/[_.]/g, ' ');
    for (const channel of Object.keys(LOG_CHANNELS) as LogChannel[]) {
      const facts: ChannelFacts = LOG_CHANNELS[channel];
      const isTime = column.form === 'clock' || column.form === 'date';
      if (isTime !== (channel === 'time') && (isTime || column.form === null)) continue;
      if (!isTime && unit !== '' && !logScale(unit, facts.quantity)) continue;
      let score = facts.words.reduce(
        (sum, [pattern, weight]) => (pattern.test(words) ? sum + weight : sum),
        0,
      );
      // A name that says nothing of the channel is not saved by its unit alone.
      if (score === 0 && !isTime) continue;
      if (isTime) score += 6;
      else if (unit !== '' && quantitiesOf(unit).length === 1) score += 2;
      if (score >= ENOUGH)
        candidates.push({
          channel,
          column: index,
          unit: unit || null,
          confidence: Math.min(1, score / SURE),
          score,
        });
    }
  });
  candidates.sort((a, b) => b.score - a.score || a.column - b.column);
  const taken = { channels: new Set<string>(), columns: new Set<number>() };
  const guesses: Guess[] = [];
  for (const { channel, column, unit, confidence } of candidates) {
    if (taken.channels.has(channel) || taken.columns.has(column)) continue;
    taken.channels.add(channel);
    taken.columns.add(column);
    guesses.push({ channel, column, unit, confidence });
  }
  return guesses.sort((a, b) => a.column - b.column);
}

/** Values in SI; the log's own stay as they are. @returns null where the unit does not measure the channel */
export function inSI(values: Float64Array, unit: string, channel: LogChannel): Float64Array | null {
  const scale = logScale(unit, LOG_CHANNELS[channel].quantity);
  return scale && values.map((x) => x * scale.factor + scale.offset);
}
