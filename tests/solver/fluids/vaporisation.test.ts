import { describe, expect, it } from 'vitest';
import { OutOfRangeError } from '$lib/solver/errors';
import { heatOfVaporisation, saturatedDensities } from '$lib/solver/fluids/vaporisation';

// Source: IAPWS SR1-86(1992), computer-program verification table (from memory): densities in kg/m³,
// enthalpies of vapour and liquid in kJ/kg at 373.1243 K, 2675.7 and 419.05.
describe('on the saturation line of water', () => {
  it('densities agree with the printed digits', () => {
    expect(saturatedDensities(273.16).vapour).toBeCloseTo(0.00485426, 8);
    expect(saturatedDensities(273.16).liquid).toBeCloseTo(999.789, 3);
    expect(saturatedDensities(373.1243).liquid).toBeCloseTo(958.365, 3);
    expect(saturatedDensities(373.1243).vapour).toBeCloseTo(0.597586, 6);
  });

  it('heat of vaporisation at the normal boiling point', () => {
    // The table's own last digits: 0.05 for the vapour, 0.005 for the liquid; pressure by another equation.
    expect(Math.abs(heatOfVaporisation(373.1243) / 1e3 - (2675.7 - 419.05))).toBeLessThan(0.055);
  });

  // Source: steam tables (IAPWS-IF97 industrial tables, from memory), kJ/kg.
  it.each([
    [293.15, 2453.5],
    [353.15, 2308.0],
    [393.15, 2202.1],
    [413.15, 2144.2],
  ])('at %d K within 0.05 %%', (T, kJ) => {
    expect(Math.abs(heatOfVaporisation(T) / (1e3 * kJ) - 1)).toBeLessThan(5e-4);
  });

  it('refuses what it does not know', () => {
    expect(() => heatOfVaporisation(270)).toThrow(OutOfRangeError);
    expect(() => heatOfVaporisation(NaN)).toThrow(OutOfRangeError);
  });
});
