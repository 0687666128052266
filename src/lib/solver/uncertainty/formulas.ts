/** Lines about draws: a chance, how far it can be trusted, what knowing an input would take away. */
import { defineFormula } from '../formula';
import { SOURCES } from '../sources';

const draws = { tex: 'N', quantity: 'count', name: 'draws with an answer' } as const;
const chance = { tex: 'p', quantity: 'percent', name: 'chance' } as const;
const u = { quantity: 'temperatureDifference' } as const;

export const chanceFormula = defineFormula({
  id: 'uncertainty.chance',
  expr: 'n / N',
  gives: chance,
  terms: {
    n: { tex: 'n', quantity: 'count', name: 'draws for which it holds' },
    N: draws,
  },
  source: SOURCES.gumSupplement1,
});

/** Of random draws; lattice points do better. */
export const chanceError = defineFormula({
  id: 'uncertainty.chance-error',
  expr: 'sqrt(p * (1 - p) / N)',
  gives: { tex: 'u_p', quantity: 'percent', name: 'standard error of the chance' },
  terms: { p: chance, N: draws },
  source: SOURCES.gauss,
});

/** What is left of a standard uncertainty once one input is known exactly. */
export const uncertaintyLeft = defineFormula({
  id: 'uncertainty.left',
  expr: 'u * sqrt(1 - S)',
  gives: { ...u, tex: "u'", name: 'standard uncertainty left' },
  terms: {
    u: { ...u, tex: 'u', name: 'standard uncertainty now' },
    S: { tex: 'S', quantity: 'percent', name: 'share of the variance from this input' },
  },
  source: SOURCES.saltelli2010,
});
