import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  ALTITUDE_RANGE,
  altitudeAtPressure,
  geopotentialAltitude,
  pressureAtAltitude,
  temperatureAtAltitude,
} from '$lib/solver/air/atmosphere';
import { OutOfRangeError } from '$lib/solver/errors';

const altitude = fc.double({ min: ALTITUDE_RANGE[0], max: ALTITUDE_RANGE[1], noNaN: true });

// Source: ASHRAE Handbook Fundamentals 2017, ch. 1, Table 1 (kPa to three decimals, °C to one).
describe('standard atmosphere against the printed table', () => {
  it.each([
    [-500, 107478],
    [0, 101325],
    [500, 95461],
    [1000, 89875],
    [4000, 61640],
    [10000, 26436],
  ])('pressure at %d m', (h, p) => {
    expect(Math.abs(pressureAtAltitude(h) - p)).toBeLessThanOrEqual(1);
  });

  it.each([
    [0, 15],
    [1000, 8.5],
    [4000, -11],
    [10000, -50],
  ])('temperature at %d m', (h, t) => {
    expect(temperatureAtAltitude(h) - 273.15).toBeCloseTo(t, 9);
  });
});

// Source: ISO 2533:1975, table (from memory): the tropopause at 11 km has 22632 Pa and 216.65 K.
describe('the top of the layer', () => {
  it('agrees with the standard', () => {
    expect(Math.abs(pressureAtAltitude(11000) - 22632)).toBeLessThanOrEqual(0.5);
    expect(temperatureAtAltitude(11000)).toBeCloseTo(216.65, 9);
  });
});

describe('relations between altitudes', () => {
  it('altitude and pressure are inverses', () => {
    fc.assert(
      fc.property(altitude, (h) => {
        expect(Math.abs(altitudeAtPressure(pressureAtAltitude(h)) - h)).toBeLessThan(1e-6);
      }),
    );
  });

  it('pressure carries the weight of the air above: dp/dh = -rho g', () => {
    fc.assert(
      fc.property(fc.double({ min: -490, max: 10990, noNaN: true }), (h) => {
        const slope = (pressureAtAltitude(h + 1) - pressureAtAltitude(h - 1)) / 2;
        const rho = pressureAtAltitude(h) / (287.05287 * temperatureAtAltitude(h));
        expect(Math.abs(slope / (-rho * 9.80665) - 1)).toBeLessThan(1e-6);
      }),
    );
  });

  // Source: U.S. Standard Atmosphere 1976, geometric 1000 m is geopotential 1000 m to the metre, 10000 m is 9984 m.
  it('geopotential altitude lags behind geometric', () => {
    expect(Math.round(geopotentialAltitude(1000))).toBe(1000);
    expect(Math.round(geopotentialAltitude(10000))).toBe(9984);
  });

  it('end where they are stated', () => {
    for (const h of [-501, 11001, NaN]) {
      expect(() => pressureAtAltitude(h)).toThrow(OutOfRangeError);
      expect(() => temperatureAtAltitude(h)).toThrow(OutOfRangeError);
      expect(() => geopotentialAltitude(h === 11001 ? 12000 : h)).toThrow(OutOfRangeError);
    }
    for (const p of [20e3, 110e3, NaN]) {
      expect(() => altitudeAtPressure(p)).toThrow(OutOfRangeError);
    }
  });
});
