import { describe, expect, it } from 'vitest';
import { inSI, type LogChannel } from '$lib/log/channels';
import { guessChannels } from '$lib/log/guess';
import { readLog } from '$lib/log/reader';
import { HEADINGS, OTHERS } from './headings';

/** Channel found for each heading. */
function guess(headings: readonly string[], cells?: readonly string[]): Record<string, LogChannel> {
  const row = cells ?? headings.map((_, j) => String(10 + j));
  const text = [headings, row, row].map((r) => r.join(';')).join('\n');
  const { columns } = readLog(new TextEncoder().encode(text));
  return Object.fromEntries(
    guessChannels(columns).map(({ channel, column }) => [headings[column]!, channel]),
  );
}

describe('channels by name and unit', () => {
  it('of a log in US units', () => {
    const expected: Record<string, LogChannel> = {
      'Time (s)': 'time',
      'Tank temp (°F)': 'reservoir',
      'Exchanger in (°F)': 'frontIn',
      'Exchanger out (°F)': 'frontOut',
      'IAT (°F)': 'chargeAirOut',
      'Ambient (°F)': 'ambient',
      'Coolant flow (gpm)': 'flow',
      'Pump volts (V)': 'volts',
      'Pump current (A)': 'amps',
      'Vehicle speed (mph)': 'vehicleSpeed',
      'Engine speed (rpm)': 'engineSpeed',
      'MAP (kPa)': 'manifold',
    };
    expect(guess(Object.keys(expected))).toEqual(expected);
  });

  it('of a log in SI with units after a comma or an underscore', () => {
    const expected: Record<string, LogChannel> = {
      'elapsed, ms': 'time',
      reservoir_degC: 'reservoir',
      'hx inlet, °C': 'frontIn',
      'hx outlet, °C': 'frontOut',
      'pump flow, L/min': 'flow',
      'batt voltage, V': 'volts',
    };
    expect(guess(Object.keys(expected))).toEqual(expected);
  });

  it('a clock is the time whatever it is called', () => {
    expect(guess(['Stamp of row', 'Tank (F)'], ['10:00:01', '99'])).toEqual({
      'Stamp of row': 'time',
      'Tank (F)': 'reservoir',
    });
  });

  it('a unit that cannot measure it rules a channel out', () => {
    expect(guess(['Time (s)', 'Tank level (V)', 'Tank (°C)'])['Tank (°C)']).toBe('reservoir');
    expect(guess(['Time (s)', 'Tank level (L)', 'x'])['Tank level (L)']).not.toBe('reservoir');
  });

  it('what says nothing is left to the user', () => {
    expect(guess(['Time (s)', 'A1', 'B2'])).toEqual({ 'Time (s)': 'time' });
  });
});

describe('headings in many styles', () => {
  const only = (heading: string) => guess(['Row no', heading])[heading];
  it.each(
    Object.entries(HEADINGS).flatMap(([channel, all]) => all.map((heading) => [heading, channel])),
  )('%s is %s', (heading, channel) => {
    expect(only(heading!)).toBe(channel);
  });
  it.each(OTHERS)('%s is left to the user', (heading) => {
    expect(only(heading)).toBeUndefined();
  });
  it('of two that could be one channel the better named has it, and no column two', () => {
    expect(guess(['Time (s)', 'Coolant temp (°F)', 'Coolant tank temp (°F)'])).toEqual({
      'Time (s)': 'time',
      'Coolant tank temp (°F)': 'reservoir',
    });
  });
});

describe('values in SI', () => {
  const si = (x: number, unit: string, channel: LogChannel) =>
    inSI(Float64Array.of(x), unit, channel)?.[0];
  it('by the unit written', () => {
    expect(si(212, '°F', 'reservoir')).toBeCloseTo(373.15, 9);
    expect(si(10, 'L/min', 'flow')).toBeCloseTo(1e-2 / 60, 12);
    expect(si(1500, 'ms', 'time')).toBeCloseTo(1.5, 12);
    expect(si(12.6, 'V', 'volts')).toBe(12.6);
    expect(si(5, 'V', 'reservoir')).toBeUndefined();
  });
});
