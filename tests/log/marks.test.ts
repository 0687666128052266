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
});

it('readings no probe could give are marked as such', () => {
  const values = probe(7);
  values[10] = 5000;
  const { beyond, flags } = markReadings(values, { span: [230, 480] });
  expect(beyond).toBe(1);
  expect(flags[10]! & MARK.beyond).toBe(MARK.beyond);
});
