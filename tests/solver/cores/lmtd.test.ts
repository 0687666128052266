import { describe, expect, it } from 'vitest';
import { InvalidInputError, OutOfRangeError } from '$lib/solver/errors';
import { dutyFromUA, lmtd, lmtdCorrection12, uaFromRating } from '$lib/solver/cores/lmtd';

const relative = (got: number, expected: number) => Math.abs(got / expected - 1);
const WITHIN = 1e-8; // ten digits printed

describe('log-mean difference', () => {
  // Source: ht 1.0.7 core.LMTD; the third by hand (equal differences at both ends).
  it.each([
    ['counterflow', 373.15, 333.15, 303.15, 313.35, 43.20040929],
    ['parallel', 373.15, 333.15, 303.15, 313.15, 39.91178001],
    ['counterflow', 350, 330, 300, 320, 30],
    ['counterflow', 365, 325, 310, 318, 28.01862607],
  ] as const)('%s %d %d %d %d', (arrangement, T_hot_in, T_hot_out, T_cold_in, T_cold_out, dT) => {
    const got = lmtd(arrangement, { T_hot_in, T_hot_out, T_cold_in, T_cold_out });
    expect(relative(got, dT)).toBeLessThan(WITHIN);
  });

  it('refuses streams that cross', () => {
    const t = { T_hot_in: 350, T_hot_out: 310, T_cold_in: 300, T_cold_out: 320 };
    expect(() => lmtd('parallel', t)).toThrow(OutOfRangeError);
    expect(() => lmtd('counterflow', { ...t, T_hot_in: NaN })).toThrow(OutOfRangeError);
  });
});

describe('correction for one shell pass, two tube passes', () => {
  // Source: ht 1.0.7 hx.F_LMTD_Fakheri (Fakheri 2003).
  it.each([
    [373.15, 333.15, 303.15, 318.15, 0.9368975212],
    [360, 330, 300, 325, 0.8669282341],
  ])('%d %d %d %d', (T_hot_in, T_hot_out, T_cold_in, T_cold_out, F) => {
    const got = lmtdCorrection12({ T_hot_in, T_hot_out, T_cold_in, T_cold_out });
    expect(relative(got, F)).toBeLessThan(WITHIN);
  });
});

describe('duty and rating', () => {
  // Source: own closed forms over ht 1.0.7 and the exact crossflow series, ten digits.
  it.each([
    ['crossflow-both-unmixed', 900, 1900, 1300, 325, 303, 12167.31329],
    ['crossflow-both-unmixed', 260, 380, 2400, 400, 318, 14871.16197],
    ['counterflow', 500, 600, 600, 360, 300, 16363.63636],
    ['parallel', 500, 600, 1500, 360, 300, 17706.77424],
    ['crossflow-cmin-mixed', 700, 2100, 1100, 330, 305, 11493.12197],
    ['crossflow-cmax-mixed', 700, 2100, 1100, 330, 305, 11473.81037],
  ] as const)(
    '%s with UA %d, C %d and %d, inlets %d and %d',
    (arrangement, UA, C_hot, C_cold, T_hot_in, T_cold_in, heat) => {
      const got = dutyFromUA({ arrangement, UA, C_hot, C_cold, T_hot_in, T_cold_in });
      expect(relative(got.heat, heat)).toBeLessThan(WITHIN);
      const { T_hot_out } = got;
      const back = uaFromRating({ arrangement, C_hot, C_cold, T_hot_in, T_hot_out, T_cold_in });
      expect(relative(back.UA, UA)).toBeLessThan(WITHIN);
      expect(back.T_cold_out).toBeCloseTo(got.T_cold_out, 9);
    },
  );

  it('gives the textbook oil cooler its UA, and UA times the log-mean difference is the heat', () => {
    // Source: Incropera & DeWitt ch. 11, concentric-tube oil cooler; problem data from memory. The book
    // rounds to 8524 W, 40.2 °C, 43.2 K.
    const t = { T_hot_in: 373.15, T_hot_out: 333.15, T_cold_in: 303.15 };
    const got = uaFromRating({ arrangement: 'counterflow', C_hot: 213.1, C_cold: 835.6, ...t });
    expect(got.heat).toBeCloseTo(8524, 6);
    expect(got.T_cold_out - 273.15).toBeCloseTo(40.2, 1);
    const dT = lmtd('counterflow', { ...t, T_cold_out: got.T_cold_out });
    expect(dT).toBeCloseTo(43.2, 1);
    expect(relative(got.UA * dT, got.heat)).toBeLessThan(1e-12);
  });

  it('refuses a hot outlet that is not between the inlets, and heat beyond the arrangement', () => {
    const at = { C_hot: 600, C_cold: 600, T_hot_in: 360, T_cold_in: 300 };
    expect(() => uaFromRating({ arrangement: 'parallel', ...at, T_hot_out: 295 })).toThrow(
      InvalidInputError,
    );
    expect(() => uaFromRating({ arrangement: 'parallel', ...at, T_hot_out: 325 })).toThrow(
      OutOfRangeError,
    );
  });
});
