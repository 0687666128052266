import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OutOfRangeError } from '$lib/solver/errors';
import {
  SATURATION_PRESSURE_RANGE,
  SATURATION_TEMPERATURE_RANGE,
  saturationPressureSupercooled,
  saturationPressureWater,
  saturationTemperatureWater,
} from '$lib/solver/fluids/saturation';
import { printedTo } from './printed';

// Source: IAPWS R7-97(2012), Table 35; MPa.
describe('saturation pressure of water', () => {
  it.each([
    [300, '0.353658941e-2'],
    [500, '0.263889776e1'],
    [600, '0.123443146e2'],
  ])('at %d K agrees with every digit printed', (T, printed) => {
    const { value, within } = printedTo(printed);
    expect(Math.abs(saturationPressureWater(T) / 1e6 - value)).toBeLessThanOrEqual(within);
  });

  it('refuses what is off the line', () => {
    for (const T of [273.14, 647.1, NaN]) {
      expect(() => saturationPressureWater(T)).toThrow(OutOfRangeError);
    }
  });
});

// Source: IAPWS R7-97(2012), Table 36; K.
describe('saturation temperature of water', () => {
  it.each([
    [0.1e6, '0.372755919e3'],
    [1e6, '0.453035632e3'],
    [10e6, '0.584149488e3'],
  ])('at %d Pa agrees with every digit printed', (p, printed) => {
    const { value, within } = printedTo(printed);
    expect(Math.abs(saturationTemperatureWater(p) - value)).toBeLessThanOrEqual(within);
  });

  it('is the inverse of the pressure', () => {
    fc.assert(
      fc.property(fc.double({ min: 273.1501, max: 640, noNaN: true }), (T) => {
        expect(Math.abs(saturationTemperatureWater(saturationPressureWater(T)) - T)).toBeLessThan(
          1e-8,
        );
      }),
    );
  });

  it('states one line by temperature and by pressure', () => {
    const [low, high] = SATURATION_TEMPERATURE_RANGE;
    expect(saturationPressureWater(low)).toBeCloseTo(SATURATION_PRESSURE_RANGE[0], 3);
    expect(saturationPressureWater(high) / SATURATION_PRESSURE_RANGE[1]).toBeCloseTo(1, 6);
  });

  it('refuses what is off the line', () => {
    for (const p of [611, 22.1e6, 0, -1, NaN]) {
      expect(() => saturationTemperatureWater(p)).toThrow(OutOfRangeError);
    }
  });
});

// Source: Murphy & Koop 2005, appendix C, test values for liquid (from memory); Pa.
describe('vapour pressure of supercooled water', () => {
  it.each([
    [210, '1.2335'],
    [240, '37.667'],
    [273.15, '611.213'],
  ])('at %d K agrees with every digit printed', (T, printed) => {
    const { value, within } = printedTo(printed);
    expect(Math.abs(saturationPressureSupercooled(T) - value)).toBeLessThanOrEqual(within);
  });

  it('meets the warm side at 0 °C', () => {
    const ratio = saturationPressureSupercooled(273.15) / saturationPressureWater(273.15);
    expect(Math.abs(ratio - 1)).toBeLessThan(1e-4);
  });

  it('refuses what is outside', () => {
    for (const T of [199, 274, NaN]) {
      expect(() => saturationPressureSupercooled(T)).toThrow(OutOfRangeError);
    }
  });
});
