/** Each formula a sheet shows gives what the plain function gives. */
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import * as meter from '$lib/solver/instruments/meter/formulas';
import { kFactor, kOfRun } from '$lib/solver/instruments/meter/kFactor';
import { flowStep, linearAbove, readableRange } from '$lib/solver/instruments/meter/lowFlow';
import { meterLoss, straightLength } from '$lib/solver/instruments/meter/meterInLoop';
import { biasOf, biasShare, combinedBias } from '$lib/solver/instruments/probe/bath';
import { betaResistance } from '$lib/solver/instruments/probe/beta';
import { boilPoint, stationPressure } from '$lib/solver/instruments/probe/boilPoint';
import * as divider from '$lib/solver/instruments/probe/divider';
import * as dividers from '$lib/solver/instruments/probe/dividerFormulas';
import * as probes from '$lib/solver/instruments/probe/formulas';
import { probeOf, sensitivity } from '$lib/solver/instruments/probe/probe';
import { steinhartHartTemperature } from '$lib/solver/instruments/probe/steinhartHart';
import { NETWORK_FORMULAS, WITH_NETWORK } from '$lib/solver/instruments/probe/trim/formulas';
import { networkResistance, type Form } from '$lib/solver/instruments/probe/trim/network';
import { biasWith } from '$lib/solver/instruments/probe/trim/trims';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const ohm = between(10, 1e5);
function same(a: number, b: number, within = 1e-12): void {
  expect(Math.abs(a - b)).toBeLessThanOrEqual(within * Math.max(Math.abs(a), Math.abs(b)));
}
const probe = probeOf({ kind: 'beta', R25: 2200, beta: 3600 });
const setup = {
  probe,
  divider: { supply: 5, bias: 1500, input: Infinity, bits: 10 },
  reader: { table: probe, bias: 1200 },
  flaw: {},
};

describe('formulas of the probe', () => {
  it('air, boil point, laws', () => {
    fc.assert(
      fc.property(
        between(9e4, 1.08e5),
        between(0, 3000),
        between(250, 390),
        ohm,
        (p_r, h, T, R) => {
          const p_a = probes.stationPressureFormula.value({ p_r, h });
          same(p_a, stationPressure(p_r, h));
          same(probes.boilPointFormula.value({ p_a }), boilPoint(p_a));
          same(
            probes.betaResistanceFormula.value({ R_25: 2200, beta: 3600, T }),
            betaResistance({ R25: 2200, beta: 3600 }, T),
          );
          const law = { A: 1.438e-3, B: 2.373e-4, C: 6.79e-8 };
          same(
            probes.steinhartHartFormula.value({ ...law, R: R / 10 + 50 }),
            probes.reciprocalTemperature.value({ T: steinhartHartTemperature(law, R / 10 + 50) }),
          );
          same(probes.tableResistance(probe, 'x').value({ T }), probe.resistance(T));
          same(probes.readerShows(probe).value({ R: probe.resistance(T) }), T);
          same(dividers.sensitivityFormula(probe).value({ T }), sensitivity(probe, T));
        },
      ),
    );
  });
  it('bias from baths', () => {
    fc.assert(
      fc.property(between(265, 290), between(350, 380), between(0.1, 2), (cold, hot, u) => {
        const readings = [
          { T: 273.15, shown: cold, plusMinus: u },
          { T: 372, shown: hot, plusMinus: 0.7 },
        ];
        const each = readings.map((r) => {
          const R = probe.resistance(r.T);
          const R_s = probe.resistance(r.shown);
          const bias = probes.biasInCircuit.value({ R_ba: 1200, R, R_s });
          same(bias, biasOf(setup, r));
          // The other way round it is the same quotient.
          same((probes.assumedBias.value({ R_b: 1500, R, R_s }) * bias) / (1500 * 1200), 1);
          const share = probes.biasShareFormula.value({
            u: r.plusMinus,
            alpha: sensitivity(probe, r.shown),
          });
          same(share, biasShare(setup, r));
          return { bias, share };
        });
        const s = { s_1: each[0]!.share, s_2: each[1]!.share };
        const both = combinedBias(setup, readings);
        const R = { R_1: each[0]!.bias, R_2: each[1]!.bias };
        same(probes.combinedBiasFormula.value({ ...R, ...s }), both.bias, 1e-11);
        same(probes.combinedShareFormula.value(s), both.share);
      }),
    );
  });
  it('divider', () => {
    fc.assert(
      fc.property(ohm, ohm, between(0.01, 0.06), (R, R_b, alpha) => {
        const d = { supply: 5, bias: R_b, input: Infinity, bits: 10 };
        same(dividers.inputVoltsFormula.value({ V_s: 5, R, R_b }), divider.inputVolts(d, R));
        same(
          dividers.degreesPerCountFormula.value({ R, R_b, alpha, n: 1023 }),
          divider.degreesPerCount({ R, R_b, alpha, n: 1023 }),
        );
        const P = dividers.probePowerFormula.value({ V_s: 5, R, R_b });
        same(P, divider.probePower({ V_s: 5, R, R_b }));
        same(
          dividers.selfHeatingFormula.value({ P, delta: 0.003 }),
          divider.selfHeating({ P, delta: 0.003 }),
        );
        same(dividers.sideBySide.value({ R_1: R, R_2: R_b }), divider.parallel(R, R_b));
        same(
          dividers.balancedBiasFormula.value({ R_1: R, R_2: R_b }),
          divider.balancedBias(R, R_b),
        );
        const x = dividers.believedFormula.value({ R, R_ba: 1200, R_b });
        same(x, divider.resistanceFromRatio(divider.dividerRatio(R, R_b), 1200), 1e-9);
      }),
    );
  });
  it('networks and where they go', () => {
    fc.assert(
      fc.property(ohm, ohm, ohm, ohm, (R_1, R_2, R_3, R_f) => {
        for (const form of Object.keys(NETWORK_FORMULAS) as Form[]) {
          const R_n = networkResistance({ form, parts: [R_1, R_2, R_3] });
          same(NETWORK_FORMULAS[form].value({ R_1, R_2, R_3 }), R_n);
          for (const placement of ['across', 'in-series', 'instead'] as const) {
            same(WITH_NETWORK[placement].value({ R_f, R_n }), biasWith(placement, R_f, R_n));
          }
        }
      }),
    );
  });
});

