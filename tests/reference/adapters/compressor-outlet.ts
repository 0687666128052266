import {
  compressorEfficiency,
  compressorOutlet,
  compressorPower,
  isentropicOutlet,
  pressureRatio,
} from '$lib/solver/charge/compressor';
import { chargeHeat, chargeOutlet } from '$lib/solver/charge/coolingFormulas';
import { airMassFlowSpeedDensity } from '$lib/solver/charge/demand';
import { airCapacityRate } from '$lib/solver/charge/formulas';
import type { Given } from '../given';
import type { Adapter } from '../harness';

const compression = (given: Given) => ({
  T_in: given.number('T_in'),
  pressureRatio: given.number('pressure_ratio'),
  efficiency: given.number('efficiency'),
  ...gamma(given),
});

const gamma = (given: Given) => (given.has('gamma') ? { gamma: given.number('gamma') } : {});

export const compressorOutletAdapters: Record<string, Adapter> = {
  'compressor-outlet': (given) => ({
    T_out_isentropic: isentropicOutlet(compression(given)),
    T_out: compressorOutlet(compression(given)),
  }),
  'compressor-power': (given) => ({
    T_out: compressorOutlet(compression(given)),
    power: compressorPower({
      ...compression(given),
      massFlow: given.number('mass_flow'),
      cp: given.number('cp'),
    }),
  }),
  'efficiency-from-temperatures': (given) => ({
    efficiency: compressorEfficiency({
      T_in: given.number('T_in'),
      T_out: given.number('T_out'),
      pressureRatio: given.number('pressure_ratio'),
      ...gamma(given),
    }),
  }),
  'pressure-ratio': (given) => ({
    pressure_ratio: pressureRatio({
      p_ambient: given.number('p_ambient'),
      dp_inlet: given.numberOr('dp_inlet', 0),
      p_manifold_abs: given.number('p_manifold_abs'),
      dp_charge_cooler: given.numberOr('dp_charge_cooler', 0),
    }),
  }),
  'speed-density-mass-flow': (given) => {
    const manifold = {
      p_manifold_abs: given.number('p_manifold_abs'),
      T_manifold: given.number('T_manifold'),
      R: given.number('R'),
    };
    // An engine that sweeps one cubic metre a second breathes the density.
    const swept = { displacement: 0.01, rotation: 100, volumetricEfficiency: 1, revsPerCycle: 1 };
    return {
      rho: airMassFlowSpeedDensity({ ...manifold, ...swept }),
      mass_flow: airMassFlowSpeedDensity({
        ...manifold,
        displacement: given.number('displacement'),
        rotation: given.number('rpm') / 60,
        volumetricEfficiency: given.number('volumetric_efficiency'),
        revsPerCycle: given.numberOr('revs_per_cycle', 2),
      }),
    };
  },
  // The heat between two temperatures is what a cooler of effectiveness 1 takes between them.
  'charge-heat-load': (given) => {
    const C = airCapacityRate.value({ m: given.number('mass_flow'), c_p: given.number('cp') });
    const ends = { T_2: given.number('T_in'), T_l: given.number('T_out') };
    return { Q: chargeHeat.value({ eps: 1, C_min: C, ...ends }) };
  },
  // The air has the smaller capacity rate, which then cancels; any will do.
  'charge-cooler-outlet': (given) => {
    const T_2 = given.number('T_air_in');
    const eps = given.number('effectiveness');
    const C = 300;
    const Q = chargeHeat.value({ eps, C_min: C, T_2, T_l: given.number('T_liquid_in') });
    return { T_air_out: chargeOutlet.value({ T_2, Q, C_a: C }) };
  },
};
