import { describe, expect, it } from 'vitest';
import { findEvents, type EventRule } from '$lib/log/events';
import { groupEvents } from '$lib/log/groups';
import { onset } from '$lib/log/onset';
import { evenTimes } from '$lib/log/resample';
import { seededRandom } from '$lib/solver/numerics/random';

const FLOW: EventRule = { channel: 'flow', kind: 'drop', least: 1, window: 20 };
const VOLTS: EventRule = { channel: 'volts', kind: 'drop', least: 0.4, window: 20 };
const TANK: EventRule = { channel: 'reservoir', kind: 'rise', least: 3, window: 40 };

/** Ten minutes at `step`: flow falls at `flowAt`, volts at `voltsAt`, the tank warms from `tankAt` on. Invented. */
function log(seed: number, step: number, at: { flow: number; volts: number; tank: number }) {
  const random = seededRandom(seed);
  const t = evenTimes(0, 600, step);
  return {
    t,
    flow: t.map((s) => (s < at.flow ? 8 : 5.6) + 0.1 * random.normal()),
    volts: t.map((s) => (s < at.volts ? 13.6 : 12.4) + 0.05 * random.normal()),
    tank: t.map((s) => 315 + 0.08 * Math.max(0, s - at.tank) + 0.1 * random.normal()),
  };
}

describe('onset of a change', () => {
  it.each([
    ['step', (s: number) => (s < 51.5 ? 0 : 1)],
    ['ramp', (s: number) => 0.1 * Math.max(0, s - 51.5)],
  ] as const)('%s: the true time lies within what is told, 95 times of 100', (shape, signal) => {
    const random = seededRandom(shape === 'step' ? 1 : 2);
    const t = evenTimes(0, 100, 1);
    let within = 0;
    for (let run = 0; run < 300; run++) {
      const found = onset(
        t,
        t.map((s) => signal(s) + 0.3 * random.normal()),
        0.3,
      )!;
      if (found.earliest <= 51.5 && 51.5 <= found.latest) within++;
    }
    expect(within / 300).toBeGreaterThan(0.912); // 95 % less 3 standard deviations
  });

  it('is told no finer than the rows on either side', () => {
    const t = evenTimes(0, 100, 1);
    const found = onset(
      t,
      t.map((s) => (s < 51.5 ? 0 : 100)),
      0.1,
    )!;
    expect(found).toMatchObject({
      earliest: 51,
      latest: 52,
      at: 51.5,
      before: expect.closeTo(0, 9),
      after: 100,
    });
  });
});

describe('events of a log', () => {
  it('are found once each, with their size', () => {
    const { t, flow, volts, tank } = log(3, 1, { flow: 200, volts: 206, tank: 215 });
    const [drop, ...more] = findEvents(t, flow, FLOW);
    expect(more).toEqual([]);
    expect(drop!.share).toBeCloseTo(-0.3, 1);
    expect(drop!.before).toBeCloseTo(8, 1);
    expect(Math.abs(drop!.at - 200)).toBeLessThan(1.5);
    expect(findEvents(t, volts, VOLTS)).toHaveLength(1);
    const rise = findEvents(t, tank, TANK)[0]!;
    expect(rise.earliest).toBeLessThanOrEqual(215);
    expect(rise.latest).toBeGreaterThanOrEqual(215);
  });

  it('the flow that fell before the voltage is named first, with the lead', () => {
    const { t, flow, volts, tank } = log(4, 1, { flow: 200, volts: 206, tank: 215 });
    const events = [
      ...findEvents(t, volts, VOLTS),
      ...findEvents(t, tank, TANK).slice(0, 1),
      ...findEvents(t, flow, FLOW),
    ];
    const [group] = groupEvents(events, 60);
    expect(group!.events.map(({ channel }) => channel)).toEqual(['flow', 'volts', 'reservoir']);
    expect(group!.first!.channel).toBe('flow');
    expect(group!.lead![0]).toBeLessThanOrEqual(6);
    expect(group!.lead![1]).toBeGreaterThanOrEqual(6);
    expect(group!.lead![0]).toBeGreaterThan(0);
  });

  it('and with voltage first, that', () => {
    const { t, flow, volts } = log(5, 1, { flow: 206, volts: 200, tank: 600 });
    const [group] = groupEvents([...findEvents(t, flow, FLOW), ...findEvents(t, volts, VOLTS)], 60);
    expect(group!.first!.channel).toBe('volts');
  });

  it('a log too coarse to tell says so', () => {
    const { t, flow, volts } = log(6, 5, { flow: 201, volts: 203, tank: 600 });
    const wide = { window: 60 };
    const [group] = groupEvents(
      [
        ...findEvents(t, flow, { ...FLOW, ...wide }),
        ...findEvents(t, volts, { ...VOLTS, ...wide }),
      ],
      60,
    );
    expect(group!.events).toHaveLength(2);
    expect(group!.first).toBeNull();
  });

  it('noise and wild readings alone are none', () => {
    const { t, flow } = log(7, 1, { flow: 1e9, volts: 1e9, tank: 1e9 });
    flow[300] = 0;
    expect(findEvents(t, flow, FLOW)).toEqual([]);
  });

  it('two drops an hour apart are two', () => {
    const t = evenTimes(0, 3600, 1);
    const random = seededRandom(9);
    const flow = t.map((s) => (s < 900 ? 8 : s < 2700 ? 6.5 : 4) + 0.1 * random.normal());
    expect(findEvents(t, flow, FLOW).map(({ at }) => Math.round(at / 10) * 10)).toEqual([
      900, 2700,
    ]);
  });
});
