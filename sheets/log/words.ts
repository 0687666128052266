/** Names and kinds of what a log and a fit speak of. */
import { LOG_CHANNELS, type LogChannel } from '$lib/log/channels';
import { channelName } from '$lib/job/log/logKeep';
import { PARAMETERS, type ParameterName } from '$lib/solver/loop/identify/types';
import type { Quantity } from '$lib/solver/quantity';

export const channelQuantity = (channel: string): Quantity =>
  Object.hasOwn(LOG_CHANNELS, channel) ? LOG_CHANNELS[channel as LogChannel].quantity : 'ratio';

/** Channels of a fit by the names of the log. */
const READ: Readonly<Record<string, string>> = {
  charge: 'Liquid out of the charge cooler',
  reservoir: 'Reservoir',
  pump: 'Liquid out of the pump',
  front: 'Liquid out of the front exchanger',
  chargeAirOut: 'Charge air to the engine',
};
export const readName = (channel: string) => READ[channel] ?? channelName(channel);

/** Name inside a sentence: lower case but for what is spelled in capitals. */
export const inSentence = (name: string) =>
  /^[A-Z]{2}/.test(name) ? name : name.charAt(0).toLowerCase() + name.slice(1);

export const parameterOf = (name: string) =>
  Object.hasOwn(PARAMETERS, name) ? PARAMETERS[name as ParameterName] : null;

export const parameterName = (name: string) => parameterOf(name)?.name ?? name;

/** A list in words. */
export const listed = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
