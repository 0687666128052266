/** Suction head against pump handbooks, values as they print them. */
import { describe, expect, it } from 'vitest';
import { coolantProperties } from '$lib/solver/fluids/coolant';
import { saturationPressure } from '$lib/solver/fluids/saturation';
import { npshAvailable } from '$lib/solver/suction/npsh';

const fahrenheit = (t: number) => (t + 459.67) / 1.8;
const FOOT = 0.3048;
const PSI = 6894.757293168;
const G = 9.80665;
const WATER = { kind: 'water', massFraction: 0 } as const;

describe('worked examples of suction head available', () => {
  const feet = ({
    air,
    level,
    vapour,
    lost,
  }: Record<'air' | 'level' | 'vapour' | 'lost', number>) => {
    const rho = 998;
    return (
      npshAvailable({
        p_ambient: air * FOOT * rho * G,
        p_tank_gauge: 0,
        p_vapour: vapour * FOOT * rho * G,
        rho,
        z: level * FOOT,
        h_suction: lost * FOOT,
      }) / FOOT
    );
  };
  // Spellman, Handbook of Water and Wastewater Treatment Plant Operations, examples 10.10 and 10.11
  // (read as reprinted): water at 60 °F, 34 ft of air, 0.6 ft of vapour, 0.4 and 2 ft lost.
  it('tank 15 ft above the pump: 46 ft', () =>
    expect(feet({ air: 34, level: 15, vapour: 0.6, lost: 2.4 })).toBeCloseTo(46, 9));
  it('reservoir 20 ft below the pump: 11 ft', () =>
    expect(feet({ air: 34, level: -20, vapour: 0.6, lost: 2.4 })).toBeCloseTo(11, 9));
  // Bachus & Custodio 2003, tank being drained at sea level, 70 °F (read as reprinted).
  it('33.9 ft of air, 6 ft of water, 0.839 ft of vapour, 4 ft lost: 35.061 ft', () =>
    expect(feet({ air: 33.9, level: 6, vapour: 0.839, lost: 4 })).toBeCloseTo(35.061, 9));
  // Mackay, The Practical Pumping Handbook, 2004, p. 82: water at 140 °F, specific gravity 0.985.
  it('pressure over its own density: 14.7 psi are 34.47 ft of water at 140 °F, its vapour 6.78 ft', () => {
    const T = fahrenheit(140);
    const { rho } = coolantProperties(WATER, T);
    // As printed with 2.31 / 0.985; both factors are rounded to three digits.
    expect(Math.abs((14.7 * PSI) / (rho * G) / FOOT / 34.474 - 1)).toBeLessThan(2e-3);
    expect(Math.abs(saturationPressure(T) / (rho * G) / FOOT / 6.775 - 1)).toBeLessThan(3e-3);
  });
});
