/** Formulas of a core's loss on the air side, as the sheets show them. */
import { defineFormula, type Term } from '../formula';
import { SOURCES } from '../sources';
import { STANDARD_AIR_DENSITY } from './fan';
import { RHO, U } from './terms';

const RATED = {
  u: U,
  u_r: { tex: 'u_r', quantity: 'faceVelocity', name: 'face velocity at the rating' },
  rho: RHO,
  rho_r: {
    tex: '\\rho_0',
    quantity: 'density',
    name: 'density of standard air',
    fixed: STANDARD_AIR_DENSITY,
  },
  mu: { tex: '\\mu', quantity: 'viscosity', name: 'viscosity of the air' },
  mu_r: { tex: '\\mu_0', quantity: 'viscosity', name: 'viscosity of standard air' },
} as const satisfies Record<string, Term>;

const CORE_LOSS = {
  tex: '\\Delta p_{core}',
  quantity: 'airPressure',
  name: 'air pressure lost in the core',
} as const;

/** Air-side loss of a core known by one rating point. */
export const airLossPower = defineFormula({
  id: 'airside.loss-power',
  expr: 'dp_r * (u / u_r)^n * (rho / rho_r)^(n - 1) * (mu / mu_r)^(2 - n)',
  gives: CORE_LOSS,
  terms: {
    dp_r: { tex: '\\Delta p_r', quantity: 'airPressure', name: 'rated loss' },
    n: { tex: 'n', quantity: 'ratio', name: 'exponent, 1 laminar to 2 turbulent' },
    ...RATED,
  },
  source: SOURCES.commonPractice,
});

/** Air-side loss of a core known by two or more rating points. */
export const airLossTwoPart = defineFormula({
  id: 'airside.loss-two-part',
  expr: 'dp_1 * u / u_r * mu / mu_r + dp_2 * (u / u_r)^2 * rho / rho_r',
  gives: CORE_LOSS,
  terms: {
    dp_1: {
      tex: '\\Delta p_1',
      quantity: 'airPressure',
      name: 'part of the loss that goes with velocity, at the rated one',
    },
    dp_2: {
      tex: '\\Delta p_2',
      quantity: 'airPressure',
      name: 'part that goes with velocity squared, at the rated one',
    },
    ...RATED,
  },
  source: SOURCES.commonPractice,
});
