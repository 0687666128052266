/** Formulas of a core's loss on the liquid side, as the sheets show them. */
import { defineFormula, type Term } from '../formula';
import { SOURCES } from '../sources';
import { FLOW as Q, MU, RHO } from './terms';

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
