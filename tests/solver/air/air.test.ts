import { describe, expect, it } from 'vitest';
import { OutOfRangeError } from '$lib/solver/errors';
import {
  AIR_DENSITY_RANGE,
  AIR_RANGE,
  airConductivity,
  airCp,
  airDensity,
  airViscosity,
} from '$lib/solver/air/air';

/** Source: Bergman et al., Fundamentals of Heat and Mass Transfer, Table A.4, air at one atmosphere (from memory). */
const TABLE_A4 = [
  { T: 250, cp: 1006, mu: 159.6e-7, k: 22.3e-3 },
  { T: 300, cp: 1007, mu: 184.6e-7, k: 26.3e-3 },
  { T: 350, cp: 1009, mu: 208.2e-7, k: 30.0e-3 },
  { T: 400, cp: 1014, mu: 230.1e-7, k: 33.8e-3 },
  { T: 450, cp: 1021, mu: 250.7e-7, k: 37.3e-3 },
  { T: 500, cp: 1030, mu: 270.1e-7, k: 40.7e-3 },
  { T: 600, cp: 1051, mu: 305.8e-7, k: 46.9e-3 },
  { T: 700, cp: 1075, mu: 338.8e-7, k: 52.4e-3 },
];

describe('dry air against a handbook table', () => {
  // The table is of real air at one atmosphere; the ideal gas has about 0.2 % less cp near 300 K.
  it.each(TABLE_A4)('cp at $T K within 0.3 %', ({ T, cp }) => {
    expect(Math.abs(airCp(T) / cp - 1)).toBeLessThan(0.003);
  });
  it.each(TABLE_A4)('viscosity at $T K within 2 %', ({ T, mu }) => {
    expect(Math.abs(airViscosity(T) / mu - 1)).toBeLessThan(0.02);
  });
  it.each(TABLE_A4)('conductivity at $T K within 1 %', ({ T, k }) => {
    expect(Math.abs(airConductivity(T) / k - 1)).toBeLessThan(0.01);
  });
});

describe('dry air against the standard atmosphere at sea level', () => {
  // Source: ISO 2533:1975, table for h = 0 (from memory): 1.225 kg/m³, 1.7894e-5 Pa s, 2.5343e-2 W/(m K).
  it('agrees with every digit printed', () => {
    expect(airDensity({ T: 288.15, p: 101325 })).toBeCloseTo(1.225, 5);
    expect(Math.abs(airViscosity(288.15) - 1.7894e-5)).toBeLessThanOrEqual(0.5e-9);
    expect(Math.abs(airConductivity(288.15) - 2.5343e-2)).toBeLessThanOrEqual(0.5e-6);
  });

  // Source: NASA/TP-2002-211556 gives cp(298.15 K) of air as 29.102 J/(mol K) (from memory).
  it('cp at 25 °C agrees with the table of its own source', () => {
    expect(Math.abs(airCp(298.15) * 28.9651159e-3 - 29.102)).toBeLessThan(0.001);
  });

  it('has a ratio of specific heats of 1.400 at room temperature', () => {
    // Textbook value for a diatomic gas.
    expect(airCp(300) / (airCp(300) - 287.05)).toBeCloseTo(1.4, 2);
  });
});

describe('ranges of the air laws', () => {
  it('end where they are stated', () => {
    for (const law of [airCp, airViscosity, airConductivity]) {
      for (const T of AIR_RANGE) expect(law(T)).toBeGreaterThan(0);
      for (const T of [AIR_RANGE[0] - 0.1, AIR_RANGE[1] + 0.1, NaN]) {
        expect(() => law(T)).toThrow(OutOfRangeError);
      }
    }
    const { p } = AIR_DENSITY_RANGE;
    for (const bad of [
      { T: 100, p: 1e5 },
      { T: 300, p: p[1] * 1.01 },
      { T: 300, p: 0 },
      { T: NaN, p: 1e5 },
    ]) {
      expect(() => airDensity(bad)).toThrow(OutOfRangeError);
    }
  });
});
