import { describe, expect, it } from 'vitest';
import { OutOfRangeError, InvalidInputError } from '$lib/solver/errors';
import { nearestPreferred, PREFERRED, preferredValues } from '$lib/solver/instruments/preferred';

describe('preferred numbers', () => {
  // IEC 60063:2015, lists from memory of the standard.
  it('E12 and E24 are the lists of the standard', () => {
    expect(PREFERRED.E12).toEqual([1, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2]);
    expect(PREFERRED.E24).toHaveLength(24);
    expect(PREFERRED.E24.slice(10, 18)).toEqual([2.7, 3.0, 3.3, 3.6, 3.9, 4.3, 4.7, 5.1]);
  });
  it('E96 has the values printed on one-per-cent resistors', () => {
    expect(PREFERRED.E96).toHaveLength(96);
    for (const value of [1.0, 1.02, 1.33, 2.0, 2.49, 4.99, 5.11, 6.81, 7.87, 9.09, 9.76]) {
      expect(PREFERRED.E96).toContain(value);
    }
    expect(new Set(PREFERRED.E96).size).toBe(96);
  });
  it('spans decades, both ends included, without noise of doubles', () => {
    expect(preferredValues('E12', 10, 100)).toEqual([
      10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82, 100,
    ]);
    expect(preferredValues('E24', 1, 10e6)).toHaveLength(169);
    expect(preferredValues('E24', 4600, 4800)).toEqual([4700]);
  });
  it('crosses a decade for the nearest', () => {
    expect(nearestPreferred('E24', 960)).toBe(1000);
    expect(nearestPreferred('E12', 9.2)).toBe(10);
    expect(nearestPreferred('E12', 9)).toBe(8.2);
  });
  it('refuses what is no resistance, and an empty span', () => {
    expect(() => nearestPreferred('E24', 0)).toThrow(OutOfRangeError);
    expect(() => nearestPreferred('E24', NaN)).toThrow(OutOfRangeError);
    expect(() => preferredValues('E12', 1.05, 1.15)).toThrow(InvalidInputError);
  });
});
