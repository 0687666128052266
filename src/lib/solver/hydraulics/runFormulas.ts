/** Formulas of a run of hose told in one line, and of what the pump's work comes to. */
import { defineFormula } from '../formula';
import { SOURCES } from '../sources';
import { FLOW, G, RHO } from './terms';

/** Head lost in a run whose velocity and friction factor are known. */
export const runHead = defineFormula({
  id: 'hydraulics.run-head',
  expr: '(f * L / D + n * K_b + K_o + 2 * K_f) * (V^2 / (2 * g))',
  gives: { tex: 'h', quantity: 'head', name: 'head' },
  terms: {
    f: { tex: 'f', quantity: 'ratio', name: 'Darcy friction factor' },
    L: { tex: 'L', quantity: 'length', name: 'length' },
    D: { tex: 'D', quantity: 'bore', name: 'bore' },
    n: { tex: 'n', quantity: 'count', name: 'number of bends' },
    K_b: { tex: 'K_b', quantity: 'ratio', name: 'loss coefficient of one bend' },
    K_o: { tex: 'K_o', quantity: 'ratio', name: 'further loss coefficients' },
    K_f: { tex: 'K_f', quantity: 'ratio', name: 'loss coefficient of one end fitting' },
    V: { tex: 'V', quantity: 'velocity', name: 'mean velocity' },
    g: G,
  },
  source: SOURCES.darcyWeisbach,
});

/** Mean velocity in a hose straight from the flow. */
export const velocityInBore = defineFormula({
  id: 'hydraulics.velocity-in-bore',
  expr: '4 * Q / (pi * D^2)',
  gives: { tex: 'V', quantity: 'velocity', name: 'mean velocity' },
  terms: { Q: FLOW, D: { tex: 'D', quantity: 'bore', name: 'bore' } },
  source: SOURCES.definition,
});

/** Share of the electrical input that comes out as flow and head. */
export const wireToWater = defineFormula({
  id: 'hydraulics.wire-to-water',
  expr: 'rho * g * Q * H / P',
  gives: { tex: '\\eta', quantity: 'percent', name: 'wire-to-water efficiency' },
  terms: {
    rho: RHO,
    g: G,
    Q: FLOW,
    H: { tex: 'H', quantity: 'head', name: 'head of the pump' },
    P: { tex: 'P', quantity: 'electricPower', name: 'electrical input' },
  },
  source: SOURCES.definition,
});

/** How much warmer the liquid leaves the charge cooler than it came. */
export const passRise = defineFormula({
  id: 'hydraulics.pass-rise',
  expr: '(Q_c + Q_e) / (rho * Q * c_p)',
  gives: { tex: '\\Delta T_l', quantity: 'temperatureDifference', name: 'rise in one pass' },
  terms: {
    Q_c: { tex: '\\dot Q_c', quantity: 'heat', name: 'heat from the charge air' },
    Q_e: { tex: '\\dot Q_e', quantity: 'heat', name: 'heat from the engine' },
    rho: RHO,
    Q: FLOW,
    c_p: { tex: 'c_p', quantity: 'specificHeat', name: 'specific heat of the liquid' },
  },
  source: SOURCES.energyBalance,
});

/** Head the loop asks at another flow. One formula per loop, as it repeats that loop's lines. */
export const systemHeadAt = (head: (flow: number) => number) =>
  defineFormula({
    id: 'hydraulics.system-head-at',
    expr: 'H_s(Q)',
    gives: { tex: 'H_s', quantity: 'head', name: 'head the loop asks' },
    terms: { Q: FLOW },
    functions: {
      H_s: {
        tex: 'H_s',
        says: 'head the loop asks at the flow in brackets: the lines of all six parts repeated at that flow and added',
        takes: ['volumeFlow'],
        gives: 'head',
        call: head,
      },
    },
    source: SOURCES.energyBalance,
  });
