/** Lines from the means of a log: conductance from two temperatures, ± of the heat, what an event took. */
import { measuredEffectiveness, measuredDrop, measuredHeat } from '../../diagnosis/formulas';
import { defineFormula } from '../../formula';
import { SOURCES } from '../../sources';

const { T_in, T_out } = measuredDrop.terms;
const { C_l } = measuredHeat.terms;

/** Exact where the air hardly warms; a core whose air warms has more. */
export const leastUA = defineFormula({
  id: 'log.least-UA',
  expr: 'C_l * log((T_in - T_a) / (T_out - T_a))',
  gives: { tex: 'UA_{min}', quantity: 'conductance', name: 'least UA that cools the liquid so' },
  terms: { C_l, T_in, T_out, T_a: measuredEffectiveness.terms.T_a },
  source: SOURCES.kaysLondon,
});

const uT = {
  tex: 'u_T',
  quantity: 'temperatureDifference',
  name: '± of each temperature',
} as const;
const xV = { tex: 'u_V', quantity: 'percent', name: '± of the flow, of its reading' } as const;

/** By the derivatives of {@link leastUA}; the ± of ambient counts for little beside those of the liquid. */
export const leastUAPlusMinus = defineFormula({
  id: 'log.least-UA-plus-minus',
  expr: 'sqrt((UA * u_V)^2 + (C_l * u_T / (T_in - T_a))^2 + (C_l * u_T / (T_out - T_a))^2)',
  gives: { tex: 'u_{min}', quantity: 'conductance', name: '± of the least UA' },
  terms: {
    UA: leastUA.gives,
    u_V: xV,
    C_l,
    u_T: uT,
    T_in,
    T_out,
    T_a: measuredEffectiveness.terms.T_a,
  },
  source: SOURCES.gum,
});

export const heatShare = defineFormula({
  id: 'log.heat-share',
  expr: 'sqrt(u_V^2 + 2 * (u_T / dT)^2)',
  gives: { tex: 'x_Q', quantity: 'percent', name: '± of the heat, of its value' },
  terms: {
    u_V: xV,
    u_T: uT,
    dT: measuredDrop.gives,
  },
  source: SOURCES.gum,
});

export const heatPlusMinus = defineFormula({
  id: 'log.heat-plus-minus',
  expr: 'Q_f * x_Q',
  gives: { tex: 'u_Q', quantity: 'heat', name: '± of the heat' },
  terms: { Q_f: measuredHeat.gives, x_Q: heatShare.gives },
  source: SOURCES.gum,
});

export const shareLost = defineFormula({
  id: 'log.share-lost',
  expr: '1 - V_2 / V_1',
  gives: { tex: 'x', quantity: 'percent', name: 'share of the flow lost' },
  terms: {
    V_1: { tex: '\\dot V_1', quantity: 'volumeFlow', name: 'flow before' },
    V_2: { tex: '\\dot V_2', quantity: 'volumeFlow', name: 'flow after' },
  },
  source: SOURCES.definition,
});

export const voltsLost = defineFormula({
  id: 'log.volts-lost',
  expr: '1 - U_2 / U_1',
  gives: { tex: 'x_U', quantity: 'percent', name: 'share of the volts lost' },
  terms: {
    U_1: { tex: 'U_1', quantity: 'voltage', name: 'volts before' },
    U_2: { tex: 'U_2', quantity: 'voltage', name: 'volts after' },
  },
  source: SOURCES.definition,
});

export const leadFormula = defineFormula({
  id: 'log.lead',
  expr: 't_2 - t_1',
  gives: { tex: '\\Delta t', quantity: 'time', name: 'lead of the first' },
  terms: {
    t_1: { tex: 't_1', quantity: 'time', name: 'when the first began' },
    t_2: { tex: 't_2', quantity: 'time', name: 'when the next began' },
  },
  source: SOURCES.definition,
});

/** Share of what is described that a fit found. */
export const shareOfEntered = defineFormula({
  id: 'log.share-of-entered',
  expr: 'UA / UA_e',
  gives: { tex: 'x_{UA}', quantity: 'percent', name: 'UA found, of that described' },
  terms: {
    UA: { tex: 'UA', quantity: 'conductance', name: 'UA found by the fit' },
    UA_e: { tex: 'UA_e', quantity: 'conductance', name: 'UA as described, at the log’s means' },
  },
  source: SOURCES.definition,
});

/** Half of an interval's width over one standard deviation is its factor; this is that width. */
export const halfWidth = defineFormula({
  id: 'log.half-width',
  expr: '(UA_2 - UA_1) / 2',
  gives: { tex: 'u_{UA}', quantity: 'conductance', name: '± of the UA, 95 % sure' },
  terms: {
    UA_1: { tex: 'UA_1', quantity: 'conductance', name: 'low end of the interval' },
    UA_2: { tex: 'UA_2', quantity: 'conductance', name: 'high end of the interval' },
  },
  source: SOURCES.gum,
});
