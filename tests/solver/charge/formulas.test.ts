import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { AIR_GAS_CONSTANT } from '$lib/solver/air/air';
import { bypassedCompression } from '$lib/solver/charge/bypass';
import {
  compressorEfficiency,
  compressorOutlet,
  pressureRatio,
} from '$lib/solver/charge/compressor';
import * as cooling from '$lib/solver/charge/coolingFormulas';
import { airMassFlowFromPower, airMassFlowSpeedDensity } from '$lib/solver/charge/demand';
import * as lines from '$lib/solver/charge/formulas';
import { chargeState } from '$lib/solver/charge/state';
import { byPower, car, duty } from './fixture';

const relative = (got: number, expected: number) => Math.abs(got / expected - 1);
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** Both sides evaluate the same few operations. */
const SAME = 1e-10;

describe('each line is the function the solver calls', () => {
  it('air from power', () => {
    fc.assert(
      fc.property(
        between(1e3, 1e6),
        between(5e-8, 3e-7),
        between(5, 30),
        (power, fuelUse, airFuelRatio) => {
          const line = lines.airFromPower.value({ P: power, b: fuelUse, AFR: airFuelRatio });
          expect(
            relative(line, airMassFlowFromPower({ power, fuelUse, airFuelRatio })),
          ).toBeLessThan(SAME);
        },
      ),
    );
  });

  it('air by speed and density', () => {
    fc.assert(
      fc.property(between(10, 150), between(3e4, 3e5), between(250, 450), (N, p, T) => {
        const x = { eta_v: 0.9, V_d: 0.004, N, p_m: p, T_m: T };
        const got = airMassFlowSpeedDensity({
          displacement: 0.004,
          rotation: N,
          volumetricEfficiency: 0.9,
          p_manifold_abs: p,
          T_manifold: T,
          R: AIR_GAS_CONSTANT,
        });
        expect(relative(lines.airSpeedDensity.value(x), got)).toBeLessThan(SAME);
      }),
    );
  });

  it('compressor: outlet, efficiency, rise of a pass, mixed inlet', () => {
    fc.assert(
      fc.property(
        between(250, 350),
        between(1.01, 5),
        between(0.3, 1),
        between(0, 0.3),
        (T_1, PR, eta, r) => {
          const one = { T_in: T_1, pressureRatio: PR, efficiency: eta };
          const T_2 = compressorOutlet(one);
          expect(relative(lines.compressorOutletLine.value({ T_1, PR, eta }), T_2)).toBeLessThan(
            SAME,
          );
          const efficiency = compressorEfficiency({ T_in: T_1, T_out: T_2, pressureRatio: PR });
          // PR near 1: the line divides two small differences, 1e-16 over 3e-3.
          expect(
            relative(lines.compressorEfficiencyLine.value({ T_1, T_2, PR }), efficiency),
          ).toBeLessThan(1e-9);
          const k = lines.passRise.value({ PR, eta });
          expect(relative(1 + k, T_2 / T_1)).toBeLessThan(SAME);
          fc.pre(r * (1 + k) < 0.9);
          const mixed = bypassedCompression({ ...one, recirculation: r });
          expect(relative(lines.mixedInlet.value({ r, T_i: T_1, k }), mixed.T_in)).toBeLessThan(
            SAME,
          );
        },
      ),
    );
  });

  it('pressure ratio', () => {
    fc.assert(
      fc.property(between(6e4, 1.1e5), between(0, 5e3), between(1e5, 3e5), (p_amb, dp_in, p_m) => {
        const x = { p_m, dp_cc: 4000, p_amb, dp_in };
        const got = pressureRatio({
          p_ambient: p_amb,
          dp_inlet: dp_in,
          p_manifold_abs: p_m,
          dp_charge_cooler: 4000,
        });
        expect(relative(lines.pressureRatioClosed.value(x), got)).toBeLessThan(SAME);
      }),
    );
  });
});

describe('the lines in a row lead to the state', () => {
  const lossy = {
    ...car,
    inletLoss: 2500,
    chargeCooler: { ...car.chargeCooler, airLossRated: 6000 },
  };
  const full = chargeState(lossy, lossy.duties.pull)!;
  const lossAt = (m: number) => ({
    inlet: lines.inletLossAtFlow.value({ dp_full: 2500, m, m_full: full.massFlow }),
    cooler: lines.coolerLossAtFlow.value({ dp_r: 6000, m, m_r: 0.45 }),
  });

  it('bypass closed', () => {
    const part = duty('traffic', byPower(300, 0.55, 11.8), { intakeRise: 12 });
    const state = chargeState(lossy, part)!;
    const p_amb = state.ambientPressure;
    const loss = lossAt(state.massFlow);
    const p_m = lines.manifoldPressure.value({ p_amb, p_g: part.manifoldGauge });
    const x = { p_m, dp_cc: loss.cooler, p_amb, dp_in: loss.inlet };
    expect(p_m).toBe(state.manifoldPressure);
    expect(relative(lines.pressureRatioClosed.value(x), state.pressureRatio)).toBeLessThan(SAME);
    const T_1 = lines.intakeTemperature.value({ T_amb: car.site.ambientTemperature, dT_i: 12 });
    const T_2 = lines.compressorOutletLine.value({ T_1, PR: state.pressureRatio, eta: 0.65 });
    expect(relative(T_2, state.compressorOutlet)).toBeLessThan(SAME);
    const C_a = lines.airCapacityRate.value({ m: state.massFlow, c_p: state.airCp });
    expect(C_a).toBe(state.capacityRate);
  });

  it('bypass open', () => {
    const open = { ...lossy.duties.cruise, recirculation: 0.4 };
    const state = chargeState(lossy, open)!;
    const PR = lines.pressureRatioOpen.value({
      dp_by: open.bypassRise!,
      p_amb: state.ambientPressure,
      dp_in: lossAt(state.massFlow).inlet,
    });
    expect(relative(PR, state.pressureRatio)).toBeLessThan(SAME);
    const k = lines.passRise.value({ PR, eta: open.compressorEfficiency });
    const T_1 = lines.mixedInlet.value({ r: 0.4, T_i: car.site.ambientTemperature, k });
    expect(relative(T_1, state.compressorInlet)).toBeLessThan(SAME);
  });

  it('cooling: the two reference points, and intake above liquid', () => {
    // Source: outlet = inlet - effectiveness x (inlet - liquid), air the smaller stream; two points computed apart.
    for (const [T_2, T_l, eps, T_3] of [
      [400, 318, 0.75, 338.5],
      [345, 313, 0.9, 316.2],
    ] as const) {
      const Q = cooling.chargeHeat.value({ eps, C_min: 300, T_2, T_l });
      expect(cooling.chargeOutlet.value({ T_2, Q, C_a: 300 })).toBeCloseTo(T_3, 9);
      expect(cooling.intakeAboveLiquid.value({ T_3, T_l })).toBeCloseTo((1 - eps) * (T_2 - T_l), 9);
      const rise = cooling.coolantRise.value({ Q, rho: 1000, V: 5e-4, c_p: 4200 });
      expect(rise).toBeCloseTo(Q / 2100, 9);
    }
  });
});
