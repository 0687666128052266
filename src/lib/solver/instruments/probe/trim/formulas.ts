/** Lines of a trim: its network by form, and the bias with it. Tied to `networkResistance`, `biasWith`. */
import { defineFormula, type Formula, type Term } from '../../../formula';
import { SOURCES } from '../../../sources';
import type { Form } from './network';
import type { Placement } from './trims';

const ohms = (tex: string, name: string): Term => ({ tex, quantity: 'resistance', name });
const R_A = ohms('R_1', 'first resistor');
const R_B = ohms('R_2', 'second resistor');
const R_C = ohms('R_3', 'third resistor');
const NETWORK = ohms('R_n', 'network');

const one = { R_1: R_A };
const two = { ...one, R_2: R_B };
const three = { ...two, R_3: R_C };

const network = (id: string, expr: string, terms: Readonly<Record<string, Term>>): Formula =>
  defineFormula({
    id: `probe.network-${id}`,
    expr,
    gives: NETWORK,
    terms,
    source: SOURCES.ohmKirchhoff,
  });

/** Resistance of a network, by its form. */
export const NETWORK_FORMULAS: Readonly<Record<Form, Formula>> = {
  a: network('one', 'R_1', one),
  'a+b': network('series-two', 'R_1 + R_2', two),
  'a|b': network('parallel-two', '1 / (1 / R_1 + 1 / R_2)', two),
  'a+b+c': network('series-three', 'R_1 + R_2 + R_3', three),
  'a|b|c': network('parallel-three', '1 / (1 / R_1 + 1 / R_2 + 1 / R_3)', three),
  '(a+b)|c': network('pair-across', '1 / (1 / (R_1 + R_2) + 1 / R_3)', three),
  '(a|b)+c': network('pair-in-line', '1 / (1 / R_1 + 1 / R_2) + R_3', three),
};

const fitted = ohms('R_f', 'bias resistor that is there');
const gives = ohms('R_b', 'bias with the network');

/** Bias with a network, by where it goes. In its place: the network alone. */
export const WITH_NETWORK: Readonly<Record<Placement, Formula>> = {
  across: defineFormula({
    id: 'probe.bias-across',
    expr: '1 / (1 / R_f + 1 / R_n)',
    gives,
    terms: { R_f: fitted, R_n: NETWORK },
    source: SOURCES.ohmKirchhoff,
  }),
  'in-series': defineFormula({
    id: 'probe.bias-in-series',
    expr: 'R_f + R_n',
    gives,
    terms: { R_f: fitted, R_n: NETWORK },
    source: SOURCES.ohmKirchhoff,
  }),
  instead: defineFormula({
    id: 'probe.bias-instead',
    expr: 'R_n',
    gives,
    terms: { R_n: NETWORK },
    source: SOURCES.definition,
  }),
};

/** Highest less lowest of several probes: `compareProbes`. */
export const spreadFormula = defineFormula({
  id: 'probe.spread',
  expr: 'T_max - T_min',
  gives: { tex: '\\Delta T', quantity: 'temperatureDifference', name: 'spread of the probes' },
  terms: {
    T_max: { tex: 'T_{max}', quantity: 'temperature', name: 'highest' },
    T_min: { tex: 'T_{min}', quantity: 'temperature', name: 'lowest' },
  },
  source: SOURCES.definition,
});
