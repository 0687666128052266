import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OutOfRangeError } from '$lib/solver/errors';
import {
  compressorEfficiency,
  compressorOutlet,
  compressorPower,
  isentropicOutlet,
  pressureRatio,
} from '$lib/solver/charge/compressor';

const relative = (got: number, expected: number) => Math.abs(got / expected - 1);

describe('compressor', () => {
  // Source: ideal gas, constant gamma (Dixon & Hall; Heywood sec. 6.8), computed apart from this project, ten digits.
  it.each([
    [298.15, 1.5, 0.7, 1.4, 334.7700537, 350.4643624],
    [313.15, 2, 0.65, 1.4, 381.7341258, 418.6640397],
    [288.15, 1.7, 0.6, 1.4, 335.3213245, 366.7688741],
    [298.15, 1, 0.7, 1.4, 298.15, 298.15],
    [310, 3, 0.78, 1.4, 424.3088131, 456.5497603],
    [298.15, 2, 0.7, 1.39, 362.1566524, 389.5880749],
  ])(
    'from %d K at ratio %d, efficiency %d, gamma %d',
    (T_in, ratio, efficiency, gamma, ideal, real) => {
      const at = { T_in, pressureRatio: ratio, gamma };
      expect(relative(isentropicOutlet(at), ideal)).toBeLessThan(1e-9);
      expect(relative(compressorOutlet({ ...at, efficiency }), real)).toBeLessThan(1e-9);
    },
  );

  it('power and efficiency agree with the same source', () => {
    const power = compressorPower({
      T_in: 308.15,
      pressureRatio: 2.2,
      efficiency: 0.72,
      massFlow: 0.4,
      cp: 1005,
    });
    expect(relative(power, 43471.17234)).toBeLessThan(1e-9);
    const efficiency = compressorEfficiency({ T_in: 305, T_out: 365, pressureRatio: 1.6 });
    expect(relative(efficiency, 0.7305804077)).toBeLessThan(1e-9);
  });

  it.each([
    [101325, 2000, 180000, 7000, 1.882708281],
    [83500, 1500, 165000, 5000, 2.073170732],
  ])('pressure ratio at %d Pa', (p_ambient, dp_inlet, p_manifold_abs, dp_charge_cooler, ratio) => {
    const got = pressureRatio({ p_ambient, dp_inlet, p_manifold_abs, dp_charge_cooler });
    expect(relative(got, ratio)).toBeLessThan(1e-9);
  });

  it('efficiency is the inverse of the outlet temperature', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1.01, max: 6, noNaN: true }),
        fc.double({ min: 0.2, max: 0.999, noNaN: true }),
        (ratio, efficiency) => {
          const T_out = compressorOutlet({ T_in: 300, pressureRatio: ratio, efficiency });
          const back = compressorEfficiency({ T_in: 300, T_out, pressureRatio: ratio });
          expect(relative(back, efficiency)).toBeLessThan(1e-9);
        },
      ),
    );
  });

  it('refuses what no compressor does', () => {
    const at = { T_in: 300, pressureRatio: 2, efficiency: 0.7 };
    expect(() => compressorOutlet({ ...at, pressureRatio: 0.99 })).toThrow(OutOfRangeError);
    expect(() => compressorOutlet({ ...at, efficiency: 0 })).toThrow(OutOfRangeError);
    expect(() => compressorOutlet({ ...at, T_in: 27 })).toThrow(OutOfRangeError);
    expect(() => compressorOutlet({ ...at, pressureRatio: NaN })).toThrow(OutOfRangeError);
    // Colder than compression without loss: 365.7 K.
    expect(() => compressorEfficiency({ T_in: 300, T_out: 360, pressureRatio: 2 })).toThrow(
      OutOfRangeError,
    );
    expect(() =>
      pressureRatio({ p_ambient: 1e5, dp_inlet: 1e5, p_manifold_abs: 1e5, dp_charge_cooler: 0 }),
    ).toThrow(OutOfRangeError);
  });
});
