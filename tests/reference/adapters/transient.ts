/** Topics transient-warmup, transient-two-mass and transient-loop. */
import {
  heatStored,
  lumpedPulse,
  lumpedRamp,
  lumpedTemperature,
  settleTemperature,
  timeConstant,
  timeToReach,
} from '$lib/solver/loop/lumped';
import {
  loop4Steady,
  simulateLoop4,
  simulateLoop4Air,
  simulateTwoMass,
  simulateTwoMassFallingFlow,
} from '$lib/solver/loop/referenceModels';
import type { Given } from '../given';
import type { Adapter } from '../harness';

/** Read inputs by the names that reference and solver share. */
function read<K extends string>(given: Given, names: readonly K[]): Record<K, number> {
  return Object.fromEntries(names.map((name) => [name, given.number(name)])) as Record<K, number>;
}

const mass = (given: Given, surroundings = 'T_ambient') => ({
  C: given.number('C'),
  G: given.number('UA'),
  Q: given.numberOr('Q', 0),
  T_surroundings: given.number(surroundings),
  T0: given.number('T0'),
});

export const transientWarmupAdapters: Record<string, Adapter> = {
  'lumped-warmup': (given) => {
    const m = mass(given);
    return {
      tau: timeConstant(m),
      T_steady: settleTemperature(m),
      T: lumpedTemperature(m, given.number('t')),
    };
  },
  'lumped-time-to-reach': (given) => ({ t: timeToReach(mass(given), given.number('T_target')) }),
  'lumped-pulse': (given) => ({ ...lumpedPulse(mass(given), read(given, ['t_off', 't'])) }),
  'lumped-ramp-ambient': (given) => ({
    T: lumpedRamp(mass(given, 'T_ambient_0'), {
      rate: given.number('ambient_rate'),
      t: given.number('t'),
    }),
  }),
  'heat-stored': (given) => ({ energy: heatStored(read(given, ['C', 'T0', 'T1'])) }),
};

const TWO_MASS = ['C1', 'C2', 'UA', 'Q', 'T_ambient', 'T1_0', 'T2_0'] as const;

export const transientTwoMassAdapters: Record<string, Adapter> = {
  'two-mass': (given) => {
    const inputs = { ...read(given, [...TWO_MASS, 'G', 't_off']), t: given.numbers('t') };
    const [T1, T2] = simulateTwoMass(inputs).nodes;
    return { T1: T1!, T2: T2! };
  },
  'two-mass-flow-falls-with-temperature': (given) => {
    const own = ['mass_flow_0', 'cp', 'flow_loss_per_K', 'T_ref', 'flow_floor'] as const;
    const inputs = { ...read(given, [...TWO_MASS, ...own]), t: given.numbers('t') };
    const [T1, T2] = simulateTwoMassFallingFlow(inputs).nodes;
    return { T1: T1!, T2: T2! };
  },
};

const LOOP = [
  ...(['C1', 'C2', 'C3', 'C4', 'liquid_capacity_rate', 't_on', 't_off'] as const),
  ...(['T_ambient', 'pump_heat', 'T1_0', 'T2_0', 'T3_0', 'T4_0'] as const),
];

export const transientLoopAdapters: Record<string, Adapter> = {
  'loop-4-node': (given) => {
    const inputs = { ...read(given, [...LOOP, 'Q', 'UA_front']), t: given.numbers('t') };
    const [T1, T2, T3, T4] = simulateLoop4(inputs).nodes;
    const [T1_steady, T2_steady, T3_steady, T4_steady] = loop4Steady(inputs);
    return { T1: T1!, T2: T2!, T3: T3!, T4: T4!, T1_steady, T2_steady, T3_steady, T4_steady };
  },
  'loop-4-node-air': (given) => {
    const own = [
      ...(['effectiveness_charge', 'air_capacity_rate', 'T_air_hot_on'] as const),
      ...(['T_air_hot_off', 'effectiveness_front', 'C_min_front'] as const),
    ];
    const inputs = { ...read(given, [...LOOP, ...own]), t: given.numbers('t') };
    const { nodes, chargeOut } = simulateLoop4Air(inputs);
    const [T1, T2, T3, T4] = nodes;
    return { T1: T1!, T2: T2!, T3: T3!, T4: T4!, T_charge_out: chargeOut };
  },
};
