import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  balancedBias,
  degreesPerCount,
  fullScale,
  inputVolts,
  probePower,
  resistanceFromRatio,
} from '$lib/solver/instruments/probe/divider';
import { boilPoint, stationPressure, airPressureOf } from '$lib/solver/instruments/probe/boilPoint';
import { pressureAtAltitude } from '$lib/solver/air/atmosphere';
import { OutOfRangeError } from '$lib/solver/errors';
import { OpenProbeError, ShortedProbeError } from '$lib/solver/instruments/probe/errors';
import { probeOf, sensitivity } from '$lib/solver/instruments/probe/probe';
import { worstCase } from '$lib/solver/instruments/probe/worstCase';
import { FACTORY } from './factory';

const fahrenheit = (f: number) => (f + 459.67) / 1.8;
const steinhart = probeOf({
  kind: 'three-points',
  points: [FACTORY[0]!, FACTORY[2]!, FACTORY[5]!],
});

/** Asked by people, answered apart from this project (Python); printed digits are the tolerance. */
describe('Which bias resistor, and what volts in ice and boil? (5 V, the factory table)', () => {
  const divider = { supply: 5, bias: 1000, input: Infinity, bits: 10 };
  it('the geometric mean of 5975 and 175.7 ohm is 1025: 1.0 kΩ', () => {
    expect(Math.round(balancedBias(5975, 175.7))).toBe(1025);
  });
  it.each([
    ['ice', 273.15, 4.283],
    ['120 °F', fahrenheit(120), 2.28],
    ['boil', 373.15, 0.747],
  ])('%s', (_, T, volts) => {
    expect(Math.abs(inputVolts(divider, steinhart.resistance(T)) - volts)).toBeLessThan(0.0005);
  });
  it.each([
    [1000, 0.52],
    [4700, 1.89],
    [10000, 3.87],
  ])('one of 1023 counts at boil behind %d ohm', (R_b, fahrenheitPerCount) => {
    const alpha = sensitivity(steinhart, 373.15);
    const step = degreesPerCount({ R: 175.7, R_b, alpha, n: fullScale(10) });
    expect(Math.abs(step * 1.8 - fahrenheitPerCount)).toBeLessThan(0.005);
  });
  it('boil at 5,280 ft is 202.3 °F; taken for 212 °F the reader shows 122.7 for 120, 187.4 for 180', () => {
    const boil = boilPoint(pressureAtAltitude(5280 * 0.3048));
    expect(Math.abs(boil * 1.8 - 459.67 - 202.3)).toBeLessThan(0.05);
    // A table of two points, Beta between them, the boiling one labelled as at sea level.
    const atBoil = steinhart.resistance(boil);
    const beta = Math.log(5975 / atBoil) / (1 / 273.15 - 1 / 373.15);
    const R25 = 5975 * Math.exp(beta * (1 / 298.15 - 1 / 273.15));
    const labelled = probeOf({ kind: 'beta', R25, beta });
    for (const [truth, shown] of [
      [120, 122.7],
      [180, 187.4],
    ] as const) {
      const T = labelled.temperature(steinhart.resistance(fahrenheit(truth)));
      expect(Math.abs(T * 1.8 - 459.67 - shown), `${truth} °F`).toBeLessThan(0.05);
    }
  });
});

