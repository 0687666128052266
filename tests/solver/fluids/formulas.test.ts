import fc from 'fast-check';
import type { Unit } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { math } from '$lib/math';
import { airDensity } from '$lib/solver/air/air';
import { ALTITUDE_RANGE, pressureAtAltitude } from '$lib/solver/air/atmosphere';
import {
  coolantProperties,
  coolantRange,
  coolantVapourPressure,
  waterMoleFraction,
} from '$lib/solver/fluids/coolant';
import * as formulas from '$lib/solver/fluids/formulas';
import { MOLAR_MASS } from '$lib/solver/fluids/glycol';
import { saturationPressureWater } from '$lib/solver/fluids/water';
import type { Formula } from '$lib/solver/formula';
import { SI_UNIT } from '$lib/solver/quantity';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const kind = fc.constantFrom('ethylene-glycol' as const, 'propylene-glycol' as const);
/** Both sides evaluate the same few operations. */
const same = (got: number, expected: number) =>
  expect(Math.abs(got / expected - 1)).toBeLessThan(1e-12);

describe('the lines compute what the solver computes', () => {
  it('water mole fraction', () => {
    fc.assert(
      fc.property(kind, between(0, 0.6), (kind, massFraction) => {
        const m = MOLAR_MASS[kind] / MOLAR_MASS.water;
        same(
          formulas.waterMoleFraction.value({ w: massFraction, m }),
          waterMoleFraction({ kind, massFraction }),
        );
      }),
    );
  });

  it('prints the ratios of molar mass that it names', () => {
    const { name } = formulas.waterMoleFraction.terms.m;
    for (const kind of ['ethylene-glycol', 'propylene-glycol'] as const) {
      expect(name).toContain((MOLAR_MASS[kind] / MOLAR_MASS.water).toFixed(3));
    }
  });

  it('vapour pressure', () => {
    fc.assert(
      fc.property(kind, between(0, 0.6), between(274, 400), (kind, massFraction, T) => {
        const coolant = { kind, massFraction };
        const x = { x_w: waterMoleFraction(coolant), p_sat: saturationPressureWater(T) };
        same(formulas.vapourPressure.value(x), coolantVapourPressure(coolant, T));
      }),
    );
  });

  it('pressure at altitude', () => {
    fc.assert(
      fc.property(between(...ALTITUDE_RANGE), (h) => {
        same(formulas.pressureAtAltitude.value({ h }), pressureAtAltitude(h));
      }),
    );
  });

  it('air density', () => {
    fc.assert(
      fc.property(between(200, 700), between(1e3, 1e6), (T, p) => {
        same(formulas.airDensity.value({ p, T }), airDensity({ T, p }));
      }),
    );
  });

  // Source: 4.18 MJ/(m³ K) for water at room temperature, any textbook.
  it('heat capacity by volume', () => {
    const { rho, cp } = coolantProperties({ kind: 'water', massFraction: 0 }, 293.15);
    expect(formulas.volumetricHeatCapacity.value({ rho, c_p: cp }) / 1e6).toBeCloseTo(4.18, 2);
    fc.assert(
      fc.property(kind, between(0, 0.6), between(0, 1), (kind, massFraction, s) => {
        const coolant = { kind, massFraction };
        const [low, high] = coolantRange(coolant);
        const p = coolantProperties(coolant, Math.min(high, low + s * (high - low)));
        same(formulas.volumetricHeatCapacity.value({ rho: p.rho, c_p: p.cp }), p.rho * p.cp);
      }),
    );
  });
});

describe('the lines are sound', () => {
  const all = Object.values(formulas) as unknown as Formula[];

  it.each(all)('$id has the dimension it says', (formula) => {
    const scope: Record<string, unknown> = {};
    for (const [key, term] of Object.entries(formula.terms)) {
      const unit = SI_UNIT[term.quantity];
      const value = term.fixed ?? 0.5;
      scope[key] = unit ? math.unit(value, unit) : value;
    }
    const unit = SI_UNIT[formula.gives.quantity];
    const result: unknown = math.parse(formula.expr).compile().evaluate(scope);
    if (unit === '') expect(typeof result).toBe('number');
    else expect(math.unit(1, unit).equalBase(result as Unit)).toBe(true);
  });

  it.each(all)('$id typesets every symbol', (formula) => {
    for (const term of Object.values(formula.terms)) expect(formula.tex()).toContain(term.tex);
  });
});
