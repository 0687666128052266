/** Formulas of the liquid side, as the sheets show them. */
import { defineFormula, type Term } from '../formula';
import { SOURCES } from '../sources';
import { AFFINITY_TERMS, G, RHO } from './terms';
import type { PumpModel } from './pump';

const D: Term = { tex: 'D', quantity: 'bore', name: 'bore' };
const Q: Term = { tex: 'Q', quantity: 'volumeFlow', name: 'flow' };
const V: Term = { tex: 'V', quantity: 'velocity', name: 'mean velocity' };
const MU: Term = { tex: '\\mu', quantity: 'viscosity', name: 'dynamic viscosity' };

/** Open cross-section of a hose. */
export const flowArea = defineFormula({
  id: 'hydraulics.flow-area',
  expr: 'pi / 4 * D^2',
  gives: { tex: 'A', quantity: 'area', name: 'flow area' },
  terms: { D },
  source: SOURCES.definition,
});

/** Mean velocity in a hose. */
export const velocity = defineFormula({
  id: 'hydraulics.velocity',
  expr: 'Q / A',
  gives: { tex: 'V', quantity: 'velocity', name: 'mean velocity' },
  terms: { Q, A: { tex: 'A', quantity: 'area', name: 'flow area' } },
  source: SOURCES.definition,
});

/** Tells laminar (below about 2300) from turbulent flow (above about 4000). */
export const reynolds = defineFormula({
  id: 'hydraulics.reynolds',
  expr: 'rho * V * D / mu',
  gives: { tex: '\\mathrm{Re}', quantity: 'ratio', name: 'Reynolds number' },
  terms: { rho: RHO, V, D, mu: MU },
  source: SOURCES.definition,
});

/** Darcy friction factor in every regime. */
export const churchillFriction = defineFormula({
  id: 'hydraulics.friction-churchill',
  expr: '8 * ((8 / Re)^12 + 1 / ((2.457 * log(1 / ((7 / Re)^0.9 + 0.27 * eps / D)))^16 + (37530 / Re)^16)^1.5)^(1 / 12)',
  gives: { tex: 'f', quantity: 'ratio', name: 'Darcy friction factor' },
  terms: {
    Re: { tex: '\\mathrm{Re}', quantity: 'ratio', name: 'Reynolds number' },
    eps: { tex: '\\varepsilon', quantity: 'roughness', name: 'roughness of the wall' },
    D,
  },
  source: SOURCES.churchill1977,
});

/** One end fitting: into its smaller bore and out again, told on the hose bore. */
export const fittingLoss = defineFormula({
  id: 'hydraulics.fitting-loss',
  expr: '(0.5 * (1 - (D_f / D)^2) + (1 - (D_f / D)^2)^2) * (D / D_f)^4',
  gives: { tex: 'K_f', quantity: 'ratio', name: 'loss coefficient of one end fitting' },
  terms: { D_f: { tex: 'D_f', quantity: 'bore', name: 'bore of the fitting' }, D },
  source: SOURCES.darcyWeisbach,
});

/** Everything in a run but the friction along it. */
export const lossSum = defineFormula({
  id: 'hydraulics.loss-sum',
  expr: 'n * K_b + K_o + 2 * K_f',
  gives: { tex: 'K', quantity: 'ratio', name: 'sum of loss coefficients' },
  terms: {
    n: { tex: 'n', quantity: 'count', name: 'number of bends' },
    K_b: { tex: 'K_b', quantity: 'ratio', name: 'loss coefficient of one bend' },
    K_o: { tex: 'K_o', quantity: 'ratio', name: 'further loss coefficients' },
    K_f: { tex: 'K_f', quantity: 'ratio', name: 'loss coefficient of one end fitting' },
  },
  source: SOURCES.darcyWeisbach,
});

