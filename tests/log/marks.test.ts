import { describe, expect, it } from 'vitest';
import { inSI } from '$lib/log/channels';
import { MARK, markReadings } from '$lib/log/marks';
import { seededRandom } from '$lib/solver/numerics/random';

/** A probe that follows a drive: slow swings, a pull that heats by 1.5 K/s, noise. */
function probe(seed: number, n = 3000): Float64Array {
  const random = seededRandom(seed);
  return Float64Array.from(
    { length: n },
    (_, k) =>
      320 +
      8 * Math.sin(k / 300) +
      Math.min(20, Math.max(0, 1.5 * (k - 1000))) +
      0.1 * random.normal(),
  );
}
const flagged = (flags: Uint8Array, mark: number) =>
  Array.from(flags, (f, k) => (f & mark ? k : -1)).filter((k) => k >= 0);

describe('outliers', () => {
  it('a channel that jumps by itself, step by step and back, is not wild throughout; a spike in it is', () => {
    // Tenths of a gpm from 6.0 to 6.6 and back, as a coarse counter gives.
    const text = Float64Array.from({ length: 7000 }, (_, k) => 6 + (k % 7) / 10);
    const saw = inSI(text, 'gpm', 'flow')!;
    expect(markReadings(saw).outliers).toBe(0);
    saw[3001] = 2 * saw[3001]!;
    expect(flagged(markReadings(saw).flags, MARK.outlier)).toEqual([3001]);
  });
  it('single and paired wild readings are marked and left as they are', () => {
    const values = probe(1);
    const wild = [200, 700, 701, 1500, 2999];
    for (const k of wild) values[k] = values[k]! + 15;
    const before = values.slice();
    const { flags, outliers } = markReadings(values);
    expect(flagged(flags, MARK.outlier)).toEqual(wild);
    expect(outliers).toBe(wild.length);
    expect(values).toEqual(before);
  });

  it('a step or a steep pull is none', () => {
    const steps = probe(2).map((x, k) => (k > 1800 ? x - 30 : x));
    expect(markReadings(steps).outliers).toBe(0);
  });

  it('noise alone is hardly ever one', () => {
    let count = 0;
    for (let seed = 10; seed < 20; seed++) count += markReadings(probe(seed)).outliers;
    expect(count).toBeLessThan(6); // of 30 000
  });

  it('a coarse reader that jumps between two counts is none', () => {
    const coarse = probe(3).map((x) => Math.round(x / 2) * 2);
    expect(markReadings(coarse).outliers).toBe(0);
  });

  it('gaps are passed over', () => {
    const values = probe(4).map((x, k) => (k % 3 ? NaN : x));
    values[300] = values[300]! + 15;
    expect(flagged(markReadings(values).flags, MARK.outlier)).toEqual([300]);
  });
});

describe('stuck channels', () => {
  it('a stretch that stands still where the rest moves', () => {
    const values = probe(5);
    values.fill(values[500]!, 500, 800);
    const { stuck, flags } = markReadings(values);
    expect(stuck).toEqual([{ from: 500, to: 799 }]);
    expect(flagged(flags, MARK.stuck)).toHaveLength(300);
  });

  it('a slow channel of a fast log repeats each reading and is not stuck', () => {
    const values = probe(6).map((_, k, a) => a[k - (k % 20)]!);
    expect(markReadings(values).stuck).toEqual([]);
  });

  it('a channel that never moves has not stopped', () => {
    expect(markReadings(new Float64Array(5000).fill(3)).stuck).toEqual([]);
  });

  it('for most of a log', () => {
    const values = probe(8);
    values.fill(values[500]!, 500, 2700);
    expect(markReadings(values).stuck).toEqual([{ from: 500, to: 2699 }]);
  });

  describe('recorded in whole degrees Fahrenheit', () => {
    const whole = (values: Float64Array) =>
      inSI(
        values.map((k) => Math.round((k - 273.15) * 1.8 + 32)),
        '°F',
        'reservoir',
      )!;
    /** Air outside that drifts by a few degrees in an hour. */
    const ambient = (seed: number, noise: number) => {
      const random = seededRandom(seed);
      return Float64Array.from(
        { length: 36_000 },
        (_, k) => 305 + 2 * Math.sin(k / 9000) + noise * random.normal(),
      );
    };

    it.each([0.02, 0.05, 0.1, 0.2, 0.4])(
      'what drifts slowly is not stuck, with noise of %d K',
      (noise) => {
        for (let seed = 1; seed <= 4; seed++) {
          const values = whole(ambient(seed, noise));
          expect(markReadings(values).stuck).toEqual([]);
          expect(markReadings(values, { slow: true }).stuck).toEqual([]);
        }
      },
    );

    it.each([0.05, 0.1, 0.4])('nor a tank that swings, with noise of %d K', (noise) => {
      const random = seededRandom(11);
      const tank = Float64Array.from(
        { length: 20_000 },
        (_, k) => 320 + 6 * Math.sin(k / 700) + noise * random.normal(),
      );
      expect(markReadings(whole(tank)).stuck).toEqual([]);
    });

    it.each([0.05, 0.1, 0.4])('a tank that stands while it swings is, noise %d K', (noise) => {
      const random = seededRandom(12);
      const tank = whole(
        Float64Array.from(
          { length: 20_000 },
          (_, k) => 320 + 6 * Math.sin(k / 700) + noise * random.normal(),
        ),
      );
      // Over more than a whole swing; what it drives at is elsewhere when it comes back.
      tank.fill(tank[9000]!, 9000, 15_000);
      const { stuck } = markReadings(tank);
      expect(stuck).toHaveLength(1);
      expect(stuck[0]!.from).toBeGreaterThan(8800);
      expect(stuck[0]!.to).toBe(14_999);
    });
  });

  it('air outside in tenths that stops dead is stuck all the same', () => {
    const random = seededRandom(13);
    const air = Float64Array.from(
      { length: 5000 },
      () => Math.round(10 * (305 + 0.3 * random.normal())) / 10,
    );
    air.fill(305.2, 2000, 3000);
    const { stuck } = markReadings(air, { slow: true });
    expect(stuck).toHaveLength(1);
    expect(stuck[0]!.to - stuck[0]!.from).toBeGreaterThan(990);
  });
});

describe('nothing flows', () => {
  /** gpm about nothing with the pump off, and 8 with it on. */
  const flow = (seed: number) => {
    const random = seededRandom(seed);
    return Float64Array.from(
      { length: 3000 },
      (_, k) => (k % 1000 < 400 ? 0 : 8) + 0.05 * random.normal(),
    );
  };
  it('noise about it is not beyond the possible', () => {
    for (let seed = 1; seed <= 5; seed++)
      expect(markReadings(flow(seed), { span: [0, 50] }).beyond).toBe(0);
  });
  it('a flow backwards is', () => {
    const back = flow(6);
    back[100] = -2;
    const { beyond, flags } = markReadings(back, { span: [0, 50] });
    expect(beyond).toBe(1);
    expect(flags[100]! & MARK.beyond).toBe(MARK.beyond);
  });
});

it('readings no probe could give are marked as such', () => {
  const values = probe(7);
  values[10] = 5000;
  const { beyond, flags } = markReadings(values, { span: [230, 480] });
  expect(beyond).toBe(1);
  expect(flags[10]! & MARK.beyond).toBe(MARK.beyond);
});
