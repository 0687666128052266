import { describe, expect, it } from 'vitest';
import { OutOfRangeError } from '$lib/solver/errors';
import { airMassFlowFromPower, airMassFlowSpeedDensity } from '$lib/solver/charge/demand';

const HP = 745.6998715822702; // 550 ft lbf/s, by definition
const LB = 0.45359237; // by definition
const relative = (got: number, expected: number) => Math.abs(got / expected - 1);

describe('air from power', () => {
  // Arithmetic by definition: power times fuel use times ratio, 600 hp x 0.55 lb/(hp h) x 11.8 = 3894 lb/h = 64.9 lb/min.
  it('600 hp breathe 64.9 lb/min', () => {
    const flow = airMassFlowFromPower({
      power: 600 * HP,
      fuelUse: (0.55 * LB) / (HP * 3600),
      airFuelRatio: 11.8,
    });
    expect(relative(flow, (64.9 * LB) / 60)).toBeLessThan(1e-12);
  });

  it('refuses a unit mistake', () => {
    const at = { power: 4e5, fuelUse: 9e-8, airFuelRatio: 12 };
    expect(() => airMassFlowFromPower({ ...at, fuelUse: 0.3 })).toThrow(OutOfRangeError);
    expect(() => airMassFlowFromPower({ ...at, power: NaN })).toThrow(OutOfRangeError);
  });
});

describe('air by speed and density', () => {
  // Source: Heywood sec. 2.10, computed apart from this project, ten digits.
  it.each([
    [0.0062, 6000, 0.95, 170000, 323.15, 0.5397249677],
    [0.002, 2500, 0.85, 60000, 313.15, 0.02364008137],
  ])(
    '%d m^3 at %d rpm',
    (displacement, rpm, volumetricEfficiency, p_manifold_abs, T_manifold, m) => {
      const flow = airMassFlowSpeedDensity({
        displacement,
        rotation: rpm / 60,
        volumetricEfficiency,
        p_manifold_abs,
        T_manifold,
        R: 287.05,
      });
      expect(relative(flow, m)).toBeLessThan(1e-9);
    },
  );

  it('refuses a unit mistake', () => {
    const at = {
      displacement: 0.0062,
      rotation: 100,
      volumetricEfficiency: 0.95,
      p_manifold_abs: 1.7e5,
      T_manifold: 323,
      R: 287.05,
    };
    expect(() => airMassFlowSpeedDensity({ ...at, displacement: 6.2 })).toThrow(OutOfRangeError);
    expect(() => airMassFlowSpeedDensity({ ...at, rotation: 6000 })).toThrow(OutOfRangeError);
    expect(() => airMassFlowSpeedDensity({ ...at, T_manifold: 50 })).toThrow(OutOfRangeError);
  });
});