/** Pressure lost in a run of hose. */
export const hoseLoss = defineFormula({
  id: 'hydraulics.hose-loss',
  expr: '(f * L / D + K) * rho * V^2 / 2',
  gives: { tex: '\\Delta p', quantity: 'pressureDrop', name: 'pressure lost in the hose' },
  terms: {
    f: { tex: 'f', quantity: 'ratio', name: 'Darcy friction factor' },
    L: { tex: 'L', quantity: 'length', name: 'length' },
    D,
    K: { tex: 'K', quantity: 'ratio', name: 'sum of loss coefficients' },
    rho: RHO,
    V,
  },
  source: SOURCES.darcyWeisbach,
});

/** A pressure as metres of the liquid. */
export const headFromPressure = defineFormula({
  id: 'hydraulics.head-from-pressure',
  expr: 'dp / (rho * g)',
  gives: { tex: 'h', quantity: 'head', name: 'head' },
  terms: {
    dp: { tex: '\\Delta p', quantity: 'pressureDrop', name: 'pressure' },
    rho: RHO,
    g: G,
  },
  source: SOURCES.definition,
});

const RATED = {
  Q,
  Q_r: { tex: 'Q_r', quantity: 'volumeFlow', name: 'rated flow' },
  rho: RHO,
  rho_r: { tex: '\\rho_r', quantity: 'density', name: 'density at the rating' },
  mu: MU,
  mu_r: { tex: '\\mu_r', quantity: 'viscosity', name: 'viscosity at the rating' },
} as const satisfies Record<string, Term>;

/** Loss of a core known by one rating point. */
export const coreLossPower = defineFormula({
  id: 'hydraulics.core-loss-power',
  expr: 'dp_r * (Q / Q_r)^n * (rho / rho_r)^(n - 1) * (mu / mu_r)^(2 - n)',
  gives: { tex: '\\Delta p', quantity: 'pressureDrop', name: 'pressure lost in the core' },
  terms: {
    dp_r: { tex: '\\Delta p_r', quantity: 'pressureDrop', name: 'rated loss' },
    n: { tex: 'n', quantity: 'ratio', name: 'exponent, 1 laminar to 2 turbulent' },
    ...RATED,
  },
  source: SOURCES.commonPractice,
});

/** Loss of a core known by two or more rating points: linear part and quadratic part. */
export const coreLossTwoPart = defineFormula({
  id: 'hydraulics.core-loss-two-part',
  expr: 'dp_1 * Q / Q_r * mu / mu_r + dp_2 * (Q / Q_r)^2 * rho / rho_r',
  gives: { tex: '\\Delta p', quantity: 'pressureDrop', name: 'pressure lost in the core' },
  terms: {
    dp_1: {
      tex: '\\Delta p_1',
      quantity: 'pressureDrop',
      name: 'part of the loss that goes with flow, at the rated flow',
    },
    dp_2: {
      tex: '\\Delta p_2',
      quantity: 'pressureDrop',
      name: 'part that goes with flow squared, at the rated flow',
    },
    ...RATED,
  },
  source: SOURCES.commonPractice,
});

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

/** Power that leaves the pump in the liquid. */
export const hydraulicPowerFormula = defineFormula({
  id: 'hydraulics.hydraulic-power',
  expr: 'rho * g * Q * H',
  gives: { tex: 'P_h', quantity: 'electricPower', name: 'hydraulic power' },
  terms: { rho: RHO, g: G, Q, H: { tex: 'H', quantity: 'head', name: 'head' } },
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
        call: (flow) => pump.rated.value(flow),
      },
    },
    source: SOURCES.affinity,
  });

const part = (tex: string, name: string): Term => ({ tex, quantity: 'head', name });

/** Head the loop asks: right side of the balance. */
export const systemHeadSum = defineFormula({
  id: 'hydraulics.system-head',
  expr: 'h_suction + h_delivery + h_charge + h_transfer + h_front + h_back',
  gives: { tex: 'H_s', quantity: 'head', name: 'head the loop asks' },
  terms: {
    h_suction: part('h_1', 'suction hose'),
    h_delivery: part('h_2', 'hose to the charge cooler'),
    h_charge: part('h_3', 'charge cooler'),
    h_transfer: part('h_4', 'hose to the front exchanger'),
    h_front: part('h_5', 'front exchanger'),
    h_back: part('h_6', 'hose back to the reservoir'),
  },
  source: SOURCES.energyBalance,
});
