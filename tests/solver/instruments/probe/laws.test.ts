import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { InvalidInputError, NoRootError, OutOfRangeError } from '$lib/solver/errors';
import { betaResistance, betaTemperature } from '$lib/solver/instruments/probe/beta';
import { probeNotes, probeOf, sensitivity } from '$lib/solver/instruments/probe/probe';
import {
  steinhartHartFit,
  steinhartHartResistance,
  steinhartHartTemperature,
} from '$lib/solver/instruments/probe/steinhartHart';
import { FACTORY } from './factory';

const celsius = (t: number) => t + 273.15;

describe('a factory table of a coolant probe', () => {
  const at = (...temperatures: number[]) =>
    FACTORY.filter(({ T }) => temperatures.some((t) => Math.abs(celsius(t) - T) < 1e-9));

  // Computed apart from this project, from the same points: 6 printed digits.
  it('gives the coefficients of Steinhart-Hart from 0, 40 and 100 °C', () => {
    const { A, B, C } = steinhartHartFit(at(0, 40, 100));
    expect(Math.abs(A - 1.33515e-3)).toBeLessThanOrEqual(0.5e-8);
    expect(Math.abs(B - 2.56168e-4)).toBeLessThanOrEqual(0.5e-9);
    expect(Math.abs(C - 1.49631e-7)).toBeLessThanOrEqual(0.5e-12);
  });
  it('and those meet the points left out, 20, 60 and 80 °C, within 0.01 K', () => {
    const law = steinhartHartFit(at(0, 40, 100));
    for (const { T, R } of at(20, 60, 80)) {
      expect(Math.abs(steinhartHartTemperature(law, R) - T)).toBeLessThan(0.01);
    }
  });
  it('by ice and boil alone (Beta 3594) it strays up to 0.95 K mid-range', () => {
    const [ice, boil] = at(0, 100);
    const beta = Math.log(ice!.R / boil!.R) / (1 / ice!.T - 1 / boil!.T);
    expect(Math.round(beta)).toBe(3594);
    const R25 = ice!.R * Math.exp(beta * (1 / 298.15 - 1 / ice!.T));
    const off = FACTORY.map(({ T, R }) => betaTemperature({ R25, beta }, R) - T);
    expect(Math.min(...off)).toBeCloseTo(-0.95, 2);
    expect(Math.max(...off)).toBeLessThan(0.01);
  });
  it('as a table it meets its points, and every point left out within 0.1 K', () => {
    const whole = probeOf({ kind: 'table', points: FACTORY });
    for (const { T, R } of FACTORY) {
      expect(Math.abs(whole.temperature(R) - T)).toBeLessThan(1e-9);
      expect(Math.abs(whole.resistance(T) / R - 1)).toBeLessThan(1e-9);
    }
    for (const out of FACTORY.slice(1, -1)) {
      const rest = probeOf({ kind: 'table', points: FACTORY.filter((p) => p !== out) });
      expect(Math.abs(rest.temperature(out.R) - out.T)).toBeLessThan(0.1);
    }
  });
});

describe('each law', () => {
  const PROBES = {
    beta: probeOf({ kind: 'beta', R25: 2200, beta: 3600 }),
    table: probeOf({ kind: 'table', points: FACTORY }),
    'three points': probeOf({
      kind: 'three-points',
      points: [FACTORY[0]!, FACTORY[2]!, FACTORY[5]!],
    }),
    coefficients: probeOf({ kind: 'steinhart-hart', A: 1.438e-3, B: 2.373e-4, C: 6.79e-8 }),
  } as const;
  it.each(Object.entries(PROBES))(
    '%s: resistance and temperature are inverse, and fall',
    (_, p) => {
      fc.assert(
        fc.property(fc.double({ min: 245, max: 400, noNaN: true }), (T) => {
          const R = p.resistance(T);
          expect(Math.abs(p.temperature(R) - T)).toBeLessThan(1e-7);
          expect(p.resistance(T + 1)).toBeLessThan(R);
          expect(sensitivity(p, T)).toBeGreaterThan(0);
        }),
      );
    },
  );
  it('of Beta loses Beta over T squared per kelvin', () => {
    expect(sensitivity(PROBES.beta, 310) / (3600 / 310 ** 2)).toBeCloseTo(1, 6);
  });
  it('without its cubic term Steinhart-Hart is the Beta law', () => {
    const beta = 3600;
    const R25 = 2200;
    const law = { A: 1 / 298.15 - Math.log(R25) / beta, B: 1 / beta, C: 0 };
    for (const T of [250, 300, 380]) {
      expect(steinhartHartResistance(law, T) / betaResistance({ R25, beta }, T)).toBeCloseTo(1, 10);
    }
  });
  it('says where it is continued beyond its points, and ends', () => {
    const { table } = PROBES;
    expect(probeNotes(table, celsius(50))).toEqual([]);
    expect(probeNotes(table, celsius(101))[0]?.code).toBe('beyond-points');
    expect(table.temperature(table.resistance(celsius(129)))).toBeCloseTo(celsius(129), 7);
    expect(() => table.resistance(celsius(131))).toThrow(OutOfRangeError);
    expect(() => table.temperature(1)).toThrow(OutOfRangeError);
  });
});

describe('what is no thermistor is refused', () => {
  const point = (t: number, R: number) => ({ T: celsius(t), R });
  it.each([
    ['resistance that rises', [point(0, 1000), point(40, 1200), point(100, 90)]],
    ['two points at one temperature', [point(0, 5000), point(0, 4000), point(100, 90)]],
    ['a point so wrong that the curve turns', [point(0, 100000), point(40, 101), point(100, 100)]],
  ])('%s', (_, points) => {
    expect(() => probeOf({ kind: 'three-points', points })).toThrow(InvalidInputError);
  });
  it('numbers outside any probe', () => {
    expect(() => betaResistance({ R25: 0, beta: 3500 }, 300)).toThrow(OutOfRangeError);
    expect(() => betaResistance({ R25: 2200, beta: NaN }, 300)).toThrow(OutOfRangeError);
    expect(() => betaTemperature({ R25: 2200, beta: 3600 }, 0)).toThrow(OutOfRangeError);
    expect(() => probeOf({ kind: 'table', points: [point(0, 5000)] })).toThrow(InvalidInputError);
    expect(() => steinhartHartResistance({ A: 1e-3, B: -2e-4, C: 1e-7 }, 300)).toThrow(NoRootError);
  });
});
