import { describe, expect, it } from 'vitest';
import {
  formulasOf,
  measuredConductance,
  measuredDrop,
  measuredEffectiveness,
  measuredHeat,
} from '$lib/solver/diagnosis/formulas';
import { faultGrid } from '$lib/solver/diagnosis/grid';
import { CHANNELS } from '$lib/solver/diagnosis/channels';
import { fit } from '$lib/solver/diagnosis/likelihood';
import { coolantProperties } from '$lib/solver/fluids/coolant';
import { liquidCapacityRate } from '$lib/solver/cores/formulas';
import { exampleLoop } from '../loop/example';
import { CONDITIONS } from './simulate';

const F = (f: number) => (f - 32) / 1.8 + 273.15;
const GPM = 6.30901964e-5;

describe('the front exchanger from readings', () => {
  // Worked question of the trade, computed independently of this code: 140 in, 126 out, 95 ambient °F,
  // 6.0 gpm of 50/50 by volume (52.7 % by mass): C 1362 W/K, 10.6 kW, effectiveness 0.311, G 424 W/K; 2 %.
  it('gives the heat, the effectiveness and the heat per degree of the worked question', () => {
    const { rho, cp } = coolantProperties({ kind: 'ethylene-glycol', massFraction: 0.527 }, F(133));
    const C_l = liquidCapacityRate.value({ rho, c_p: cp, V: 6 * GPM });
    const dT = measuredDrop.value({ T_in: F(140), T_out: F(126) });
    const Q_f = measuredHeat.value({ C_l, dT });
    const eps = measuredEffectiveness.value({ dT, T_in: F(140), T_a: F(95) });
    const G = measuredConductance.value({ Q_f, T_in: F(140), T_a: F(95) });
    expect(Math.abs(C_l / 1362 - 1)).toBeLessThan(0.02);
    expect(Math.abs(Q_f / 10.6e3 - 1)).toBeLessThan(0.02);
    expect(Math.abs(eps / 0.311 - 1)).toBeLessThan(0.005);
    expect(Math.abs(G / 424 - 1)).toBeLessThan(0.02);
  });
});

describe('the lines of a reading', () => {
  const shown = faultGrid(exampleLoop, CONDITIONS)[0]!.shown[0]!;
  it.each(['reservoir', 'volts', 'amps', 'flow'] as const)(
    '%s: are what the ranking uses',
    (channel) => {
      const sigma = 0.03 * shown.duty.cruise[channel];
      const value = shown.duty.cruise[channel] * 1.01;
      const [fitted] = fit(shown, [{ channel, place: 'cruise', value, sigma }], CONDITIONS);
      const { instrument, together, miss } = formulasOf(channel);
      const { model, modelShare } = CHANNELS[channel];
      const s_i = instrument.value({ pm: 2 * sigma });
      const s = together.value({
        s_i,
        s_m: model,
        c: modelShare,
        y_p: fitted!.predicted,
        T_a: shown.duty.cruise.ambient,
        s_a: CONDITIONS.ambientSigma,
      });
      expect(s).toBeCloseTo(fitted!.sigma, 12);
      expect(miss.value({ y: value, y_p: fitted!.predicted, s })).toBeCloseTo(fitted!.z, 10);
    },
  );
});
