import { describe, expect, it } from 'vitest';
import { OutOfRangeError } from '$lib/solver/errors';
import { saturationPressureWater } from '$lib/solver/fluids/saturation';
import {
  REFERENCE_PRESSURE,
  WATER_RANGE,
  region1,
  waterProperties,
} from '$lib/solver/fluids/water';
import { printedTo } from './printed';

const agrees = (got: number, printed: string) => {
  const { value, within } = printedTo(printed);
  expect(Math.abs(got - value)).toBeLessThanOrEqual(within);
};

// Source: IAPWS R7-97(2012), Table 5; specific volume m³/kg and cp kJ/(kg K).
describe('region 1 agrees with every digit printed', () => {
  it.each([
    [300, 3e6, '0.100215168e-2', '0.417301218e1'],
    [300, 80e6, '0.971180894e-3', '0.401008987e1'],
    [500, 3e6, '0.120241800e-2', '0.465580682e1'],
  ])('at %d K and %d Pa', (T, p, v, cp) => {
    const got = region1(T, p);
    agrees(1 / got.rho, v);
    agrees(got.cp / 1000, cp);
  });
});

describe('waterProperties', () => {
  // Source: IAPWS-95 at 20 °C and 101325 Pa, as handbooks print it (from memory): 998.21 kg/m³,
  // 4.184 kJ/(kg K), 1.0016 mPa s, 0.598 W/(m K). IF97 is another formulation: its release grants cp 0.2 %.
  it('at 20 °C and one atmosphere gives the figures every handbook prints', () => {
    const w = waterProperties(293.15, 101325);
    agrees(w.rho, '998.21');
    expect(Math.abs(w.cp / 4184 - 1)).toBeLessThan(0.002);
    agrees(w.mu * 1e3, '1.0016');
    agrees(w.k, '0.598');
  });

  it('refuses what is outside the range, and NaN', () => {
    for (const T of [WATER_RANGE.T[0] - 0.01, WATER_RANGE.T[1] + 0.01, NaN]) {
      expect(() => waterProperties(T)).toThrow(OutOfRangeError);
    }
    expect(() => waterProperties(300, 101e6)).toThrow(OutOfRangeError);
    expect(() => waterProperties(300, NaN)).toThrow(OutOfRangeError);
  });

  it('refuses water that would be steam, and names the least pressure', () => {
    expect(() => waterProperties(380, 101325)).toThrow(OutOfRangeError);
    try {
      waterProperties(380, 101325);
    } catch (e) {
      expect((e as OutOfRangeError).facts.range?.[0]).toBe(saturationPressureWater(380));
    }
  });

  it('takes a reference pressure at which all of the range is liquid', () => {
    expect(REFERENCE_PRESSURE).toBeGreaterThan(saturationPressureWater(WATER_RANGE.T[1]));
  });

  it('hardly depends on pressure: one atmosphere against the reference', () => {
    for (let T = 273.15; T <= 373; T += 5) {
      const a = waterProperties(T, 101325);
      const b = waterProperties(T);
      for (const name of ['rho', 'cp', 'mu', 'k'] as const) {
        expect(Math.abs(a[name] / b[name] - 1)).toBeLessThan(3e-4);
      }
    }
  });

  it('is densest near 4 °C', () => {
    const rho = (T: number) => waterProperties(T, 101325).rho;
    // 3.98 °C: common textbook value.
    expect(rho(277.13)).toBeGreaterThan(rho(275.15));
    expect(rho(277.13)).toBeGreaterThan(rho(279.15));
  });
});
