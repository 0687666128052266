/** What a log of a loop may hold, and the words by which it is known. */
import { logScale, type LoggedQuantity } from './units';

export interface ChannelFacts {
  readonly name: string;
  readonly quantity: LoggedQuantity;
  /** Words that speak for it, each with a weight, or against it; matched in the heading, spelled in lower case. */
  readonly words: readonly (readonly [pattern: RegExp, weight: number])[];
}

const hot: readonly [RegExp, number] = [/temp|°|thermo|\bt_?\d?\b/, 1];
const wet: readonly [RegExp, number] = [/liquid|water|coolant|fluid|glycol/, 1];
/** Air named by where it is: then it is no liquid. */
const airy: readonly [RegExp, number] = [/\bair\b|\biat\b|manifold|intake|compressor|turbo/, -6];
/** Words that many channels have: they speak for one only beside others. */
export const COMMON: ReadonlySet<ChannelFacts['words'][number]> = new Set([hot, wet, airy]);
/** Into, and out of: before or after the name of the part. */
const IN = /\b(in|into|inlet|before|entering|to|pre|upstream|hot side)\b/;
const OUT = /\b(out|outlet|exit|after|leaving|from|post|downstream|return|cold side)\b/;
const FRONT =
  /\bfront\b|\b(heat )?exchanger\b|\bh ?\/? ?x\b|\brad(iator)?\b|\bhe\b|\bltr\b|\bheat ?ex\b/;
const COOLER = /\b(charge ?cooler|inter ?cooler|after ?cooler|cooler|brick|wcac|cac|ic)\b|\bcore\b/;
const CHARGE = /\b(charge|boost|compressor|comp|supercharger|blower|turbo|discharge)\b/;

/** A pattern that is met where both are. */
const both = (a: RegExp, b: RegExp): RegExp =>
  new RegExp(`^(?=.*(?:${a.source}))(?=.*(?:${b.source}))`);