describe('formulas of the flow meter', () => {
  const errors = { volume: 1e-4, time: 0.3, pulses: 2, bucket: 0.01 };
  const run = fc.record({
    volume: between(2e-3, 0.04),
    time: between(5, 100),
    pulses: between(500, 20000),
  });
  it('runs', () => {
    fc.assert(
      fc.property(fc.array(run, { minLength: 2, maxLength: 6 }), (runs) => {
        for (const counting of ['whole-run', 'by-watch'] as const) {
          const k = kFactor(runs, errors, counting);
          const x: Record<string, number> = { K: k.K, w: k.widened };
          k.runs.forEach((r, i) => {
            const { volume: V, time: t, pulses: N } = r.run;
            same(meter.runFlow.value({ V, t }), r.flow);
            same(meter.runK.value({ N, V }), r.K);
            const u = { u_N: 2, u_V: 1e-4, u_t: 0.3 };
            const share = meter.RUN_SHARE[counting].value({ ...u, N, V, t });
            same(share, kOfRun(r.run, errors, counting).share);
            x[`K_${i + 1}`] = r.K;
            x[`s_${i + 1}`] = share;
          });
          const formulas = meter.runsFormulas(runs.length);
          same(formulas.mean.value(x), k.K);
          const chi = formulas.chiSquare.value(x);
          expect(Math.abs(chi - k.chiSquare)).toBeLessThan(1e-9 * (1 + chi));
          same(meter.birgeRatio.value({ chi: k.chiSquare, nu: k.freedom }), k.widened);
          const u_r = formulas.fromRuns.value(x);
          same(u_r, k.fromRuns);
          same(meter.wholePlusMinus.value({ u_r, K: k.K, b: 0.01 }), k.plusMinus);
        }
      }),
    );
  });
  it('limits, loss, straight length', () => {
    fc.assert(
      fc.property(between(1e-5, 1e-3), between(1e4, 1e6), between(0.01, 0.2), (Q, K, x) => {
        same(meter.linearAboveFormula.value({ Q_0: Q, x }), linearAbove(Q, x));
        const [made, input] = [
          { lowest: 3e-5, highest: 5e-4 },
          { lowest: 2, highest: 200 },
        ];
        const range = readableRange(Q, made, input, K);
        const least = { Q_m: made.lowest, f: input.lowest, K };
        same(meter.readableFromSlip.value({ ...least, Q_s: Q }), range.from.flow);
        same(meter.readableFrom.value(least), readableRange(null, made, input, K).from.flow);
        same(meter.readableTo.value({ Q_h: made.highest, f_h: input.highest, K }), range.to.flow);
        same(meter.flowStepFormula.value({ K, t_g: 0.5 }), flowStep(K, 0.5));
        same(meter.flowAtFrequency.value({ f: meter.pulseFrequency.value({ K, Q }), K }), Q);
        const rating = { ratedFlow: 5e-4, ratedLoss: 2e4 };
        same(
          meter.meterLossFormula.value({ dp_r: 2e4, Q, Q_r: 5e-4, rho: 1040 }),
          meterLoss(rating, Q, 1040),
        );
        same(meter.straightFormula.value({ n: 10, d: x }), straightLength(10, x));
        same(meter.flowTaken.value({ Q, Q_m: Q / 2 }), Q / 2);
      }),
    );
  });
});
