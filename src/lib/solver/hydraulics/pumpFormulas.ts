/** Formulas of the pump and of the balance it keeps, as the sheets show them. */
import { defineFormula, type Term } from '../formula';
import { SOURCES } from '../sources';
import type { PumpModel } from './pump';
import { FLOW as Q, G, RHO } from './terms';

const AFFINITY_TERMS = {
  s: { tex: 's', quantity: 'ratio', name: 'speed over rated speed' },
} as const satisfies Record<string, Term>;

/** Speed of a brushed motor from its voltage. */
export const speedFromVolts = defineFormula({
  id: 'hydraulics.speed-from-volts',
  expr: 'U / U_r',
  gives: { tex: 's', quantity: 'ratio', name: 'speed over rated speed' },
  terms: {
    U: { tex: 'U', quantity: 'voltage', name: 'voltage at the motor' },
    U_r: { tex: 'U_r', quantity: 'voltage', name: 'rated voltage' },
  },
  source: SOURCES.commonPractice,
});

/** Flow of the similar point at another speed. */
export const affinityFlow = defineFormula({
  id: 'hydraulics.affinity-flow',
  expr: 'Q_r * s',
  gives: { tex: 'Q', quantity: 'volumeFlow', name: 'flow at this speed' },
  terms: {
    Q_r: { tex: 'Q_r', quantity: 'volumeFlow', name: 'flow at rated speed' },
    ...AFFINITY_TERMS,
  },
  source: SOURCES.affinity,
});

/** Head of the similar point at another speed. */
export const affinityHead = defineFormula({
  id: 'hydraulics.affinity-head',
  expr: 'H_r * s^2',
  gives: { tex: 'H', quantity: 'head', name: 'head at this speed' },
  terms: {
    H_r: { tex: 'H_r', quantity: 'head', name: 'head at rated speed' },
    ...AFFINITY_TERMS,
  },
  source: SOURCES.affinity,
});

/** Electrical input of the pump set at its speed. */
export const affinityPower = defineFormula({
  id: 'hydraulics.affinity-power',
  expr: 'n * P_r * s^3',
  gives: { tex: 'P', quantity: 'electricPower', name: 'electrical input at this speed' },
  terms: {
    n: { tex: 'n', quantity: 'count', name: 'number of pumps' },
    P_r: { tex: 'P_r', quantity: 'electricPower', name: 'input of one pump at rated voltage' },
    ...AFFINITY_TERMS,
  },
  source: SOURCES.affinity,
});

/** Heat the pump set leaves in the liquid. */
export const pumpHeat = defineFormula({
  id: 'hydraulics.pump-heat',
  expr: 'x * P',
  gives: { tex: '\\dot Q_p', quantity: 'heat', name: 'heat of the pump into the liquid' },
  terms: {
    x: { tex: 'x', quantity: 'ratio', name: 'share of the input that warms the liquid' },
    P: { tex: 'P', quantity: 'electricPower', name: 'electrical input' },
  },
  source: SOURCES.definition,
});

/**
 * Head of the pump set: left side of the balance. One formula per pump, as it reads that pump's curve.
 * `n_s` pumps add their heads, `n_p` share the flow.
 */
export const pumpSetHead = (pump: Pick<PumpModel, 'rated'>) =>
  defineFormula({
    id: 'hydraulics.pump-set-head',
    expr: 'n_s * s^2 * H_1(Q / (n_p * s))',
    gives: { tex: 'H', quantity: 'head', name: 'head of the pump' },
    terms: {
      n_s: { tex: 'n_s', quantity: 'count', name: 'pumps in series' },
      n_p: { tex: 'n_p', quantity: 'count', name: 'pumps in parallel' },
      Q,
      ...AFFINITY_TERMS,
    },
    functions: {
      H_1: {
        tex: 'H_1',
        says: 'head of one pump at rated speed, read from its curve at the flow in brackets',
        takes: ['volumeFlow'],
        gives: 'head',
        call: (flow) => pump.rated.value(flow),
      },
    },
    source: SOURCES.affinity,
  });

const part = (tex: string, name: string): Term => ({ tex, quantity: 'head', name });
const core = (tex: string, name: string): Term => ({ tex, quantity: 'pressureDrop', name });

/** Head the loop asks: right side of the balance. Hoses by their heads, cores by what a gauge reads. */
export const systemHeadSum = defineFormula({
  id: 'hydraulics.system-head',
  expr: 'h_suction + h_delivery + h_transfer + h_back + (dp_charge + dp_front) / (rho * g)',
  gives: { tex: 'H_s', quantity: 'head', name: 'head the loop asks' },
  terms: {
    h_suction: part('h_1', 'suction hose'),
    h_delivery: part('h_2', 'hose to the first core'),
    h_transfer: part('h_3', 'hose between the cores'),
    h_back: part('h_4', 'hose back to the reservoir'),
    dp_charge: core('\\Delta p_c', 'pressure lost in the charge cooler'),
    dp_front: core('\\Delta p_f', 'pressure lost in the front exchanger'),
    rho: RHO,
    g: G,
  },
  source: SOURCES.energyBalance,
});
