import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OutOfRangeError } from '$lib/solver/errors';
import {
  GLYCOL_FIT,
  glycolFreezingPoint,
  glycolProperties,
  massFractionFromVolume,
  volumeFractionFromMass,
  type GlycolKind,
} from '$lib/solver/fluids/glycol';
import { waterProperties } from '$lib/solver/fluids/water';

const kinds: GlycolKind[] = ['ethylene-glycol', 'propylene-glycol'];

describe('glycolProperties', () => {
  // At the base point the polynomial is its first row: Melinder 2010, printed coefficients.
  it.each([
    ['ethylene-glycol', 0.308462, 31.728, 1034, 3737, 0.472, 0.4705],
    ['propylene-glycol', 0.307031, 32.7083, 1018, 3882, 0.4513, 0.6837],
  ] as const)('%s at the base of the fit', (kind, x, t, rho, cp, k, lnMu) => {
    const got = glycolProperties(kind, x, t + 273.15);
    expect(got.rho).toBeCloseTo(rho, 6);
    expect(got.cp).toBeCloseTo(cp, 6);
    expect(got.k).toBeCloseTo(k, 9);
    expect(Math.log(got.mu * 1e3)).toBeCloseTo(lnMu, 9);
  });

  // Values of the open property library CoolProp 8.0.1-dev from the same polynomials; printed digits of
  // the book's editions may differ by 0.1 % (0.5 % in viscosity, an exponential).
  it.each([
    ['ethylene-glycol', 0.1, 273.15, 1013.617849, 4037.363453, 0.00234489198, 0.5232820033],
    ['ethylene-glycol', 0.3, 263.15, 1047.494605, 3627.071952, 0.006507714714, 0.4361593479],
    ['ethylene-glycol', 0.2, 353.15, 993.7619875, 4004.763662, 0.0005238079183, 0.5653283752],
    ['propylene-glycol', 0.3, 263.15, 1034.276997, 3775.275302, 0.01232701242, 0.4206171874],
    ['propylene-glycol', 0.3, 333.15, 1001.15283, 3962.339279, 0.0009945784857, 0.4765704113],
  ] as const)('%s %d at %d K agrees with another implementation', (kind, x, T, rho, cp, mu, k) => {
    const got = glycolProperties(kind, x, T);
    expect(Math.abs(got.rho / rho - 1)).toBeLessThan(1e-3);
    expect(Math.abs(got.cp / cp - 1)).toBeLessThan(1e-3);
    expect(Math.abs(got.mu / mu - 1)).toBeLessThan(5e-3);
    expect(Math.abs(got.k / k - 1)).toBeLessThan(1e-3);
  });

  // Source: ASHRAE Fundamentals, physical properties of secondary coolants, density of aqueous ethylene
  // glycol, lb/ft³ by volume percent (as reprinted in a heating designer's manual). Another author, another fit:
  // the two differ by up to 1 %; we follow Melinder, who gives every property from one set of data.
  it.each([
    [40, 10, 63.61],
    [40, 30, 65.66],
    [40, 50, 67.47],
    [100, 30, 64.86],
    [100, 50, 66.55],
    [150, 50, 65.53],
    [200, 10, 61.06],
    [200, 50, 64.27],
  ])(
    'ethylene glycol density at %d °F and %d vol %% is near the handbook',
    (F, percent, printed) => {
      const kind = 'ethylene-glycol';
      const x = massFractionFromVolume({ kind, volumeFraction: percent / 100 });
      const { rho } = glycolProperties(kind, x, (F - 32) / 1.8 + 273.15);
      expect(Math.abs(rho / (printed * 16.018463) - 1)).toBeLessThan(0.01);
    },
  );

  it.each(kinds)('%s with no glycol in it stays near water', (kind) => {
    const most = { rho: 0.002, cp: 0.002, mu: 0.02, k: 0.01 }; // as the doc text claims
    for (let T = 273.2; T <= 373; T += 5) {
      const mix = glycolProperties(kind, 0, T);
      const water = waterProperties(T);
      for (const name of ['rho', 'cp', 'mu', 'k'] as const) {
        expect(Math.abs(mix[name] / water[name] - 1), `${name} at ${T}`).toBeLessThan(most[name]);
      }
    }
  });

  it.each(kinds)('%s: more glycol or less heat makes it thicker', (kind) => {
    const fraction = fc.double({ min: 0, max: 0.59, noNaN: true });
    const share = fc.double({ min: 0, max: 0.98, noNaN: true });
    fc.assert(
      fc.property(fraction, share, (x, s) => {
        const low = Math.max(glycolFreezingPoint(kind, x), glycolFreezingPoint(kind, x + 0.01));
        const T = low + s * (372 - low);
        const { mu } = glycolProperties(kind, x, T);
        expect(glycolProperties(kind, x + 0.01, T).mu).toBeGreaterThan(mu);
        expect(glycolProperties(kind, x, T + 1).mu).toBeLessThan(mu);
      }),
    );
  });

  it.each(kinds)('%s refuses what is outside the fit', (kind) => {
    expect(() => glycolProperties(kind, 0.61, 300)).toThrow(OutOfRangeError);
    expect(() => glycolProperties(kind, -0.01, 300)).toThrow(OutOfRangeError);
    expect(() => glycolProperties(kind, 0.3, 373.16)).toThrow(OutOfRangeError);
    expect(() => glycolProperties(kind, 0.3, 250)).toThrow(OutOfRangeError); // frozen
    expect(() => glycolProperties(kind, NaN, 300)).toThrow(OutOfRangeError);
    expect(() => glycolProperties(kind, 0.3, NaN)).toThrow(OutOfRangeError);
  });
});

