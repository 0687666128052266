/** Onsets of changes whose true beginning is known: invented shapes, noise of several seeds. */
import { describe, expect, it } from 'vitest';
import { findEvents, type EventRule } from '$lib/log/events';
import { evenTimes } from '$lib/log/resample';
import { seededRandom } from '$lib/solver/numerics/random';

const RISE: EventRule = { channel: 'reservoir', kind: 'rise', least: 4, window: 30 };
const RUNS = 40;
/** 95 % less three standard deviations of the share in so many runs. */
const LEAST_SHARE = 0.95 - 3 * Math.sqrt((0.95 * 0.05) / RUNS);

const lag = (u: number, tau: number) => (u < 0 ? 0 : 1 - Math.exp(-u / tau));
/** Two lags one behind the other, as a probe in a tank. */
const lags = (u: number, a: number, b: number) => (a * lag(u, a) - b * lag(u, b)) / (a - b);

/** Rises of 14 K by the time since they began. */
const SHAPES: Readonly<Record<string, (u: number) => number>> = {
  'one lag of 2 s': (u) => 14 * lag(u, 2),
  'one lag of 10 s': (u) => 14 * lag(u, 10),
  'one lag of 30 s': (u) => 14 * lag(u, 30),
  'one lag of 60 s': (u) => 14 * lag(u, 60),
  'one lag of 120 s': (u) => 14 * lag(u, 120),
  'lags of 20 and 5 s': (u) => 14 * lags(u, 20, 5),
  'lags of 60 and 10 s': (u) => 14 * lags(u, 60, 10),
  'quick and slow at once': (u) => 8 * lag(u, 30) + 12 * lag(u, 200),
  'even for 60 s': (u) => 14 * Math.min(1, Math.max(0, u / 60)),
  'a pull of 25 s and its end': (u) =>
    u < 25 ? 0.6 * Math.max(0, u) : 15 * Math.exp((25 - u) / 40),
  'while it cools still': (u) => 3 * Math.exp(-(u + 100) / 60) + 14 * lag(u, 30),
  'on a slow drift': (u) => 0.005 * u + 14 * lag(u, 30),
};

/** Events of one rise, whose beginning lies anywhere between two rows. */
function risen(shape: (u: number) => number, step: number, seed: number, count: number) {
  const random = seededRandom(seed);
  const at = 406 + step * random.uniform();
  const t = evenTimes(0, 800, step);
  const reading = (s: number) => 315 + shape(s - at) + 0.15 * random.normal();
  const x = t.map((s) => (count > 0 ? Math.round(reading(s) / count) * count : reading(s)));
  return { at, events: findEvents(t, x, RISE) };
}

describe.each(Object.entries(SHAPES))('a rise, %s', (_name, shape) => {
  it.each([
    [1, 0],
    [0.2, 0],
    [1, 5 / 9],
  ])(
    'rows each %d s, in counts of %d K: found once, its onset within what is told',
    (step, count) => {
      let [within, early] = [0, 0];
      for (let seed = 1; seed <= RUNS; seed++) {
        const { at, events } = risen(shape, step, 1000 * seed, count);
        expect(events).toHaveLength(1);
        const { at: told, earliest, latest } = events[0]!;
        if (earliest <= at && at <= latest) within++;
        // The ± shown is half of it, about its middle.
        expect(told).toBeCloseTo(0.5 * (earliest + latest), 9);
        if (latest < at - 1) early++;
      }
      expect(within / RUNS).toBeGreaterThanOrEqual(LEAST_SHARE);
      expect(early).toBe(0);
    },
  );
});

it('a slow rise is placed to a few seconds where it leaves its level', () => {
  for (const shape of ['one lag of 30 s', 'one lag of 60 s']) {
    for (let seed = 1; seed <= 10; seed++) {
      const { events } = risen(SHAPES[shape]!, 0.5, seed, 0);
      const { earliest, latest } = events[0]!;
      expect(latest - earliest).toBeLessThan(4);
    }
  }
});

it('a log that begins in the middle of a rise has no onset of it', () => {
  const random = seededRandom(3);
  const t = evenTimes(0, 600, 1);
  expect(
    findEvents(
      t,
      t.map((s) => 300 + 30 * lag(s, 100) + 0.15 * random.normal()),
      RISE,
    ),
  ).toEqual([]);
});
