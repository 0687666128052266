/** What a log is searched for, rule by rule: invented drives with one thing that moves, or none. */
import { describe, expect, it } from 'vitest';
import type { LogChannel } from '$lib/log/channels';
import { markReadings } from '$lib/log/marks';
import { evenTimes } from '$lib/log/resample';
import { markOptions } from '$lib/log/worker/rules';
import { searchedEvents } from '$lib/log/worker/search';
import { seededRandom } from '$lib/solver/numerics/random';

const GPM = 6.30901964e-5;
type Drive = Partial<Record<LogChannel, (t: number) => number>>;

/** Steady driving, and what instruments add to it; SI. */
const STEADY = {
  reservoir: () => 315,
  frontIn: () => 322,
  ambient: () => 305,
  flow: () => 8 * GPM,
  volts: () => 13.6,
  amps: () => 6,
  vehicleSpeed: () => 30,
  airFlow: () => 0.1,
} as const satisfies Drive;
const NOISE: Readonly<Partial<Record<LogChannel, number>>> = {
  reservoir: 0.15,
  frontIn: 0.15,
  ambient: 0.15,
  flow: 0.08 * GPM,
  volts: 0.05,
  amps: 0.08,
  vehicleSpeed: 0.3,
  airFlow: 0.002,
};

function groups(drive: Drive, seed = 1, { length = 900, step = 0.5 } = {}) {
  const random = seededRandom(seed);
  const t = evenTimes(0, length, step);
  const channels = new Map(
    Object.entries(drive).map(([name, reading]) => {
      const channel = name as LogChannel;
      const values = t.map((s) => reading(s) + NOISE[channel]! * random.normal());
      return [channel, { values, marks: markReadings(values, markOptions(channel)) }];
    }),
  );
  const steps = searchedEvents({ axis: { t }, channels });
  for (;;) {
    const next = steps.next();
    if (next.done) return next.value;
  }
}
const told = (drive: Drive, seed = 1) =>
  groups(drive, seed).map(({ events }) => events.map(({ channel, kind }) => `${channel} ${kind}`));
const seeds = [1, 2, 3, 4, 5];
const lag = (u: number, tau: number) => (u < 0 ? 0 : 1 - Math.exp(-u / tau));

/** Pulls of 20 s, each with its heat, and the road to and fro. */
const pull = (t: number) => (t % 150 > 60 && t % 150 < 80 ? 1 : 0);
const warmed = (t: number, tau: number) => {
  const since = (t % 150) - 60;
  if (since < 0) return 0;
  return since < 20 ? 12 * lag(since, tau) : 12 * lag(20, tau) * Math.exp((20 - since) / tau);
};
const PULLS: Drive = {
  ...STEADY,
  reservoir: (t) => 315 + warmed(t, 25),
  frontIn: (t) => 322 + warmed(t, 15),
  vehicleSpeed: (t) => 25 + 5 * Math.sin(t / 40) + 10 * pull(t),
  airFlow: (t) => 0.05 + 0.2 * pull(t),
  amps: (t) => 6 + 0.3 * Math.sin(t / 70),
  volts: (t) => 13.6 + 0.1 * Math.sin(t / 90),
};
const { vehicleSpeed: _v, airFlow: _a, ambient: _o, ...UNDRIVEN } = PULLS;

describe('one thing alone that moves is an event', () => {
  it.each<[string, Drive, string]>([
    [
      '25 °F of the tank, quickly',
      { reservoir: (t) => 315 + 13.9 * lag(t - 406, 30) },
      'reservoir rise',
    ],
    [
      '25 °F of the tank in 5 min',
      { reservoir: (t) => 315 + 13.9 * Math.min(1, Math.max(0, (t - 406) / 300)) },
      'reservoir rise',
    ],
    [
      '2.5 gpm in 300 s',
      { flow: (t) => (8 - 2.5 * Math.min(1, Math.max(0, (t - 300) / 300))) * GPM },
      'flow drop',
    ],
    ['6 to 8.5 A', { amps: (t) => (t < 406 ? 6 : 8.5) }, 'amps rise'],
  ])('%s', (_name, change, event) => {
    for (const seed of seeds) expect(told({ ...STEADY, ...change }, seed)).toEqual([[event]]);
  });

  it('a temperature that rises and stays also where no driver is logged', () => {
    const { reservoir, flow, volts } = STEADY;
    const rise: Drive = { flow, volts, reservoir: (t) => reservoir() + 13.9 * lag(t - 406, 60) };
    for (const seed of seeds) expect(told(rise, seed)).toEqual([['reservoir rise']]);
  });

  it('the sag is told to begin where it does', () => {
    let within = 0;
    for (let seed = 1; seed <= 20; seed++) {
      const sag = (t: number) => (8 - 2.5 * Math.min(1, Math.max(0, (t - 300) / 300))) * GPM;
      const [group] = groups({ ...STEADY, flow: sag }, seed);
      const { earliest, latest } = group!.events[0]!;
      if (earliest <= 300 && 300 <= latest) within++;
      expect(latest - earliest).toBeLessThan(60);
    }
    expect(within / 20).toBeGreaterThanOrEqual(0.95 - 3 * Math.sqrt((0.95 * 0.05) / 20));
  });
});

describe('what is none', () => {
  it.each<[string, Drive]>([
    ['noise', STEADY],
    ['pulls', PULLS],
    ['pulls, with no driver logged', UNDRIVEN],
    ['the pump switched on and off', { ...STEADY, amps: (t) => (t % 300 < 100 ? 0.05 : 6) }],
    [
      'volts that rise, the amps as their square',
      {
        ...STEADY,
        volts: (t) => (t < 400 ? 12 : 13.6),
        amps: (t) => (t < 400 ? 6 : 6 * (13.6 / 12) ** 2),
      },
    ],
  ])('%s', (_name, drive) => {
    for (const seed of seeds) expect(told(drive, seed)).toEqual([]);
  });
});

describe('flow and tank together', () => {
  it.each([30, 60])(
    'flow at 404 s, the tank from 406 s on with %d s: once each, never the tank first',
    (tau) => {
      for (const seed of seeds) {
        const found = groups(
          {
            ...STEADY,
            flow: (t) => (t < 404.2 ? 8 : 5) * GPM,
            reservoir: (t) => 315 + 14 * lag(t - 406.2, tau),
          },
          seed,
        );
        expect(found).toHaveLength(1);
        const [{ events, first }] = found as [(typeof found)[number]];
        expect(events.map(({ channel }) => channel)).toEqual(['flow', 'reservoir']);
        expect(first?.channel).not.toBe('reservoir');
        expect(events[1]!.earliest).toBeLessThanOrEqual(406.2);
        expect(events[1]!.latest).toBeGreaterThanOrEqual(406.2);
      }
    },
  );

  it('amps that answer a fall of flow and volts leave their order as it is', () => {
    const [group] = groups({
      ...STEADY,
      flow: (t) => (t < 404.2 ? 8 : 5) * GPM,
      amps: (t) => (t < 404.2 ? 6 : 8.5),
      volts: (t) => (t < 409.2 ? 13.6 : 12.4),
    });
    expect(group!.events.map(({ channel }) => channel)).toEqual(['flow', 'volts']);
    expect(group!.first!.channel).toBe('flow');
  });
  it('with the flow alone they are told', () => {
    expect(
      told({
        ...STEADY,
        flow: (t) => (t < 404.2 ? 8 : 5) * GPM,
        amps: (t) => (t < 404.2 ? 6 : 8.5),
      }),
    ).toEqual([expect.arrayContaining(['flow drop', 'amps rise'])]);
  });
});
