import { describe, expect, it } from 'vitest';
import { coreModel } from '$lib/solver/cores/conductance';
import { coreState } from '$lib/solver/cores/coreState';
import { effectivenessFormula, ratedConductance } from '$lib/solver/cores/effectivenessFormulas';
import { crossflowOfPart, crossflowOfRates } from '$lib/solver/cores/crossflowFormulas';
import * as lines from '$lib/solver/cores/formulas';
import { coolantProperties } from '$lib/solver/fluids/coolant';
import { chargeCore, frontCore } from './fixture';

const relative = (got: number, expected: number) => Math.abs(got / expected - 1);
const SAME = 1e-10; // the same few operations in another order

// Each core far enough from its rating that every exponent and property ratio counts.
describe.each([
  ['charge cooler', chargeCore, 'into-liquid', 395, 0.3, 325, 8e-4],
  ['front exchanger', { ...frontCore, cleanliness: 0.8 }, 'out-of-liquid', 308, 1.1, 340, 3e-4],
] as const)(
  '%s: the lines in a row lead to its state',
  (_, core, positive, airIn, m, liquidIn, V) => {
    const model = coreModel(core);
    const { rating } = core;
    const liquid = coolantProperties({ kind: 'ethylene-glycol', massFraction: 0.4 }, liquidIn);
    const atRating = coolantProperties(rating.coolant, rating.liquidInlet);
    const state = coreState(model, {
      airMassFlow: m,
      airIn,
      liquidFlow: V,
      liquidIn,
      liquid,
      positive,
    });
    const hot = (a: number, b: number) => ({ T_hot: Math.max(a, b), T_cold: Math.min(a, b) });

    it('rating', () => {
      const { rated } = model;
      const C_min = Math.min(rated.C_air, rated.C_liquid);
      const between = hot(rating.airInlet, rating.liquidInlet);
      const eps = lines.effectivenessFromHeat.value({ Q: rating.heat, C_min, ...between });
      expect(relative(eps, rated.effectiveness)).toBeLessThan(SAME);
      const C_max = Math.max(rated.C_air, rated.C_liquid);
      const UA_r = ratedConductance('crossflow-both-unmixed').value({ eps, C_min, C_max });
      expect(relative(UA_r, model.ratedUA)).toBeLessThan(SAME);
    });

    it('conductance at these flows', () => {
      const hA_a = lines.hAAir.value({
        UA_r: model.ratedUA,
        s_a: core.airShare,
        m,
        m_r: rating.airMassFlow,
        n: core.airExponent,
      });
      expect(relative(hA_a, state.hA_air)).toBeLessThan(SAME);
      const x_Re = lines.reynoldsRatio.value({
        rho: liquid.rho,
        V,
        mu: liquid.mu,
        rho_r: atRating.rho,
        V_r: rating.liquidFlow,
        mu_r: atRating.mu,
      });
      const hA_l = lines.hALiquid.value({
        UA_r: model.ratedUA,
        s_a: core.airShare,
        x_Re,
        n: core.liquidExponent,
        k: liquid.k,
        k_r: atRating.k,
        c_p: liquid.cp,
        mu: liquid.mu,
        c_pr: atRating.cp,
        mu_r: atRating.mu,
      });
      expect(relative(hA_l, state.hA_liquid)).toBeLessThan(SAME);
      const UA = lines.overallConductance.value({ c: core.cleanliness, hA_a, hA_l });
      expect(relative(UA, state.UA)).toBeLessThan(SAME);
    });

    it('heat and outlets', () => {
      const C_l = lines.liquidCapacityRate.value({ rho: liquid.rho, V, c_p: liquid.cp });
      expect(relative(C_l, state.C_liquid)).toBeLessThan(SAME);
      const C_min = Math.min(state.C_air, C_l);
      const C_max = Math.max(state.C_air, C_l);
      const NTU = lines.transferUnits.value({ UA: state.UA, C_min });
      const Cr = lines.capacityRatio.value({ C_min, C_max });
      const eps = effectivenessFormula('crossflow-both-unmixed', { NTU, Cr }).value({ NTU, Cr });
      expect(relative(eps, state.effectiveness)).toBeLessThan(SAME);
      const smaller = state.C_air <= C_l ? 'air' : 'liquid';
      const rates = { UA: state.UA, C_a: state.C_air, C_l };
      expect(crossflowOfRates(smaller).value(rates)).toBeCloseTo(eps, 12);
      // A part of a core with its share of both streams and of the surface does as the whole.
      const part = { UA: 0.3 * state.UA, C_a: 0.3 * state.C_air, C_l, x: 0.3 };
      expect(crossflowOfPart(smaller).value(part)).toBeCloseTo(eps, 12);
      const between = hot(airIn, liquidIn);
      const Q = lines.exchangerHeat.value({ eps, C_min, ...between });
      expect(relative(Q, state.heat)).toBeLessThan(SAME);
      const airIsHot = airIn > liquidIn;
      const [T_in, C, out] = airIsHot
        ? [airIn, state.C_air, state.airOut]
        : [liquidIn, state.C_liquid, state.liquidOut];
      expect(relative(lines.streamOutlet.value({ T_in, Q, C }), out)).toBeLessThan(SAME);
      const back = lines.effectivenessFromTemperatures.value({
        C,
        C_min,
        dT: T_in - out,
        ...between,
      });
      expect(relative(back, eps)).toBeLessThan(1e-9);
      if (positive === 'out-of-liquid') {
        const front = lines.frontHeat.value({ eps, C_min, T_l: liquidIn, T_a: airIn });
        expect(relative(front, state.heat)).toBeLessThan(SAME);
      }
    });
  },
);
