/** Churchill's friction factor in the three lines it was published in. */
import { defineFormula, type Term } from '../formula';
import { SOURCES } from '../sources';

const RE: Term = { tex: '\\mathrm{Re}', quantity: 'ratio', name: 'Reynolds number' };

/** The part of a turbulent flow, wall smooth or rough. */
export const churchillTurbulent = defineFormula({
  id: 'hydraulics.churchill-turbulent',
  expr: '(2.457 * log(1 / ((7 / Re)^0.9 + 0.27 * eps / D)))^16',
  gives: { tex: 'A', quantity: 'ratio', name: 'turbulent part of Churchill’s law' },
  terms: {
    Re: RE,
    eps: { tex: '\\varepsilon', quantity: 'roughness', name: 'roughness of the wall' },
    D: { tex: 'D', quantity: 'bore', name: 'bore' },
  },
  source: SOURCES.churchill1977,
});

/** The part that counts only where the flow is about to turn turbulent. */
export const churchillTransition = defineFormula({
  id: 'hydraulics.churchill-transition',
  expr: '(37530 / Re)^16',
  gives: { tex: 'B', quantity: 'ratio', name: 'transitional part of Churchill’s law' },
  terms: { Re: RE },
  source: SOURCES.churchill1977,
});

/** Darcy friction factor in every regime. */
export const churchillFriction = defineFormula({
  id: 'hydraulics.friction-churchill',
  expr: '8 * ((8 / Re)^12 + 1 / (A + B)^1.5)^(1 / 12)',
  gives: { tex: 'f', quantity: 'ratio', name: 'Darcy friction factor' },
  terms: { Re: RE, A: churchillTurbulent.gives, B: churchillTransition.gives },
  source: SOURCES.churchill1977,
});
