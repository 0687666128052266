/** Lines of a plan: what a change costs and weighs, and what each degree of it costs. */
import { defineFormula, type Formula, type Term } from '../formula';
import type { Quantity } from '../quantity';
import { SOURCES } from '../sources';

const money = (tex: string, name: string): Term => ({ tex, quantity: 'money', name });
const mass = (tex: string, name: string): Term => ({ tex, quantity: 'mass', name });
const amps = (tex: string, name: string): Term => ({ tex, quantity: 'current', name });
const temperature = (tex: string, name: string): Term => ({ tex, quantity: 'temperature', name });
const PIECES: Term = { tex: 'n', quantity: 'ratio', name: 'pieces, or lengths, of it' };

/** One row of a parts list. */
export const rowCost = defineFormula({
  id: 'plan.row-cost',
  expr: 'n * p',
  gives: money('c', 'cost of this row'),
  terms: { n: PIECES, p: money('p', 'price of one') },
  source: SOURCES.definition,
});

export const rowMass = defineFormula({
  id: 'plan.row-mass',
  expr: 'n * m',
  gives: mass('m_r', 'mass of this row'),
  terms: { n: PIECES, m: mass('m_1', 'mass of one') },
  source: SOURCES.definition,
});

const sums = new Map<string, Formula>();

/** Sum of `count` rows. */
function together(
  id: string,
  count: number,
  gives: Term,
  row: { readonly tex: string; readonly quantity: Quantity; readonly name: string },
): Formula {
  const key = `${id} ${count}`;
  let sum = sums.get(key);
  if (!sum) {
    const keys = Array.from({ length: count }, (_, i) => `x_${i + 1}`);
    sum = defineFormula({
      id,
      expr: keys.join(' + '),
      gives,
      terms: Object.fromEntries(
        keys.map((k, i) => [
          k,
          { ...row, tex: `${row.tex}_{${i + 1}}`, name: `${row.name} ${i + 1}` },
        ]),
      ),
      source: SOURCES.definition,
    });
    sums.set(key, sum);
  }
  return sum;
}

/** Cost of a parts list of `count` rows. */
export const costTogether = (count: number): Formula =>
  together('plan.cost', count, money('C', 'cost of the parts'), money('c', 'row'));

/** Mass of a parts list of `count` rows. */
export const massTogether = (count: number): Formula =>
  together('plan.parts-mass', count, mass('m_p', 'mass of the parts'), mass('m', 'row'));

/** Liquid that a change adds. */
export const liquidAdded = defineFormula({
  id: 'plan.liquid-added',
  expr: 'rho * (V_c - V_f)',
  gives: mass('m_l', 'liquid added'),
  terms: {
    rho: { tex: '\\rho', quantity: 'density', name: 'density of the liquid, cold' },
    V_c: { tex: 'V_c', quantity: 'volume', name: 'liquid in the loop of the candidate' },
    V_f: { tex: 'V_f', quantity: 'volume', name: 'liquid in the loop as found' },
  },
  source: SOURCES.definition,
});

export const massAdded = defineFormula({
  id: 'plan.mass-added',
  expr: 'm_p + m_l',
  gives: mass('\\Delta m', 'mass added, parts taken off not counted'),
  terms: { m_p: mass('m_p', 'mass of the parts'), m_l: mass('m_l', 'liquid added') },
  source: SOURCES.definition,
});

/** Degrees that a change takes off. */
export const gainFormula = defineFormula({
  id: 'plan.gain',
  expr: 'T_now - T_with',
  gives: { tex: '\\Delta T', quantity: 'temperatureDifference', name: 'degrees taken off' },
  terms: {
    T_now: temperature('T_{now}', 'as it is'),
    T_with: temperature('T_{with}', 'with the change'),
  },
  source: SOURCES.definition,
});

/** What a degree costs. Only for a change that takes some off. */
export const costPerDegreeFormula = defineFormula({
  id: 'plan.cost-per-degree',
  expr: 'C / dT',
  gives: { tex: 'C/\\Delta T', quantity: 'costPerDegree', name: 'cost of each degree taken off' },
  terms: {
    C: money('C', 'cost of the parts'),
    dT: { tex: '\\Delta T', quantity: 'temperatureDifference', name: 'degrees taken off' },
  },
  source: SOURCES.definition,
});

/** Draw of pump and fans. */
export const currentTogether = defineFormula({
  id: 'plan.current',
  expr: 'I_p + N * I_f',
  gives: amps('I', 'current of pump and fans'),
  terms: {
    I_p: amps('I_p', 'current of the pump'),
    N: { tex: 'N', quantity: 'count', name: 'fans' },
    I_f: amps('I_f', 'current of one fan, running'),
  },
  source: SOURCES.definition,
});

/** Current of a pump by its electrical input. */
export const pumpCurrent = defineFormula({
  id: 'plan.pump-current',
  expr: 'P / U',
  gives: amps('I_p', 'current of the pump'),
  terms: {
    P: { tex: 'P', quantity: 'electricPower', name: 'electrical input at this speed' },
    U: { tex: 'U', quantity: 'voltage', name: 'volts on its plug' },
  },
  source: SOURCES.ohmKirchhoff,
});
