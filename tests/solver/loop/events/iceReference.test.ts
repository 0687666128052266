import { describe, expect, it } from 'vitest';
import { InvalidInputError } from '$lib/solver/errors';
import {
  simulateIceConstantPower,
  simulateIceWithAmbient,
} from '$lib/solver/loop/events/iceReference';

const properties = { cp_ice: 2090, cp_water: 4190, latent_heat: 333550 };

describe('ice under heat', () => {
  // Closed forms: m c dT / P to the ice point, m L / P to melt.
  it('starts and ends melting to a millisecond', () => {
    const m = { ice_mass: 3, water_mass: 0, T0: 253.15, power: 2500, C_other: 400 };
    const run = simulateIceConstantPower({ ...m, ...properties, t: [1000] });
    const start = ((3 * 2090 + 400) * 20) / 2500;
    expect(Math.abs(run.t_melt_start! - start)).toBeLessThan(1e-3);
    expect(Math.abs(run.t_melt_end! - start - (3 * 333550) / 2500)).toBeLessThan(1e-3);
  });

  // Closed form: m L / (P + UA (T_a - T_0)).
  it('with surroundings: melts at their steady heat', () => {
    const m = { ice_mass: 2, water_mass: 6, power: 1000, UA: 30, T_ambient: 303.15 };
    const { t_melt_end } = simulateIceWithAmbient({ ...m, ...properties, t: [2000] });
    expect(Math.abs(t_melt_end! - (2 * 333550) / (1000 + 30 * 30))).toBeLessThan(1e-3);
  });

  it('says so where it does not melt in the time asked, or there was none', () => {
    const m = { ice_mass: 3, water_mass: 1, T0: 273.15, power: 100, C_other: 0, ...properties };
    expect(simulateIceConstantPower({ ...m, t: [10] }).t_melt_end).toBeNull();
    const none = { ...m, ice_mass: 0, T0: 290, t: [10] };
    expect(simulateIceConstantPower(none)).toMatchObject({ t_melt_start: null, t_melt_end: null });
  });

  it('refuses water that is not at the ice point with ice in it', () => {
    const m = {
      ice_mass: 3,
      water_mass: 1,
      T0: 280,
      power: 100,
      C_other: 0,
      ...properties,
      t: [1],
    };
    expect(() => simulateIceConstantPower(m)).toThrow(InvalidInputError);
  });
});
