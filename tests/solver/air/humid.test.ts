import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OutOfRangeError } from '$lib/solver/errors';
import {
  VAPOUR_PRESSURE_RANGE,
  compressedDewPoint,
  dewPoint,
  dewPointAtVapourPressure,
  humidityRatio,
  moistAirDensity,
  saturationPressureAir,
  vapourPressure,
  vapourPressureFromRatio,
  wetBulb,
} from '$lib/solver/air/humid';
import { airDensity } from '$lib/solver/air/air';

const K = 273.15;
const anyAir = fc.record({
  T: fc.double({ min: 250, max: 330, noNaN: true }),
  relativeHumidity: fc.double({ min: 0.01, max: 1, noNaN: true }),
  p: fc.double({ min: 60e3, max: 110e3, noNaN: true }),
});

// Source: ASHRAE Handbook Fundamentals 2017, ch. 1, Table 3, Pa; its own formula is granted 300 ppm there,
// and the text of the chapter grants 0.1 % between the sources of the steam table.
describe('saturation over ice and over water', () => {
  it.each([
    [-20, 103.24],
    [-5, 401.74],
    [5, 872.6],
    [25, 3169.7],
    [50, 12351.3],
  ])('at %d °C', (t, p) => {
    expect(Math.abs(saturationPressureAir(t + K) / p - 1)).toBeLessThan(1e-3);
  });

  // Source: IAPWS R14-08(2011), check value: sublimation pressure at 230 K is 8.94735 Pa.
  it('agrees with the check value of the release for ice', () => {
    expect(Math.abs(saturationPressureAir(230) - 8.94735)).toBeLessThanOrEqual(0.5e-5);
  });

  it('meets at the triple point', () => {
    const ratio = saturationPressureAir(273.16 - 1e-9) / saturationPressureAir(273.16);
    expect(Math.abs(ratio - 1)).toBeLessThan(1e-6);
  });
});

describe('humidity ratio', () => {
  // Source: ASHRAE Handbook Fundamentals 2017, ch. 1, Table 2: saturated air at 101325 Pa. The table has the
  // enhancement factor of real air, which our formula leaves out: about 0.5 %.
  it.each([
    [-5, 0.0024863],
    [5, 0.005425],
    [25, 0.020173],
  ])('of saturated air at %d °C is within 0.5 % of the table', (t, W) => {
    const got = humidityRatio({ T: t + K, relativeHumidity: 1, p: 101325 });
    expect(Math.abs(got / W - 1)).toBeLessThan(0.005);
  });

  it('goes back to the vapour pressure', () => {
    fc.assert(
      fc.property(anyAir, (air) => {
        const back = vapourPressureFromRatio(humidityRatio(air), air.p);
        expect(Math.abs(back / vapourPressure(air) - 1)).toBeLessThan(1e-12);
      }),
    );
  });
});

describe('density', () => {
  // Worked apart: 30 °C, W = 0.02, 95461 Pa gives 1.08412 kg/m³ (test values of PsychroLib, computed in a spreadsheet).
  it('agrees with a worked case', () => {
    const p_w = vapourPressureFromRatio(0.02, 95461);
    const T = 30 + K;
    const relativeHumidity = p_w / saturationPressureAir(T);
    const rho = moistAirDensity({ T, relativeHumidity, p: 95461 });
    expect(Math.abs(rho / 1.08411986 - 1)).toBeLessThan(3e-4);
  });

  it('is that of dry air without moisture, and less with it', () => {
    const dry = moistAirDensity({ T: 300, relativeHumidity: 0, p: 1e5 });
    expect(dry).toBeCloseTo(airDensity({ T: 300, p: 1e5 }), 12);
    expect(moistAirDensity({ T: 300, relativeHumidity: 0.8, p: 1e5 })).toBeLessThan(dry);
  });
});

describe('dew point', () => {
  it('is where the vapour pressure is the saturation pressure, frost included', () => {
    fc.assert(
      fc.property(anyAir, (air) => {
        const T = dewPoint(air);
        expect(Math.abs(saturationPressureAir(T) / vapourPressure(air) - 1)).toBeLessThan(1e-6);
        expect(T).toBeLessThanOrEqual(air.T + 1e-6);
      }),
    );
  });

  it('covers the range it states', () => {
    expect(dewPointAtVapourPressure(VAPOUR_PRESSURE_RANGE[0])).toBeGreaterThan(149.9);
    expect(dewPointAtVapourPressure(VAPOUR_PRESSURE_RANGE[1])).toBeLessThan(373.15);
    for (const p of [0, -1, 102e3, NaN]) {
      expect(() => dewPointAtVapourPressure(p)).toThrow(OutOfRangeError);
    }
  });

  it('refuses dry air rather than inventing a number', () => {
    expect(() => dewPoint({ T: 300, relativeHumidity: 0, p: 1e5 })).toThrow(OutOfRangeError);
  });

  // Source: PsychroLib 2.5.0 for the ambient humidity ratio, then its dew point at 200 kPa; agreement of
  // Hyland-Wexler with IAPWS is 0.1 % of pressure, 0.02 K.
  it('of compressed air agrees with another implementation', () => {
    const T = compressedDewPoint({
      T: 298.15,
      relativeHumidity: 0.6,
      p: 101325,
      p_charge: 200e3,
    });
    expect(Math.abs(T - 301.0185)).toBeLessThan(0.05);
  });

  it('of air that is not compressed is the ambient one, and rises with pressure', () => {
    fc.assert(
      fc.property(anyAir, (air) => {
        const plain = compressedDewPoint({ ...air, p_charge: air.p });
        expect(Math.abs(plain - dewPoint(air))).toBeLessThan(1e-8);
        expect(compressedDewPoint({ ...air, p_charge: 2 * air.p })).toBeGreaterThan(plain);
      }),
    );
  });

  it('refuses what is outside', () => {
    const air = { T: 300, relativeHumidity: 0.5, p: 1e5 };
    expect(() => compressedDewPoint({ ...air, p_charge: 2e6 })).toThrow(OutOfRangeError);
    expect(() => compressedDewPoint({ ...air, p_charge: NaN })).toThrow(OutOfRangeError);
    expect(() => dewPoint({ ...air, relativeHumidity: 1.01 })).toThrow(OutOfRangeError);
    expect(() => vapourPressure({ ...air, T: 340 })).toThrow(OutOfRangeError);
  });
});

describe('wet bulb', () => {
  // Source: PsychroLib tests at 95461 Pa, computed apart in a spreadsheet from ASHRAE's two equations.
  it.each([
    [30, 0.0192281274241096, 25],
    [-1, 0.00120399819933844, -5],
  ])('at %d °C and W = %d is %d °C', (t, W, t_wet) => {
    const p = 95461;
    const T = t + K;
    const relativeHumidity = vapourPressureFromRatio(W, p) / saturationPressureAir(T);
    expect(Math.abs(wetBulb({ T, relativeHumidity, p }) - K - t_wet)).toBeLessThan(0.02);
  });

  it('lies between dew point and dry bulb', () => {
    fc.assert(
      fc.property(anyAir, (air) => {
        const T = wetBulb(air);
        expect(T).toBeLessThanOrEqual(air.T + 1e-9);
        expect(T).toBeGreaterThanOrEqual(dewPoint(air) - 1e-6);
      }),
    );
  });

  it('of saturated air is its temperature', () => {
    expect(wetBulb({ T: 295, relativeHumidity: 1, p: 1e5 })).toBeCloseTo(295, 9);
  });
});
