import { describe, expect, it } from 'vitest';
import { npshAvailable, suctionMargin } from '../../../src/lib/solver/suction/npsh';
import { InvalidInputError, OutOfRangeError } from '../../../src/lib/solver/errors';
import { hosePressureDrop } from '../../../src/lib/solver/hydraulics/hose';
import { coolantProperties, coolantVapourPressure } from '../../../src/lib/solver/fluids/coolant';

const side = {
  p_ambient: 101325,
  p_tank_gauge: 0,
  p_vapour: 2339,
  rho: 998.2,
  z: 0.3,
  h_suction: 0.5,
};

// Source: definition of NPSH (ISO 9906:2012), worked with g = 9.80665 m/s²; printed to ten digits.
describe('suction head available', () => {
  it.each([
    [side, 9.911964442],
    [{ ...side, p_vapour: 47415, rho: 971.8, z: 0.2, h_suction: 1 }, 4.856812208],
    [
      { ...side, p_ambient: 83500, p_vapour: 70000, rho: 965, z: 0.1, h_suction: 1.5 },
      0.02654599743,
    ],
    [{ ...side, p_tank_gauge: 90000, p_vapour: 101418, rho: 958.4, h_suction: 2 }, 7.865904169],
    [
      {
        p_ambient: 95000,
        p_tank_gauge: -5000,
        p_vapour: 20000,
        rho: 1040,
        z: -0.2,
        h_suction: 0.8,
      },
      5.86347451,
    ],
  ])('%o', (x, metres) => expect(npshAvailable(x)).toBeCloseTo(metres, 8));

  it('may be negative: the liquid boils before the pump', () =>
    expect(npshAvailable({ ...side, p_vapour: 150000 })).toBeLessThan(0));
  it('refuses a reservoir at or below no pressure', () =>
    expect(() => npshAvailable({ ...side, p_tank_gauge: -101325 })).toThrow(InvalidInputError));
  it('refuses NaN and a density that is none', () => {
    expect(() => npshAvailable({ ...side, z: NaN })).toThrow(OutOfRangeError);
    expect(() => npshAvailable({ ...side, rho: 1 })).toThrow(OutOfRangeError);
  });
  it('margin', () => expect(suctionMargin({ available: 5, required: 1.8 })).toBeCloseTo(3.2, 12));
});

// Source: an independent computation in Python for a trade handbook's question "is it cavitating?":
// 50 % by volume ethylene glycol (52.7 % by mass), 8 US gal/min, 3 ft of 5/8 in hose, K 2.0, level
// +0.5 ft. Tolerance: the last digit printed, 0.1 ft.
describe('a pump on hot 50/50, at sea level, on a hill, under a cap', () => {
  const foot = 0.3048;
  const psi = 6894.757293;
  const coolant = { kind: 'ethylene-glycol', massFraction: 0.527 } as const;
  const available = (fahrenheit: number, p_ambient: number, p_tank_gauge: number, bore: number) => {
    const T = (fahrenheit - 32) / 1.8 + 273.15;
    const liquid = coolantProperties(coolant, T);
    const hose = {
      bore: bore * 0.0254,
      length: 3 * foot,
      roughness: 1.5e-6,
      bends: 0,
      bendK: 0,
      otherK: 2,
      fittingBore: 0,
    };
    const { pressureDrop } = hosePressureDrop(hose, 8 * 6.30901964e-5, liquid);
    const h_suction = pressureDrop / (liquid.rho * 9.80665);
    const p_vapour = coolantVapourPressure(coolant, T);
    const x = { p_ambient, p_tank_gauge, p_vapour, rho: liquid.rho, z: 0.5 * foot, h_suction };
    return { npsh: npshAvailable(x) / foot, loss: pressureDrop / psi };
  };
  const sea = 101325;
  // ISO 2533 at 5,000 ft (1524 m): 101325 (1 − 0.0065 h/288.15)^5.25588.
  const hill = 101325 * (1 - (0.0065 * 1524) / 288.15) ** 5.25588;
  it.each([
    [120, [26.2, 20.8, 41.6, 61.3]],
    [180, [17.2, 11.6, 32.9, 53.1]],
    [200, [10.5, 4.9, 26.4, 46.7]],
    [215, [3.7, -2.0, 19.6, 40.1]],
  ])('%d °F', (fahrenheit, feet) => {
    const cases = [
      [sea, 0],
      [hill, 0],
      [sea, 7 * psi],
      [sea, 16 * psi],
    ] as const;
    cases.forEach(([p, gauge], i) => {
      const { npsh } = available(fahrenheit, p, gauge, 5 / 8);
      expect(Math.abs(npsh - feet[i]!)).toBeLessThan(0.1);
    });
  });
  it('half-inch suction at 200 °F loses 4.06 psi instead of 1.55', () => {
    expect(Math.abs(available(200, sea, 0, 1 / 2).loss / 4.06 - 1)).toBeLessThan(0.02);
    expect(Math.abs(available(200, sea, 0, 5 / 8).loss / 1.55 - 1)).toBeLessThan(0.02);
  });
});
