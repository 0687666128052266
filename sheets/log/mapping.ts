/** Choices of the table that says which column is which channel. */
import { LOG_CHANNELS, type LogChannel } from '$lib/log/channels';
import { logScale, type LoggedQuantity } from '$lib/log/units';
import type { Assigned } from '$lib/log/worker/messages';

/** Units offered, the usual one first; whatever a heading says is offered beside them. */
const UNITS: Readonly<Record<LoggedQuantity, readonly string[]>> = {
  temperature: ['°F', '°C', 'K'],
  volumeFlow: ['gpm', 'L/min', 'L/h', 'm^3/h'],
  voltage: ['V', 'mV'],
  current: ['A', 'mA'],
  pressure: ['psi', 'kPa', 'bar', 'inHg'],
  time: ['s', 'ms', 'min', 'h'],
  speed: ['mph', 'km/h', 'm/s'],
  rotation: ['rpm'],
  airMassFlow: ['lb/min', 'g/s', 'kg/h', 'kg/s'],
  percent: ['%'],
  heat: ['W', 'kW', 'Btu/h'],
};

export const CHANNEL_NAMES = Object.entries(LOG_CHANNELS).map(([channel, { name }]) => ({
  channel: channel as LogChannel,
  name,
}));

export const usualUnit = (channel: LogChannel): string => UNITS[LOG_CHANNELS[channel].quantity][0]!;

/** Units a column may have as this channel; its own heading's first, where it fits. */
export function unitsFor(channel: LogChannel, written: string): string[] {
  const { quantity } = LOG_CHANNELS[channel];
  const own = written !== '' && logScale(written, quantity) ? [written] : [];
  return [...new Set([...own, ...UNITS[quantity].filter((unit) => logScale(unit, quantity))])];
}

/** Give `column` to `channel`; each channel has one column, each column one channel. '' leaves it out. */
export function assign(
  assigned: readonly Assigned[],
  column: number,
  channel: LogChannel | '',
  written: string,
): Assigned[] {
  const rest = assigned.filter((a) => a.column !== column && a.channel !== channel);
  if (channel === '') return rest;
  const unit = unitsFor(channel, written)[0]!;
  return [...rest, { channel, column, unit }].sort((a, b) => a.column - b.column);
}

export const withUnit = (assigned: readonly Assigned[], column: number, unit: string): Assigned[] =>
  assigned.map((a) => (a.column === column ? { ...a, unit } : a));
