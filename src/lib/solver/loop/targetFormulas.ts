/** Lines of a target asked backwards: how far off it is, what the found value does, and estimates by hand. */
import { defineFormula, type Formula, type Term } from '../formula';
import type { Quantity } from '../quantity';
import { SOURCES } from '../sources';

const temperature = (tex: string, name: string): Term => ({ tex, quantity: 'temperature', name });
const rise = (tex: string, name: string): Term => ({
  tex,
  quantity: 'temperatureDifference',
  name,
});
const conductance = (tex: string, name: string): Term => ({ tex, quantity: 'conductance', name });

/** Formulas that differ in a kind of quantity only, made when first asked for. */
function perQuantity(make: (quantity: Quantity) => Formula): (quantity: Quantity) => Formula {
  const made = new Map<Quantity, Formula>();
  return (quantity) => {
    let formula = made.get(quantity);
    if (!formula) made.set(quantity, (formula = make(quantity)));
    return formula;
  };
}

/** Kind of the difference of two of a kind. */
export const differenceQuantity = (quantity: Quantity): Quantity =>
  quantity === 'temperature' ? 'temperatureDifference' : quantity;

/** Present result over its target. */
export const offTarget = perQuantity((quantity) =>
  defineFormula({
    id: `target.off-${quantity}`,
    expr: 'y_0 - y_z',
    gives: {
      tex: '\\Delta y',
      quantity: differenceQuantity(quantity),
      name: 'result now above its target',
    },
    terms: {
      y_0: { tex: 'y_0', quantity, name: 'result with the input as it is' },
      y_z: { tex: 'y_z', quantity, name: 'target' },
    },
    source: SOURCES.definition,
  }),
);

/** Target that leaves a little of the best. */
export const nearBest = perQuantity((quantity) =>
  defineFormula({
    id: `target.near-best-${quantity}`,
    expr: 'y_b + c',
    gives: { tex: 'y_z', quantity, name: 'target' },
    terms: {
      y_b: { tex: 'y_b', quantity, name: 'best that this input can do' },
      c: {
        tex: 'c',
        quantity: differenceQuantity(quantity),
        name: 'what it may cost; negative where more is better',
      },
    },
    source: SOURCES.definition,
  }),
);

/** The target as typed: one side of the equation solved. */
export const targetItself = perQuantity((quantity) =>
  defineFormula({
    id: `target.itself-${quantity}`,
    expr: 'y_z',
    gives: { tex: 'y', quantity, name: 'what the result must be' },
    terms: { y_z: { tex: 'y_z', quantity, name: 'target' } },
    source: SOURCES.definition,
  }),
);

/** The result, as now and what the new value adds: the other side. */
export const movedResult = perQuantity((quantity) =>
  defineFormula({
    id: `target.moved-${quantity}`,
    expr: 'y_0 + d',
    gives: { tex: 'y', quantity, name: 'result with the value found' },
    terms: {
      y_0: { tex: 'y_0', quantity, name: 'result with the input as it is' },
      d: {
        tex: 'd',
        quantity: differenceQuantity(quantity),
        name: 'change of the result, by the loop solved anew',
      },
    },
    source: SOURCES.definition,
  }),
);

/** Found value over the present one. */
export const overPresent = perQuantity((quantity) =>
  defineFormula({
    id: `target.over-present-${quantity}`,
    expr: 'x / x_0',
    gives: { tex: 'k', quantity: 'ratio', name: 'value found over the present one' },
    terms: {
      x: { tex: 'x', quantity, name: 'value found' },
      x_0: { tex: 'x_0', quantity, name: 'present value' },
    },
    source: SOURCES.definition,
  }),
);

const AMBIENT = temperature('T_{amb}', 'ambient temperature');

const rung = (n: number, name: string) => rise(`\\Delta T_${n}`, name);
const ladderOf = (id: string, names: readonly string[]): Formula =>
  defineFormula({
    id: `target.ladder-${id}`,
    expr: ['T_amb', ...names.map((_, i) => `d_${i + 1}`)].join(' + '),
    gives: temperature('T', 'temperature at the top of the steps'),
    terms: {
      T_amb: AMBIENT,
      ...Object.fromEntries(names.map((name, i) => [`d_${i + 1}`, rung(i + 1, name)])),
    },
    source: SOURCES.definition,
  });

/** From the day's air up to a temperature of the loop, step by step. */
export const LADDERS = {
  charge: ladderOf('charge', [
    'air at the face above ambient',
    'liquid leaving the front exchanger above that air',
    'liquid from there to the charge cooler',
    'charge air above the liquid that cools it',
  ]),
  reservoir: ladderOf('reservoir', [
    'air at the face above ambient',
    'liquid leaving the front exchanger above that air',
    'reservoir above that liquid',
  ]),
  /** Where the charge cooler comes after the front exchanger. */
  'reservoir-after-cooler': ladderOf('reservoir-after-cooler', [
    'air at the face above ambient',
    'liquid leaving the front exchanger above that air',
    'liquid leaving the charge cooler above that liquid',
    'reservoir above the liquid that arrives',
  ]),
  'pull-end': ladderOf('pull-end', [
    'reservoir before the pulls above ambient',
    'rise of the reservoir over the pulls',
    'charge air above the reservoir as the last pull ends',
  ]),
} as const;

