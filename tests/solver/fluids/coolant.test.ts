import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InvalidInputError, OutOfRangeError } from '$lib/solver/errors';
import {
  COOLANT_TMAX,
  coolantBoilingPoint,
  coolantFreezingPoint,
  coolantNotes,
  coolantProperties,
  coolantRange,
  coolantVapourPressure,
  waterMoleFraction,
} from '$lib/solver/fluids/coolant';
import { glycolProperties, massFractionFromVolume } from '$lib/solver/fluids/glycol';
import { waterProperties } from '$lib/solver/fluids/water';
import type { Coolant } from '$lib/solver/loop/types';

const water: Coolant = { kind: 'water', massFraction: 0 };
const EG30: Coolant = { kind: 'ethylene-glycol', massFraction: 0.3 };
const PG40: Coolant = { kind: 'propylene-glycol', massFraction: 0.4 };
const anyGlycol = fc.record({
  kind: fc.constantFrom('ethylene-glycol' as const, 'propylene-glycol' as const),
  massFraction: fc.double({ min: 0, max: 0.6, noNaN: true }),
});

describe('coolantProperties', () => {
  it('hands on to water and to the glycol fit', () => {
    expect(coolantProperties(water, 350)).toEqual(waterProperties(350));
    expect(coolantProperties(water, 350, 2e5)).toEqual(waterProperties(350, 2e5));
    expect(coolantProperties(EG30, 350)).toEqual(glycolProperties('ethylene-glycol', 0.3, 350));
  });

  it('answers over the whole of its range with sound numbers, and not beyond', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.constant(water), anyGlycol),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (coolant, s) => {
          const [low, high] = coolantRange(coolant);
          const p = coolantProperties(coolant, Math.min(high, low + s * (high - low)));
          // Wide of everything from hot water to cold syrup: catches a wrong unit or sign.
          expect(p.rho).toBeGreaterThan(900);
          expect(p.rho).toBeLessThan(1150);
          expect(p.cp).toBeGreaterThan(2200);
          expect(p.cp).toBeLessThan(4300);
          expect(p.mu).toBeGreaterThan(1e-4);
          expect(p.mu).toBeLessThan(10);
          expect(p.k).toBeGreaterThan(0.25);
          expect(p.k).toBeLessThan(0.7);
          expect(() => coolantProperties(coolant, low - 0.01)).toThrow(OutOfRangeError);
          expect(() => coolantProperties(coolant, high + 0.01)).toThrow(OutOfRangeError);
        },
      ),
    );
    expect(() => coolantProperties(EG30, NaN)).toThrow(OutOfRangeError);
  });

  it('refuses water that is said to hold glycol', () => {
    expect(() => coolantProperties({ kind: 'water', massFraction: 0.2 }, 300)).toThrow(
      InvalidInputError,
    );
  });

  // Source: as in glycol.test.ts, ASHRAE density by volume, lb/ft³ at 240 °F: beyond our fit, inside theirs.
  it.each([
    [10, 60.05],
    [30, 61.7],
    [50, 63.1],
  ])('beyond the fit, density at %d vol %% is still near the handbook', (percent, printed) => {
    const kind = 'ethylene-glycol';
    const massFraction = massFractionFromVolume({ kind, volumeFraction: percent / 100 });
    const { rho } = coolantProperties({ kind, massFraction }, (240 - 32) / 1.8 + 273.15);
    expect(Math.abs(rho / (printed * 16.018463) - 1)).toBeLessThan(0.01);
  });

  it('beyond the fit, strays from water no more than the note says', () => {
    for (const kind of ['ethylene-glycol', 'propylene-glycol'] as const) {
      const mix = coolantProperties({ kind, massFraction: 0 }, COOLANT_TMAX);
      const w = waterProperties(COOLANT_TMAX);
      for (const name of ['rho', 'cp', 'k'] as const) {
        expect(Math.abs(mix[name] / w[name] - 1)).toBeLessThan(0.01);
      }
      expect(mix.mu / w.mu).toBeGreaterThan(0.89);
      expect(mix.mu / w.mu).toBeLessThan(0.93);
    }
  });
});

describe('vapour pressure and boiling point', () => {
  // Worked by hand: 0.7/18.015268 over 0.7/18.015268 + 0.3/62.068 = 0.889369.
  it('finds the mole fraction of water', () => {
    expect(waterMoleFraction(EG30)).toBeCloseTo(0.889369, 6);
    expect(waterMoleFraction(water)).toBe(1);
  });

  // Source: IAPWS-95 boiling point at one atmosphere, 99.974 °C.
  it('boils water at 99.974 °C under one atmosphere', () => {
    expect(coolantBoilingPoint(water, 101325)).toBeCloseTo(373.124, 2);
  });

  // Common trade figure, no source: 50/50 boils at 223 to 226 °F in the open; Raoult is good to about 5 %.
  it('boils 50/50 within 3 °F of the trade figure', () => {
    const massFraction = massFractionFromVolume({ kind: 'ethylene-glycol', volumeFraction: 0.5 });
    const T = coolantBoilingPoint({ kind: 'ethylene-glycol', massFraction }, 101325);
    expect(Math.abs((T - 273.15) * 1.8 + 32 - 226)).toBeLessThan(3);
  });

  it('are inverses of each other', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.constant(water), anyGlycol),
        fc.double({ min: 274, max: 430, noNaN: true }),
        (coolant, T) => {
          const p = coolantVapourPressure(coolant, T);
          expect(Math.abs(coolantBoilingPoint(coolant, p) - T)).toBeLessThan(1e-7);
        },
      ),
    );
  });

  it('goes on below 0 °C as long as the mixture is liquid, without a step', () => {
    const warm = coolantVapourPressure(EG30, 273.16);
    const cold = coolantVapourPressure(EG30, 273.14);
    expect(cold).toBeLessThan(warm);
    expect(warm / cold - 1).toBeLessThan(2e-3);
    expect(() => coolantVapourPressure(EG30, 250)).toThrow(OutOfRangeError);
    expect(() => coolantVapourPressure(water, 273.14)).toThrow(OutOfRangeError);
  });
});

describe('freezing point and notes', () => {
  it('reports the freezing point as the low end of the range', () => {
    for (const coolant of [water, EG30, PG40]) {
      expect(coolantRange(coolant)).toEqual([coolantFreezingPoint(coolant), COOLANT_TMAX]);
    }
    expect(coolantFreezingPoint(water)).toBe(273.15);
  });

  it('says so beyond 100 °C for glycol only', () => {
    expect(coolantNotes(EG30, 373.15)).toEqual([]);
    expect(coolantNotes(water, 380)).toEqual([]);
    const [note] = coolantNotes(PG40, 380);
    expect(note).toMatchObject({ code: 'property-beyond-fit', quantity: 'T', value: 380 });
    expect(note?.range?.[1]).toBe(373.15);
  });
});
