/** ± of heat and UA: formulas against plain functions, a worked case of the trade, and trials by chance. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { heatShare, heatShareCurve, probeWanted } from '$lib/solver/instruments/plan/accuracy';
import { AIR_PLUS_MINUS, offBy, within } from '$lib/solver/instruments/plan/checks';
import * as plan from '$lib/solver/instruments/plan/formulas';
import { boilPoint } from '$lib/solver/instruments/probe/boilPoint';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const F = 1 / 1.8;
const kelvin = (f: number) => (f + 459.67) / 1.8;

/** Normal deviates by Box and Muller from a fixed sequence (Park & Miller 1988). */
function deviates(): () => number {
  let seed = 20261125;
  const next = () => (seed = (seed * 16807) % 2147483647) / 2147483647;
  return () => Math.sqrt(-2 * Math.log(next())) * Math.cos(2 * Math.PI * next());
}

describe('± of the heat', () => {
  // 140 °F in, 126 °F out, as a technician's worked case gives it (computed by others, in whole per cent).
  it.each([
    [1, 0, 10],
    [1, 0.1, 14],
    [3, 0, 30],
  ])('±%d °F a probe, flow ±%d: ±%d %%', (probe, flowShare, percent) => {
    const share = heatShare({ flowShare, u_drop: Math.SQRT2 * probe * F, drop: 14 * F });
    expect(Math.abs(100 * share - percent)).toBeLessThanOrEqual(0.5);
  });

  it('formula and function agree; the probe wanted gives the ± wanted back', () => {
    fc.assert(
      fc.property(between(0, 0.3), between(0.05, 3), between(1, 30), (x_V, u_T, dT) => {
        const u_D = plan.pairPlusMinus.value({ u_T });
        const x_Q = plan.heatShareFormula.value({ x_V, u_D, dT });
        expect(x_Q).toBeCloseTo(heatShare({ flowShare: x_V, u_drop: u_D, drop: dT }), 12);
        const wanted = probeWanted({ wanted: x_Q, flowShare: x_V, drop: dT })!;
        expect(wanted / u_T).toBeCloseTo(1, 6);
        expect(plan.probeWantedFormula.value({ dT, x_w: x_Q, x_V })).toBeCloseTo(wanted, 12);
        const part = plan.probesToBlame.value({ u_D, dT, x_Q });
        expect(part + (x_V / x_Q) ** 2).toBeCloseTo(1, 9);
      }),
    );
    expect(probeWanted({ wanted: 0.1, flowShare: 0.1, drop: 5 })).toBeNull();
  });

  it('refuses a drop of nothing', () => {
    expect(() => heatShare({ flowShare: 0.1, u_drop: 1, drop: 0 })).toThrow(/drop/);
    expect(() => heatShare({ flowShare: 0.1, u_drop: NaN, drop: 5 })).toThrow(/u_drop/);
  });

  it('a curve begins at the flow’s own ± and rises', () => {
    const curve = heatShareCurve(0.08, 6, 3);
    expect(curve[0]![1]).toBeCloseTo(0.08, 12);
    for (let i = 1; i < curve.length; i++) expect(curve[i]![1]).toBeGreaterThan(curve[i - 1]![1]);
  });
});

describe('± of the UA', () => {
  it('first order agrees with trials by chance', () => {
    const [T_in, T_out, T_a] = [kelvin(140), kelvin(126), kelvin(95)];
    const [u_T, u_a, x_V] = [0.4 * F, 0.6 * F, 0.02];
    const th_1 = plan.aboveAir.value({ T: T_in, T_a });
    const th_2 = plan.aboveAir.value({ T: T_out, T_a });
    const N = plan.transferUnitsByAir.value({ th_1, th_2 });
    const dT = plan.expectedDrop.value({ T_in, T_out });
    // A pair that differs by little and errs together by u_T: the case the formula states.
    const u_D = 0.3 * F;
    const u_th = plan.abovePlusMinus.value({ u_T, u_a });
    const said = plan.conductanceShareFormula.value({ x_V, u_D, th_1, th_2, N, u_th, dT });
    const chance = deviates();
    const UA = Array.from({ length: 40_000 }, () => {
      const [level, half] = [u_th * chance(), (u_D * chance()) / 2];
      return (
        (1 + x_V * chance()) * Math.log((T_in + level + half - T_a) / (T_out + level - half - T_a))
      );
    });
    const mean = UA.reduce((s, x) => s + x, 0) / UA.length;
    const spread = Math.sqrt(UA.reduce((s, x) => s + (x - mean) ** 2, 0) / (UA.length - 1)) / N;
    // Standard error of a standard deviation from 40 000 trials is 0.35 %; 2 % leaves the second order its room.
    expect(Math.abs(said / spread - 1)).toBeLessThan(0.02);
    expect(plan.conductanceByAir.value({ C_l: 1362, N })).toBeCloseTo(1362 * N, 9);
  });
});

describe('what a check should read', () => {
  it('boiling water: altitude alone leaves about 1 °F of weather', () => {
    // 20 hPa over the slope of the saturation line, 36 hPa/K at 100 °C (steam tables, from memory).
    const u_b = plan.boilPlusMinus.value({ p_a: 101325, u_p: AIR_PLUS_MINUS.altitude });
    expect(Math.abs(u_b - 2000 / 3600)).toBeLessThan(0.02);
    const ends = [101325 - 2000, 101325 + 2000].map(boilPoint) as [number, number];
    expect(u_b).toBeCloseTo((ends[1] - ends[0]) / 2, 12);
    expect(plan.boilReadingPlusMinus.value({ u_T: 3, u_b: 4 })).toBe(5);
  });
  it('judges a reading by its ±, the edge included', () => {
    const ice = { value: 273.15, plusMinus: 1 };
    expect(within(274.15, ice)).toBe(true);
    expect(within(274.2, ice)).toBe(false);
    expect(within(NaN, ice)).toBe(false);
    expect(offBy(270, ice)).toBeCloseTo(-3.15, 12);
  });
  it('a tip stands a third of the bore deep', () => {
    expect(plan.tipDepth.value({ d: 0.018 })).toBeCloseTo(0.006, 15);
    expect(plan.expectedDrop.value({ T_in: 330, T_out: 320 })).toBe(10);
    expect(plan.heatPlusMinusFormula.value({ x_Q: 0.1, Q_f: 5000 })).toBe(500);
  });
});