/** Liquid that may enter the front exchanger, were the rest of the way up to the result to stay. */
export const liquidAllowed = defineFormula({
  id: 'target.liquid-allowed',
  expr: 'T_z - (T_0 - T_f)',
  gives: temperature('T_{f,z}', 'liquid allowed into the front exchanger'),
  terms: {
    T_z: temperature('T_z', 'target'),
    T_0: temperature('T_0', 'result now'),
    T_f: temperature('T_{f,in}', 'liquid into the front exchanger now'),
  },
  source: SOURCES.definition,
});

/** Heat per degree that the front exchanger gives, or would have to give, to ambient. */
export const conductanceToAir = defineFormula({
  id: 'target.conductance-to-air',
  expr: 'Q / (T_f - T_amb)',
  gives: conductance('G', 'heat per degree above ambient'),
  terms: {
    Q: { tex: '\\dot Q_f', quantity: 'heat', name: 'heat the front exchanger carries now' },
    T_f: temperature('T_f', 'liquid into the front exchanger'),
    T_amb: AMBIENT,
  },
  source: SOURCES.energyBalance,
});

/** A degree of the day is a degree of the loop, heat and conductance unchanged. */
export const ambientAllowed = defineFormula({
  id: 'target.ambient-allowed',
  expr: 'T_amb + (T_z - T_0)',
  gives: temperature('T_{amb,z}', 'ambient at which the target is met, by hand'),
  terms: {
    T_amb: AMBIENT,
    T_z: temperature('T_z', 'target'),
    T_0: temperature('T_0', 'result now'),
  },
  source: SOURCES.commonPractice,
});

/** Conductance of a core of the same build by its height. */
export const conductanceByHeight = defineFormula({
  id: 'target.conductance-by-height',
  expr: 'UA_0 * h / h_0',
  gives: conductance('UA_r', 'conductance at its rating'),
  terms: {
    UA_0: conductance('UA_0', 'conductance at the rating now'),
    h: { tex: 'h', quantity: 'dimension', name: 'height found' },
    h_0: { tex: 'h_0', quantity: 'dimension', name: 'height now' },
  },
  source: SOURCES.definition,
});

/** Rise of the reservoir that leaves the target, the rest of the way up to the result unchanged. */
export const riseAllowed = defineFormula({
  id: 'target.rise-allowed',
  expr: 'dT_0 - (T_0 - T_z)',
  gives: rise('\\Delta T_z', 'rise of the reservoir allowed'),
  terms: {
    dT_0: rise('\\Delta T_0', 'rise of the reservoir over the pulls now'),
    T_0: temperature('T_0', 'result now'),
    T_z: temperature('T_z', 'target'),
  },
  source: SOURCES.definition,
});

/** Liquid in the reservoir for that rise: the same heat into a loop that holds more. */
export const volumeByRise = defineFormula({
  id: 'target.volume-by-rise',
  expr: 'V_t + (dT_0 / dT_z - 1) * C / rho_cp',
  gives: { tex: 'V_z', quantity: 'volume', name: 'liquid in the reservoir, by hand' },
  terms: {
    V_t: { tex: 'V_t', quantity: 'volume', name: 'liquid in the reservoir now' },
    dT_0: rise('\\Delta T_0', 'rise of the reservoir over the pulls now'),
    dT_z: rise('\\Delta T_z', 'rise of the reservoir allowed'),
    C: { tex: 'C', quantity: 'heatCapacity', name: 'heat capacity of the whole loop' },
    rho_cp: {
      tex: '\\rho c_p',
      quantity: 'volumetricHeatCapacity',
      name: 'heat capacity of the liquid by volume',
    },
  },
  source: SOURCES.lumpedCapacity,
});

/** What a circuit loses at one current. */
export const dropAtCurrent = defineFormula({
  id: 'target.drop-at-current',
  expr: '(R_w + R_c) * I',
  gives: { tex: 'U', quantity: 'voltage', name: 'volts lost from battery to pump' },
  terms: {
    R_w: { tex: 'R_w', quantity: 'resistance', name: 'wire, hot, out and back' },
    R_c: { tex: 'R_c', quantity: 'resistance', name: 'joints, relay and protection' },
    I: { tex: 'I', quantity: 'current', name: 'current of the pump at the volts then left' },
  },
  source: SOURCES.ohmKirchhoff,
});
