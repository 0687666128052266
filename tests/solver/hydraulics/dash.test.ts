import { describe, expect, it } from 'vitest';
import { dashBore } from '../../../src/lib/solver/hydraulics/dash';
import { InvalidInputError, OutOfRangeError } from '../../../src/lib/solver/errors';

const inch = 0.0254;

describe('dash size to bore', () => {
  // Source: common practice, sixteenths of an inch of hose bore.
  it.each([
    [8, 0.5],
    [10, 0.625],
    [12, 0.75],
    [16, 1],
  ])('-%d is a bore of %d in', (dash, bore) => {
    const { bore: got, source } = dashBore(dash, 'hose-bore');
    expect(got).toBeCloseTo(bore * inch, 12);
    expect(source.standing).toBe('common practice');
  });
  // Source: SAE 100R5 style hose, from memory.
  it.each([
    [8, 13 / 32],
    [10, 1 / 2],
    [12, 5 / 8],
    [16, 7 / 8],
  ])('-%d by the tube it replaces is a bore of %d in', (dash, bore) => {
    const { bore: got, source } = dashBore(dash, 'tube-replaced');
    expect(got).toBeCloseTo(bore * inch, 12);
    expect(source.standing).toBe('from memory');
  });
  it('the replaced tube always means the smaller bore', () => {
    for (const dash of [4, 6, 8, 10, 12, 16, 20, 24]) {
      expect(dashBore(dash, 'tube-replaced').bore).toBeLessThan(dashBore(dash, 'hose-bore').bore);
    }
  });
  it('refuses sizes it does not know', () => {
    expect(() => dashBore(7, 'tube-replaced')).toThrow(InvalidInputError);
    expect(() => dashBore(0, 'hose-bore')).toThrow(OutOfRangeError);
  });
});
