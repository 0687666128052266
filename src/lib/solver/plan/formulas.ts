/** Lines of a plan: what a change costs and weighs, and what each degree of it costs. */
import { defineFormula, type Formula, type Term } from '../formula';
import { SOURCES } from '../sources';

const money = (tex: string, name: string): Term => ({ tex, quantity: 'money', name });
const mass = (tex: string, name: string): Term => ({ tex, quantity: 'mass', name });
const amps = (tex: string, name: string): Term => ({ tex, quantity: 'current', name });
const temperature = (tex: string, name: string): Term => ({ tex, quantity: 'temperature', name });
const sums = new Map<string, Formula>();

/** A sum over `count` rows, made once. */
function rows(
  id: string,
  count: number,
  expr: (row: number) => string,
  gives: Term,
  terms: (row: number) => Readonly<Record<string, Term>>,
): Formula {
  const key = `${id} ${count} ${JSON.stringify(terms(1))}`;
  let sum = sums.get(key);
  if (!sum) {
    const each = Array.from({ length: count }, (_, i) => i + 1);
    sum = defineFormula({
      id,
      expr: each.map(expr).join(' + '),
      gives,
      terms: Object.assign({}, ...each.map(terms)) as Record<string, Term>,
      source: SOURCES.definition,
    });
    sums.set(key, sum);
  }
  return sum;
}

/** Pieces are counted; lengths and the like need not be whole. */
const pieces = (row: number, whole: boolean): Term => ({
  tex: `n_{${row}}`,
  quantity: whole ? 'count' : 'ratio',
  name: `pieces, or lengths, in row ${row}`,
});

/** Cost of `count` rows of a parts list. */
export const rowsCost = (count: number, whole: boolean): Formula =>
  rows(
    'plan.rows-cost',
    count,
    (i) => `n_${i} * p_${i}`,
    money('C', 'cost of these parts'),
    (i) => ({
      [`n_${i}`]: pieces(i, whole),
      [`p_${i}`]: money(`p_{${i}}`, `price of one in row ${i}`),
    }),
  );

/** Mass of `count` rows of a parts list. */
export const rowsMass = (count: number, whole: boolean): Formula =>
  rows(
    'plan.rows-mass',
    count,
    (i) => `n_${i} * m_${i}`,
    mass('m_p', 'mass of these parts'),
    (i) => ({
      [`n_${i}`]: pieces(i, whole),
      [`m_${i}`]: mass(`m_{${i}}`, `mass of one in row ${i}`),
    }),
  );

/** Mass of what `count` rows of a parts list take off. */
export const rowsMassOff = (count: number, whole: boolean): Formula =>
  rows(
    'plan.rows-mass-off',
    count,
    (i) => `n_${i} * o_${i}`,
    mass('m_{off}', 'mass of what comes off'),
    (i) => ({
      [`n_${i}`]: pieces(i, whole),
      [`o_${i}`]: mass(`m_{off,${i}}`, `mass that one in row ${i} takes off`),
    }),
  );

/** Several such sums together. */
export const costTogether = (count: number): Formula =>
  rows(
    'plan.cost',
    count,
    (i) => `C_${i}`,
    money('C', 'cost of the parts'),
    (i) => ({ [`C_${i}`]: money(`C_{${i}}`, `sum ${i} above`) }),
  );

export const massTogether = (count: number): Formula =>
  rows(
    'plan.parts-mass',
    count,
    (i) => `m_${i}`,
    mass('m_p', 'mass of the parts'),
    (i) => ({ [`m_${i}`]: mass(`m_{p${i}}`, `sum ${i} above`) }),
  );

export const massOffTogether = (count: number): Formula =>
  rows(
    'plan.parts-mass-off',
    count,
    (i) => `o_${i}`,
    mass('m_{off}', 'mass of what comes off'),
    (i) => ({ [`o_${i}`]: mass(`m_{off,${i}}`, `sum ${i} above`) }),
  );

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
  expr: 'm_p + m_l - m_off',
  gives: mass('\\Delta m', 'mass added, less what comes off'),
  terms: {
    m_p: mass('m_p', 'mass of the parts'),
    m_l: mass('m_l', 'liquid added'),
    m_off: mass('m_{off}', 'mass of what comes off'),
  },
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

/** Half the range that holds 95 of 100 draws of the degrees taken off. */
export const gainHalfWidth = defineFormula({
  id: 'plan.gain-half-width',
  expr: '(dT_high - dT_low) / 2',
  gives: {
    tex: 'U_{\\Delta T}',
    quantity: 'temperatureDifference',
    name: '± of the degrees taken off',
  },
  terms: {
    dT_high: {
      tex: '\\Delta T_{97.5}',
      quantity: 'temperatureDifference',
      name: 'degrees taken off, upper end of 95 %',
    },
    dT_low: {
      tex: '\\Delta T_{2.5}',
      quantity: 'temperatureDifference',
      name: 'degrees taken off, lower end of 95 %',
    },
  },
  source: SOURCES.gumSupplement1,
});

/** The same of what each degree costs. */
export const priceHalfWidth = defineFormula({
  id: 'plan.price-half-width',
  expr: '(c_high - c_low) / 2',
  gives: { tex: 'U_c', quantity: 'costPerDegree', name: '± of the cost of a degree' },
  terms: {
    c_high: {
      tex: 'c_{97.5}',
      quantity: 'costPerDegree',
      name: 'cost of a degree, upper end of 95 %',
    },
    c_low: {
      tex: 'c_{2.5}',
      quantity: 'costPerDegree',
      name: 'cost of a degree, lower end of 95 %',
    },
  },
  source: SOURCES.gumSupplement1,
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
