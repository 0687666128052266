/** Formulas of a plan: worked by hand, and their dimensions by units. */
import { describe, expect, it } from 'vitest';
import { math } from '$lib/math';
import * as plan from '$lib/solver/plan/formulas';
import type { Unit } from 'mathjs';

const withUnits = (expr: string, amounts: Record<string, Unit | number>) =>
  math.parse(expr).evaluate(amounts) as Unit;

describe('what a change costs', () => {
  it('is the sum of pieces times price', () => {
    const formula = plan.rowsCost(2, true);
    expect(formula.value({ n_1: 2, p_1: 95, n_2: 26, p_2: 3.2 })).toBeCloseTo(273.2, 10);
    expect(plan.rowsMass(1, true).value({ n_1: 4, m_1: 0.5 })).toBe(2);
    expect(plan.costTogether(3).value({ C_1: 1, C_2: 2, C_3: 4 })).toBe(7);
  });
  it('per degree is money over a difference of temperatures', () => {
    const each = withUnits(plan.costPerDegreeFormula.expr, {
      C: math.unit(90, 'dollar'),
      dT: math.unit(9, 'degR'),
    });
    // 9 degrees Fahrenheit are 5 K, by definition.
    expect(each.toNumber('dollar/degR')).toBeCloseTo(10, 12);
    expect(each.toNumber('dollar/K')).toBeCloseTo(18, 12);
    expect(() => each.toNumber('dollar')).toThrow();
  });
  it('weighs what is added less what comes off', () => {
    // 20 kg of parts, 3 kg of liquid, and two old parts of 4 kg.
    const m_off = plan.rowsMassOff(1, true).value({ n_1: 2, o_1: 4 });
    expect(plan.massAdded.value({ m_p: 20, m_l: 3, m_off })).toBe(15);
    expect(plan.massOffTogether(2).value({ o_1: 8, o_2: 1 })).toBe(9);
  });
  it('is unsure by half its range', () => {
    expect(plan.gainHalfWidth.value({ dT_high: 30, dT_low: 22 })).toBe(4);
    expect(plan.priceHalfWidth.value({ c_high: 3, c_low: 2 })).toBe(0.5);
  });
  it('adds no money to a mass', () => {
    expect(() =>
      withUnits('a + b', { a: math.unit(1, 'dollar'), b: math.unit(1, 'kg') }),
    ).toThrow();
  });
  it('counts lengths that are not whole as they are', () => {
    expect(plan.rowsCost(1, false).value({ n_1: 12.5, p_1: 2 })).toBe(25);
    expect(plan.rowsCost(1, false).terms.n_1!.quantity).toBe('ratio');
    expect(plan.rowsCost(1, true).terms.n_1!.quantity).toBe('count');
  });
});
