import { describe, expect, it } from 'vitest';
import {
  evenTimes,
  filled,
  findEvents,
  groupEvents,
  guessChannels,
  inSI,
  meanAt,
  readLog,
  timeAxis,
  type LogChannel,
} from '$lib/log';
import { InvalidInputError } from '$lib/solver/errors';
import type { LoggedLoop } from '$lib/solver/loop/identify/columns';
import { enteredParameters, requestFromLog } from '$lib/solver/loop/identify/fromLog';
import { identify } from '$lib/solver/loop/identify/identify';
import { simulator } from '$lib/solver/loop/identify/simulate';
import type { ParameterName, Parameters } from '$lib/solver/loop/identify/types';
import { steady } from '$lib/solver/loop/steady';
import { seededRandom } from '$lib/solver/numerics/random';
import { exampleLoop } from '../example';

/** Ten minutes of cruise with three pulls; invented. */
function driven(seconds = 600): LoggedLoop {
  const t = evenTimes(0, seconds, 1);
  const pull = (s: number) => (s > 60 && s < 80) || (s > 200 && s < 225) || (s > 420 && s < 440);
  return {
    t,
    ambient: t.map(() => 305.15),
    vehicleSpeed: t.map((s) => (pull(s) ? 35 : 29)),
    chargeAirIn: t.map((s) => (pull(s) ? 430 : 345)),
    chargeAirFlow: t.map((s) => (pull(s) ? 0.3 : 0.045)),
    channels: Object.fromEntries(
      ['reservoir', 'front', 'charge', 'chargeAirOut'].map((name) => [name, t.map(() => 325)]),
    ),
  };
}

/** The loop as it really is: UA of both cores less, the pump's flow less, more liquid in the tank. */
const changed = (entered: Parameters): Parameters => ({
  ...entered,
  frontUA: 0.8 * entered.frontUA,
  chargeUA: 0.9 * entered.chargeUA,
  capacityRate: 0.85 * entered.capacityRate,
  reservoirCapacity: 1.2 * entered.reservoirCapacity,
});

describe('a loop as entered', () => {
  it('gives the flows and conductances of its own balance', () => {
    const p = enteredParameters(exampleLoop, 'cruise');
    const { front, chargeCooler } = steady(exampleLoop, 'cruise');
    expect(p.frontUA).toBe(front.UA);
    expect(p.chargeUA).toBe(chargeCooler!.UA);
    expect(p.capacityRate).toBe(front.C_liquid);
  });

  it('refuses a log without liquid, or without what heats it', () => {
    const log = driven();
    const { chargeAirOut } = log.channels;
    expect(() =>
      requestFromLog(exampleLoop, 'cruise', { ...log, channels: { chargeAirOut } }),
    ).toThrow(InvalidInputError);
    expect(() => requestFromLog(exampleLoop, 'cruise', { ...log, chargeAirIn: undefined })).toThrow(
      /what heats the loop/,
    );
  });
});

describe('from a CSV in US units to the loop and what moved first', () => {
  const log = driven();
  const follow = (channels: LoggedLoop['channels']) => {
    const { model, drive, from } = requestFromLog(exampleLoop, 'cruise', {
      ...log,
      channels,
    }).request;
    return simulator(model, drive)(changed(from));
  };
  // Twice, so that the liquid's properties are those of its own temperatures.
  const exact = follow(follow(log.channels));
  const random = seededRandom(77);
  const F = (kelvin: number) => (kelvin * 9) / 5 - 459.67;
  const noisy = (kelvin: number) => F(kelvin + 0.15 * random.normal()).toFixed(2);
  const head =
    'Time (s),Ambient (°F),Vehicle speed (mph),Charge air before cooler (°F),Air mass flow (lb/min),Tank temp (°F),Exchanger out (°F),Charge cooler liquid out (°F),IAT (°F),Coolant flow (gpm),Pump volts (V)';
  const rows = Array.from(log.t, (s, k) =>
    [
      s.toFixed(1),
      F(log.ambient![k]!).toFixed(2),
      (log.vehicleSpeed![k]! / 0.44704).toFixed(2),
      F(log.chargeAirIn![k]!).toFixed(2),
      ((log.chargeAirFlow![k]! * 60) / 0.45359237).toFixed(4),
      noisy(exact.reservoir[k]!),
      noisy(exact.front[k]!),
      noisy(exact.charge[k]!),
      noisy(exact.chargeAirOut[k]!),
      // The meter and the volts tell a story of their own here: flow falls 12 s before the volts do.
      ((s < 500 ? 6.2 : 4.6) + 0.08 * random.normal()).toFixed(3),
      ((s < 512 ? 13.6 : 12.9) + 0.04 * random.normal()).toFixed(3),
    ].join(','),
  );
  const read = readLog(new TextEncoder().encode([head, ...rows].join('\r\n')));
  const axis = timeAxis(read.columns[0]!.values, 'number');
  const columns: Partial<Record<LogChannel, Float64Array>> = {};
  for (const { channel, column, unit } of guessChannels(read.columns))
    columns[channel] = inSI(read.columns[column]!.values, unit!, channel)!;
  const at = evenTimes(0, axis.t.at(-1)!, 1);
  const paced = (channel: LogChannel) => meanAt(axis.t, columns[channel]!, at, 1);
  const drives = (channel: LogChannel) => filled(paced(channel), at);

  it('every column finds its channel', () => {
    expect(Object.keys(columns).sort()).toEqual(
      [
        ...['time', 'ambient', 'vehicleSpeed', 'chargeAirIn', 'airFlow', 'reservoir', 'frontOut'],
        ...['chargeCoolerOut', 'chargeAirOut', 'flow', 'volts'],
      ].sort(),
    );
  });

  it('UA of both cores, flow and tank lie in their intervals; the entered ones do not', () => {
    const { request } = requestFromLog(exampleLoop, 'cruise', {
      t: at,
      ambient: drives('ambient'),
      vehicleSpeed: drives('vehicleSpeed'),
      chargeAirIn: drives('chargeAirIn'),
      chargeAirFlow: drives('airFlow'),
      channels: {
        reservoir: paced('reservoir'),
        front: paced('frontOut'),
        charge: paced('chargeCoolerOut'),
        chargeAirOut: paced('chargeAirOut'),
      },
    });
    const { estimates, fit } = identify({ ...request, confidence: 0.999 });
    expect(fit.reason).toBe('converged');
    const truth = changed(request.from);
    for (const name of [
      'frontUA',
      'chargeUA',
      'capacityRate',
      'reservoirCapacity',
    ] as ParameterName[]) {
      const { low, high } = estimates.parameters.find((p) => p.name === name)!;
      expect(low).toBeLessThan(truth[name]);
      expect(high).toBeGreaterThan(truth[name]);
      const entered = request.from[name];
      expect(entered < low || entered > high).toBe(true);
    }
  });

  it('the flow fell by a quarter before the voltage did', () => {
    const rule = { kind: 'drop', window: 30 } as const;
    const events = [
      ...findEvents(axis.t, columns.flow!, { ...rule, channel: 'flow', least: 3e-5 }),
      ...findEvents(axis.t, columns.volts!, { ...rule, channel: 'volts', least: 0.3 }),
    ];
    const [group] = groupEvents(events, 60);
    expect(group!.first!.channel).toBe('flow');
    expect(group!.first!.share).toBeCloseTo(-1.6 / 6.2, 1);
    const [least, greatest] = group!.lead!;
    expect(least).toBeLessThanOrEqual(12);
    expect(greatest).toBeGreaterThanOrEqual(12);
  });
});