/** Channels of a loop. Words are common practice, no source. */
export const LOG_CHANNELS = {
  time: {
    name: 'Time',
    quantity: 'time',
    words: [
      [
        /^(time|t|elapsed|seconds?|secs?|timestamp|zeit|temps|tiempo|date|offset)\b|\btime$|timestamp/,
        6,
      ],
      [/time|elapsed|clock/, 3],
    ],
  },
  reservoir: {
    name: 'Reservoir',
    quantity: 'temperature',
    words: [
      [/reservoir|\btank\b|\bres\b/, 6],
      [/\bice? ?(box|chest)\b|\bcooler box\b/, 8],
      hot,
      wet,
      airy,
    ],
  },
  chargeCoolerOut: {
    name: 'Liquid out of the charge cooler',
    quantity: 'temperature',
    words: [[both(COOLER, OUT), 5], [FRONT, -4], wet, hot, airy],
  },
  frontIn: {
    name: 'Liquid into the front exchanger',
    quantity: 'temperature',
    words: [[both(FRONT, IN), 6], [both(FRONT, OUT), -3], wet, hot, airy],
  },
  frontOut: {
    name: 'Liquid out of the front exchanger',
    quantity: 'temperature',
    words: [[both(FRONT, OUT), 6], [both(FRONT, IN), -3], wet, hot, airy],
  },
  chargeAirIn: {
    name: 'Charge air before the cooler',
    quantity: 'temperature',
    words: [
      [
        /pre ?(inter|after|charge)? ?cool|compressor (out|discharge)|discharge|\bcdt\b|\bcot\b|\bct?2\b/,
        5,
      ],
      [both(CHARGE, /\b(out|outlet|before|pre|in|hot|discharge)\b/), 4],
      [both(/\bair\b/, both(COOLER, IN)), 5],
      [/\bair\b/, 1],
      [/liquid|water|coolant|fluid/, -6],
      hot,
    ],
  },
  chargeAirOut: {
    name: 'Charge air to the engine',
    quantity: 'temperature',
    words: [
      [
        /\biat\d?\b|(intake|inlet|plenum) (air )?temp|manifold (air )?temp|\bmat\b|\bact\b|\btmap\b/,
        6,
      ],
      [/\biat2\b|post ?(inter|after|charge)? ?cool/, 4],
      [both(/\b(charge|boost)\b/, /\b(after|post|engine|cooled)\b/), 5],
      [both(/\bair\b/, both(COOLER, OUT)), 6],
      [/intake|manifold|plenum/, 2],
      [/liquid|water|coolant|fluid|ambient|outside/, -6],
      hot,
    ],
  },
  ambient: {
    name: 'Ambient air',
    quantity: 'temperature',
    words: [
      [/ambient|outside|outdoor|\boat\b|\baat\b|\bextern|umgebung|außen/, 6],
      [/\bair\b/, 0.5],
      hot,
    ],
  },
  flow: {
    name: 'Flow of the liquid',
    quantity: 'volumeFlow',
    words: [[/flow|durchfluss|d[ée]bit/, 4], wet, [/pump/, 1], [/gpm|lpm|l\/min/, 3]],
  },
  volts: {
    name: 'Volts at the pump',
    quantity: 'voltage',
    words: [
      [/pump.*(volt|\bv\b|supply|feed)|(volts?|\bv\b|\bu\b).*pump/, 6],
      [/volt|supply|\bbatt|spannung|\bvbat/, 3],
      [/sensor|signal|\bref\b|throttle|\btps\b|lambda|\bo2\b/, -4],
    ],
  },
  amps: {
    name: 'Amps of the pump',
    quantity: 'current',
    words: [
      [/pump.*(amp|current|\ba\b)|(amps?|current|\bi\b).*pump/, 6],
      [/amp|current|strom/, 3],
    ],
  },
  vehicleSpeed: {
    name: 'Vehicle speed',
    quantity: 'speed',
    words: [
      [/(vehicle|ground|road|wheel|gps) ?speed|\bvss\b|speed (gps|vehicle|ground)/, 6],
      [/mph|km\/?h|speed|geschwindigkeit|vitesse/, 3],
      [/engine|pump|fan|turbo|wind/, -4],
    ],
  },
  engineSpeed: {
    name: 'Engine speed',
    quantity: 'rotation',
    words: [
      [/engine ?(speed|rpm)|\brpm\b|\bn ?eng|drehzahl|r[ée]gime/, 6],
      [/engine|revs|tach/, 3],
      [/pump|fan|turbo|wheel/, -6],
    ],
  },
  manifold: {
    name: 'Manifold pressure',
    quantity: 'pressure',
    words: [
      [/\bt?map\b|manifold.*press|boost|manifold|ladedruck/, 5],
      [/press/, 2],
      [/oil|fuel|coolant|water|baro|brake|loop|pump/, -6],
    ],
  },
  airFlow: {
    name: 'Charge-air flow',
    quantity: 'airMassFlow',
    words: [[/\bmaf\b|air ?(mass ?)?flow|mass ?(air ?)?flow|mass ?air|luftmasse/, 6]],
  },
  heat: {
    name: 'Heat into the loop',
    quantity: 'heat',
    words: [
      [/\bheat (load|into|in)\b|\bheat\b|thermal load/, 4],
      [/exchanger/, -4],
    ],
  },
} as const satisfies Record<string, ChannelFacts>;

export type LogChannel = keyof typeof LOG_CHANNELS;

/** Values in SI; the log's own stay as they are. @returns null where the unit does not measure the channel */
export function inSI(values: Float64Array, unit: string, channel: LogChannel): Float64Array | null {
  const scale = logScale(unit, LOG_CHANNELS[channel].quantity);
  if (!scale) return null;
  const { factor, offset } = scale;
  const si = new Float64Array(values.length);
  for (let k = 0; k < si.length; k++) si[k] = values[k]! * factor + offset;
  return si;
}
