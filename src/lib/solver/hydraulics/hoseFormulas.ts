/** Formulas of a run of hose, as the sheets show them. */
import { defineFormula, type Term } from '../formula';
import { SOURCES } from '../sources';
import { FLOW as Q, G, MU, RHO } from './terms';

const D: Term = { tex: 'D', quantity: 'bore', name: 'bore' };
const V: Term = { tex: 'V', quantity: 'velocity', name: 'mean velocity' };

/** How far an end fitting necks its hose. */
export const fittingRatio = defineFormula({
  id: 'hydraulics.fitting-ratio',
  expr: 'D_f / D',
  gives: { tex: '\\beta', quantity: 'ratio', name: 'bore of the fitting over that of the hose' },
  terms: { D_f: { tex: 'D_f', quantity: 'bore', name: 'bore of the fitting' }, D },
  source: SOURCES.definition,
});

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

/** One end fitting: into its smaller bore and out again, told on the hose bore. */
export const fittingLoss = defineFormula({
  id: 'hydraulics.fitting-loss',
  expr: '(0.5 * (1 - beta^2) + (1 - beta^2)^2) / beta^4',
  gives: { tex: 'K_f', quantity: 'ratio', name: 'loss coefficient of one end fitting' },
  terms: { beta: fittingRatio.gives },
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