describe('glycolFreezingPoint', () => {
  it.each(kinds)('%s: pure water freezes at 0 °C and more glycol later', (kind) => {
    expect(Math.abs(glycolFreezingPoint(kind, 0) - 273.15)).toBeLessThan(0.1);
    for (let percent = 1; percent <= 60; percent++) {
      const before = glycolFreezingPoint(kind, (percent - 1) / 100);
      expect(glycolFreezingPoint(kind, percent / 100)).toBeLessThan(before);
    }
  });

  it('puts 50 vol % of pure ethylene glycol near -40 °F', () => {
    // Trade figure for pure glycol, independent of this code: -40 °F is -40 °C.
    const x = massFractionFromVolume({ kind: 'ethylene-glycol', volumeFraction: 0.5 });
    expect(Math.abs(glycolFreezingPoint('ethylene-glycol', x) - 233.15)).toBeLessThan(1);
  });

  it.each(kinds)('%s: the fit answers the same as the guarded function', (kind) => {
    expect(GLYCOL_FIT[kind].freezingPoint(0.4)).toBe(glycolFreezingPoint(kind, 0.4));
  });
});

describe('volume and mass fraction', () => {
  // Worked by hand: 1113 · 0.5 / (1113 · 0.5 + 998.207 · 0.5) = 0.527187.
  it('turns 50 vol % ethylene glycol into 52.7 mass %', () => {
    const x = massFractionFromVolume({ kind: 'ethylene-glycol', volumeFraction: 0.5 });
    expect(x).toBeCloseTo(0.527187, 6);
  });

  it('are inverses of each other', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...kinds),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (kind, volumeFraction) => {
          const massFraction = massFractionFromVolume({ kind, volumeFraction });
          expect(volumeFractionFromMass({ kind, massFraction })).toBeCloseTo(volumeFraction, 12);
        },
      ),
    );
  });

  it('refuse shares that are none', () => {
    for (const v of [-0.1, 1.1, NaN]) {
      const kind = 'ethylene-glycol';
      expect(() => massFractionFromVolume({ kind, volumeFraction: v })).toThrow(OutOfRangeError);
      expect(() => volumeFractionFromMass({ kind, massFraction: v })).toThrow(OutOfRangeError);
    }
  });
});
