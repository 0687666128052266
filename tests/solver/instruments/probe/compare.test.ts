import { describe, expect, it } from 'vitest';
import { InvalidInputError } from '$lib/solver/errors';
import { compareProbes, median } from '$lib/solver/instruments/probe/compare';

const fahrenheit = (f: number) => (f + 459.67) / 1.8;

describe('probes of one part', () => {
  // Common practice, no source: probes of one part can differ by 10 to 15 °F.
  it('that differ by 12 °F in one bath: the odd one is rejected, the others stay', () => {
    const lot = compareProbes([212, 211, 213, 224, 212.5].map(fahrenheit), 3 / 1.8);
    expect(lot.spread * 1.8).toBeCloseTo(13, 9);
    expect(lot.median).toBeCloseTo(fahrenheit(212.5), 9);
    expect(lot.probes.map((p) => p.reject)).toEqual([false, false, false, true, false]);
    expect(lot.probes[3]!.apart).toBe(true);
    // |−0.5|, |−1.5|, |0.5|, |11.5|, 0: the middle one is 0.5 °F.
    expect(lot.mad * 1.8).toBeCloseTo(0.5, 9);
  });
  it('two alone cannot say which of them is wrong: both lie as far from the middle', () => {
    const lot = compareProbes([300, 306], 2);
    expect(lot.probes.map((p) => p.reject)).toEqual([true, true]);
    expect(lot.probes.map((p) => p.from)).toEqual([-3, 3]);
    expect(lot.probes.some((p) => p.apart)).toBe(false);
  });
  it('all alike', () => {
    const lot = compareProbes([300, 300, 300, 300, 300], 1);
    expect(lot).toMatchObject({ spread: 0, mad: 0 });
    expect(lot.probes.some((p) => p.reject || p.apart)).toBe(false);
  });
  it('none, or not a number', () => {
    expect(() => compareProbes([], 1)).toThrow(InvalidInputError);
    expect(() => compareProbes([300, NaN], 1)).toThrow(InvalidInputError);
    expect(median([3, 1, 2])).toBe(2);
    expect(median([4, 1, 2, 3])).toBe(2.5);
  });
});