describe('divider', () => {
  it('resistance and share of the supply are inverse', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 1e6, noNaN: true }),
        fc.double({ min: 10, max: 1e6, noNaN: true }),
        (R, R_b) => {
          const back = resistanceFromRatio(R / (R + R_b), R_b);
          // 1 - x loses the digits that a nearly open divider has used up.
          expect(Math.abs(back / R - 1)).toBeLessThan(1e-15 * (1 + R / R_b) * 10);
        },
      ),
    );
  });
  it('a count is smallest, and the probe hottest, where probe and bias are equal', () => {
    const count = (R_b: number) => degreesPerCount({ R: 800, R_b, alpha: 0.03, n: 1023 });
    const heat = (R_b: number) => probePower({ V_s: 5, R: 800, R_b });
    for (const R_b of [100, 400, 790, 810, 3000]) expect(count(R_b)).toBeGreaterThan(count(800));
    // At a given supply the probe takes most where it matches the bias, seen from the probe.
    expect(probePower({ V_s: 5, R: 800, R_b: 800 })).toBeCloseTo(25 / 3200, 12);
    expect(heat(400)).toBeGreaterThan(heat(800));
  });
  it('the input beside the probe lowers the volts', () => {
    const volts = (input: number) => inputVolts({ supply: 5, bias: 1000, input, bits: 10 }, 6000);
    expect(volts(100e3)).toBeCloseTo((5 * 5660.377) / 6660.377, 5);
    expect(volts(Infinity)).toBeGreaterThan(volts(100e3));
  });
  it('an open and a shorted probe are named', () => {
    expect(() => resistanceFromRatio(1, 1000)).toThrow(OpenProbeError);
    expect(() => resistanceFromRatio(1022.6 / 1023, 1000, 1 / 1023)).toThrow(OpenProbeError);
    expect(() => resistanceFromRatio(NaN, 1000)).toThrow(OpenProbeError);
    expect(() => resistanceFromRatio(0, 1000)).toThrow(ShortedProbeError);
    expect(() => resistanceFromRatio(0.4 / 1023, 1000, 1 / 1023)).toThrow(ShortedProbeError);
    expect(resistanceFromRatio(1 / 1023, 1000, 1 / 1023)).toBeCloseTo(1000 / 1022, 9);
  });
});

describe('the air’s pressure', () => {
  it('by a report is the station’s: at the standard report that of the altitude', () => {
    for (const h of [-100, 0, 500, 2500]) {
      expect(stationPressure(101325, h) / pressureAtAltitude(h)).toBeCloseTo(1, 12);
    }
    expect(stationPressure(102000, 0)).toBeCloseTo(102000, 6);
    expect(airPressureOf({ by: 'report', pressure: 101325, altitude: 1000 })).toBeCloseTo(
      89874.6,
      1,
    );
  });
  it('outside what weather does it is refused', () => {
    expect(() => airPressureOf({ by: 'station', pressure: 29.92 })).toThrow(OutOfRangeError);
    expect(() => stationPressure(60000, 100)).toThrow(OutOfRangeError);
  });
});

describe('worst case', () => {
  const probe = probeOf({ kind: 'beta', R25: 2200, beta: 3600 });
  const setup = {
    probe,
    divider: { supply: 5, bias: 1000, input: Infinity, bits: 10 },
    reader: { table: probe, bias: 1000 },
    flaw: {},
  };
  it('without tolerances is the truth', () => {
    const none = { probe: 0, bias: 0, counts: 0, dissipation: Infinity };
    const { low, nominal, high } = worstCase(setup, none, 320);
    for (const T of [low, nominal, high]) expect(T).toBeCloseTo(320, 9);
  });
  it('holds every combination inside', () => {
    const tolerances = { probe: 0.05, bias: 0.01, counts: 1, dissipation: Infinity };
    fc.assert(
      fc.property(
        fc.double({ min: 273, max: 390, noNaN: true }),
        fc.double({ min: -1, max: 1, noNaN: true }),
        fc.double({ min: -1, max: 1, noNaN: true }),
        fc.double({ min: -1, max: 1, noNaN: true }),
        (T, a, b, c) => {
          const { low, high } = worstCase(setup, tolerances, T);
          const R = probe.resistance(T) * (1 + 0.05 * a);
          const x = R / (R + 1000 * (1 + 0.01 * b)) + c / 1023;
          const shown = probe.temperature((1000 * x) / (1 - x));
          expect(shown).toBeGreaterThanOrEqual(low - 1e-9);
          expect(shown).toBeLessThanOrEqual(high + 1e-9);
        },
      ),
    );
  });
  it('a one-per-cent bias is a one-per-cent probe: a third of a kelvin near boil', () => {
    const only = { probe: 0, counts: 0, dissipation: Infinity };
    const { low, high } = worstCase(setup, { ...only, bias: 0.01 }, 373.15);
    const alpha = 3600 / 373.15 ** 2;
    expect((high - low) / 2).toBeCloseTo(0.01 / alpha, 2);
  });
});
