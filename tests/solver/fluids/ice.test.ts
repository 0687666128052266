import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OutOfRangeError } from '$lib/solver/errors';
import { iceEnthalpy, mixIceAndWater } from '$lib/solver/fluids/ice';

const properties = { cp_ice: 2090, cp_water: 4190, latent_heat: 333550 };

describe('ice put into water', () => {
  // Worked by hand: 15 kg from 30 °C give 1 885 500 J; 5 kg from -10 °C ask 104 500 + 1 667 750 J; the
  // 113 250 J left warm 20 kg by 1.3514 K.
  it('melts it all and says how warm it ends', () => {
    const mix = { ice_mass: 5, T_ice: 263.15, water_mass: 15, T_water: 303.15, ...properties };
    const { T_final, ice_left } = mixIceAndWater(mix);
    expect(T_final).toBeCloseTo(273.15 + 113250 / (20 * 4190), 9);
    expect(ice_left).toBe(0);
  });

  // By hand: 10 kg from 10 °C give 419 000 J and melt 1.25618 kg of 5 kg at the ice point.
  it('leaves ice where the water is not warm enough', () => {
    const mix = { ice_mass: 5, T_ice: 273.15, water_mass: 10, T_water: 283.15, ...properties };
    expect(mixIceAndWater(mix).T_final).toBe(273.15);
    expect(mixIceAndWater(mix).ice_left).toBeCloseTo(5 - 419000 / 333550, 9);
  });

  it('freezes the water where the ice is cold enough for it', () => {
    const mix = { ice_mass: 50, T_ice: 233.15, water_mass: 1, T_water: 273.15, ...properties };
    const { T_final, ice_left } = mixIceAndWater(mix);
    expect(ice_left).toBe(51);
    // By hand: 50 * 2090 * 40 J of cold less 333 550 J, over 51 * 2090 J/K.
    expect(T_final).toBeCloseTo(273.15 - (50 * 2090 * 40 - 333550) / (51 * 2090), 9);
  });

  it('keeps its heat whatever the masses and temperatures', () => {
    const range = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        range(0, 50),
        range(230, 273.15),
        range(0.1, 50),
        range(273.15, 370),
        (a, b, c, d) => {
          const mix = { ice_mass: a, T_ice: b, water_mass: c, T_water: d, ...properties };
          const { T_final, ice_left } = mixIceAndWater(mix);
          const after = iceEnthalpy({
            ...mix,
            ice_mass: ice_left,
            water_mass: a + c - ice_left,
            T_ice: Math.min(T_final, 273.15),
            T_water: Math.max(T_final, 273.15),
          });
          expect(Math.abs(after - iceEnthalpy(mix))).toBeLessThan(1e-9 * 333550 * (a + c));
        },
      ),
      { numRuns: 300, seed: 5 },
    );
  });

  it('refuses ice above the ice point and water below it', () => {
    const mix = { ice_mass: 1, T_ice: 274, water_mass: 1, T_water: 280, ...properties };
    expect(() => mixIceAndWater(mix)).toThrow(OutOfRangeError);
    expect(() => mixIceAndWater({ ...mix, T_ice: 270, T_water: 270 })).toThrow(OutOfRangeError);
    expect(() => mixIceAndWater({ ...mix, T_ice: NaN })).toThrow(OutOfRangeError);
  });
});
