/** Further lines of a core, where a sheet takes it apart: liquid side by its ratios, a stream that warms. */
import { defineFormula, type Term } from '../formula';
import { SOURCES } from '../sources';
import { hALiquid } from './formulas';

const PROPERTY = {
  c_p: { tex: 'c_p', quantity: 'specificHeat', name: 'specific heat of the liquid' },
  mu: { tex: '\\mu', quantity: 'viscosity', name: 'viscosity of the liquid' },
  k: { tex: 'k', quantity: 'conductivity', name: 'conductivity of the liquid' },
} as const satisfies Record<string, Term>;

const X_PR = {
  tex: 'x_{Pr}',
  quantity: 'ratio',
  name: 'Prandtl number over its value at the rating',
} as const satisfies Term;

/** Prandtl number of the liquid over that of the rating's liquid. */
export const prandtlRatio = defineFormula({
  id: 'cores.prandtl-ratio',
  expr: '(c_p * mu / k) / (c_pr * mu_r / k_r)',
  gives: X_PR,
  terms: {
    ...PROPERTY,
    c_pr: { ...PROPERTY.c_p, tex: 'c_{p,r}', name: 'specific heat at the rating' },
    mu_r: { ...PROPERTY.mu, tex: '\\mu_r', name: 'viscosity at the rating' },
    k_r: { ...PROPERTY.k, tex: 'k_r', name: 'conductivity at the rating' },
  },
  source: SOURCES.definition,
});

/** Liquid side at another flow and another liquid, from the ratios to the rating. */
export const hALiquidByRatios = defineFormula({
  id: 'cores.hA-liquid-by-ratios',
  expr: 'hA_r * (k / k_r) * x_Re^n * x_Pr^0.4',
  gives: hALiquid.gives,
  terms: {
    hA_r: hALiquid.terms.hA_r,
    k: hALiquid.terms.k,
    k_r: hALiquid.terms.k_r,
    x_Re: hALiquid.terms.x_Re,
    n: hALiquid.terms.n,
    x_Pr: X_PR,
  },
  source: SOURCES.kaysLondon,
});

/** Outlet of the stream that takes the heat up. */
export const warmedOutlet = defineFormula({
  id: 'cores.warmed-outlet',
  expr: 'T_in + Q / C',
  gives: { tex: 'T_{out}', quantity: 'temperature', name: 'outlet of the stream that warms' },
  terms: {
    T_in: { tex: 'T_{in}', quantity: 'temperature', name: 'its inlet' },
    Q: { tex: '\\dot Q', quantity: 'heat', name: 'heat carried' },
    C: { tex: 'C', quantity: 'conductance', name: 'its capacity rate' },
  },
  source: SOURCES.energyBalance,
});
