import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coreModel } from '$lib/solver/cores/conductance';
import { OutOfRangeError } from '$lib/solver/errors';
import { coolantProperties } from '$lib/solver/fluids/coolant';
import { chargeCore, frontCore } from './fixture';

const relative = (got: number, expected: number) => Math.abs(got / expected - 1);
const glycol = { kind: 'ethylene-glycol', massFraction: 0.5 } as const;
const water = { kind: 'water', massFraction: 0 } as const;
const model = coreModel(chargeCore);
const { airMassFlow, liquidFlow, liquidInlet } = chargeCore.rating;
const rated = { airMassFlow, liquidFlow, liquid: coolantProperties(glycol, liquidInlet) };
const share = fc.double({ min: 0.01, max: 5, noNaN: true });

describe('conductance', () => {
  it('at the rating is the rated one', () => {
    expect(relative(model.at(rated).UA, model.ratedUA)).toBeLessThan(1e-12);
  });

  it('follows each exponent alone', () => {
    const air = model.at({ ...rated, airMassFlow: 2 * airMassFlow });
    expect(relative(air.hA_air, model.at(rated).hA_air * 2 ** 0.6)).toBeLessThan(1e-12);
    expect(air.hA_liquid).toBe(model.at(rated).hA_liquid);
    const liquid = model.at({ ...rated, liquidFlow: 2 * liquidFlow });
    expect(relative(liquid.hA_liquid, model.at(rated).hA_liquid * 2 ** 0.5)).toBeLessThan(1e-12);
    expect(liquid.hA_air).toBe(model.at(rated).hA_air);
  });

  it('50/50 by volume has 45 % of the liquid film of water, turbulent, at 120 °F', () => {
    // Published with the trade's worked figures, from the property group of Dittus-Boelter, two digits.
    const T = 273.15 + (120 - 32) / 1.8;
    const turbulent = coreModel({ ...frontCore, liquidExponent: 0.8 });
    const film = (coolant: typeof water | { kind: 'ethylene-glycol'; massFraction: number }) =>
      turbulent.at({ ...rated, liquid: coolantProperties(coolant, T) }).hA_liquid;
    const ratio = film({ kind: 'ethylene-glycol', massFraction: 0.527 }) / film(water);
    expect(Math.abs(ratio - 0.45)).toBeLessThan(0.005);
  });

  it('rises with either flow', () => {
    fc.assert(
      fc.property(share, share, share, share, (a1, a2, l1, l2) => {
        const at = (a: number, l: number) =>
          model.at({ ...rated, airMassFlow: a * airMassFlow, liquidFlow: l * liquidFlow }).UA;
        expect(at(Math.max(a1, a2), l1)).toBeGreaterThanOrEqual(at(Math.min(a1, a2), l1));
        expect(at(a1, Math.max(l1, l2))).toBeGreaterThanOrEqual(at(a1, Math.min(l1, l2)));
        expect(at(a1, l1)).toBeLessThan(
          Math.min(
            model.at({ ...rated, airMassFlow: a1 * airMassFlow }).hA_air,
            model.at({ ...rated, liquidFlow: l1 * liquidFlow }).hA_liquid,
          ),
        );
      }),
    );
  });

  it('is zero where a side stands still, whatever the exponent', () => {
    for (const exponent of [0, 0.5]) {
      const core = coreModel({ ...chargeCore, airExponent: exponent, liquidExponent: exponent });
      expect(core.at({ ...rated, airMassFlow: 0 }).UA).toBe(0);
      expect(core.at({ ...rated, liquidFlow: 0 }).UA).toBe(0);
      expect(core.at({ ...rated, airMassFlow: 0, liquidFlow: 0 }).UA).toBe(0);
    }
  });

  it('fouling takes its share of UA and leaves the clean sides alone', () => {
    const foul = coreModel({ ...chargeCore, cleanliness: 0.5 }).at(rated);
    expect(relative(foul.UA, model.ratedUA / 2)).toBeLessThan(1e-12);
    expect(foul.hA_air).toBe(model.at(rated).hA_air);
  });

  it('refuses a flow that runs backwards or is no number', () => {
    for (const flow of [-1e-9, NaN, Infinity]) {
      expect(() => model.at({ ...rated, airMassFlow: flow })).toThrow(OutOfRangeError);
      expect(() => model.at({ ...rated, liquidFlow: flow })).toThrow(OutOfRangeError);
    }
  });
});

describe('notes far from the rating', () => {
  const codes = (a: number, l: number) =>
    model.notesAt(a * airMassFlow, l * liquidFlow).map((note) => [note.code, note.quantity]);

  it('none within 0.4 to 2.5 times, one per side beyond', () => {
    expect(codes(1, 1)).toEqual([]);
    expect(codes(0.41, 2.49)).toEqual([]);
    expect(codes(0.39, 1)).toEqual([['core-far-from-rating', 'core.airMassFlow']]);
    expect(codes(1, 2.51)).toEqual([['core-far-from-rating', 'core.liquidFlow']]);
    expect(codes(3, 0.1)).toHaveLength(2);
  });
});
