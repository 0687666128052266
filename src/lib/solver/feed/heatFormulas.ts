/** Formulas of what heats: wire in its air, ampacity, the breaker over time. */
import { defineFormula } from '../formula';
import { SOURCES } from '../sources';
import { AMPACITY_REFERENCE, INSULATION_LIMIT } from './ampacity';
import { STILL_AIR_LOSS } from './conductorHeat';
import { COPPER_COEFFICIENT_20 } from './copper';

/** Conductance of a run of wire, out and back, to still air. */
export const wireToAir = defineFormula({
  id: 'feed.wire-to-air',
  expr: 'G_u * pi * D * 2 * L / A_u',
  gives: { tex: 'G', quantity: 'conductance', name: 'heat the wire gives off per degree' },
  terms: {
    G_u: {
      tex: 'G_u',
      quantity: 'conductance',
      name: 'of one square metre in still air, ±40 %',
      fixed: STILL_AIR_LOSS,
    },
    D: { tex: 'D', quantity: 'dimension', name: 'wire over its insulation' },
    L: { tex: 'L', quantity: 'length', name: 'length one way' },
    A_u: { tex: 'A_u', quantity: 'area', name: 'one square metre', fixed: 1 },
  },
  source: {
    standing: 'from memory',
    cite: 'Convection and radiation of a thin wire in still air, about 15 W/(m² K)',
  },
});

/** Where the wire settles by its own current. */
export const wireSettles = defineFormula({
  id: 'feed.wire-settles',
  expr: 'T_a + I^2 * R_a / (G - I^2 * R_20 / theta)',
  gives: { tex: 'T_w', quantity: 'temperature', name: 'temperature of the wire' },
  terms: {
    T_a: { tex: 'T_a', quantity: 'temperature', name: 'air round the wire' },
    I: { tex: 'I', quantity: 'current', name: 'current' },
    R_a: { tex: 'R_a', quantity: 'resistance', name: 'wire out and back at that temperature' },
    G: { tex: 'G', quantity: 'conductance', name: 'heat the wire gives off per degree' },
    R_20: { tex: 'R_{20}', quantity: 'resistance', name: 'wire out and back at 20 °C' },
    theta: {
      tex: '\\theta',
      quantity: 'temperatureDifference',
      name: 'rise that doubles the resistance',
      fixed: 1 / COPPER_COEFFICIENT_20,
    },
  },
  source: SOURCES.energyBalance,
});

/** Current the wire may carry where it lies. */
export const wireMayCarry = defineFormula({
  id: 'feed.wire-may-carry',
  expr: 'I_t * min(1, sqrt((T_lim - T_a) / (T_lim - T_t)))',
  gives: { tex: 'I_w', quantity: 'current', name: 'current the wire may carry' },
  terms: {
    I_t: { tex: 'I_t', quantity: 'current', name: 'table value for 105 °C insulation at 30 °C' },
    T_lim: {
      tex: 'T_{lim}',
      quantity: 'temperature',
      name: 'limit of the insulation',
      fixed: INSULATION_LIMIT,
    },
    T_a: { tex: 'T_a', quantity: 'temperature', name: 'air round the wire' },
    T_t: {
      tex: 'T_t',
      quantity: 'temperature',
      name: 'air of the table',
      fixed: AMPACITY_REFERENCE,
    },
  },
  source: SOURCES.abycE11,
});

/** Room between what the wire may carry and what the fuse lets pass. */
export const fuseMargin = defineFormula({
  id: 'feed.fuse-margin',
  expr: 'I_w - I_r',
  gives: {
    tex: '\\Delta I',
    quantity: 'current',
    name: 'wire over fuse; below zero the wire burns',
  },
  terms: {
    I_w: { tex: 'I_w', quantity: 'current', name: 'current the wire may carry' },
    I_r: { tex: 'I_r', quantity: 'current', name: 'rating of the fuse or breaker' },
  },
  source: SOURCES.commonPractice,
});

/** Time constant that puts the breaker's model through one point of the maker's curve. */
export const breakerTimeConstant = defineFormula({
  id: 'feed.breaker-time-constant',
  expr: 't_m / log(m^2 / (m^2 - 1))',
  gives: { tex: '\\tau', quantity: 'time', name: 'time constant of the breaker' },
  terms: {
    t_m: { tex: 't_m', quantity: 'time', name: 'time to open from cold' },
    m: { tex: 'm', quantity: 'percent', name: 'current over rating at that point' },
  },
  source: SOURCES.iec60255,
});

/** One round of a breaker that closes by itself. */
export const breakerPeriod = defineFormula({
  id: 'feed.breaker-period',
  expr: 't_on + t_off',
  gives: { tex: 't_p', quantity: 'time', name: 'from one opening to the next' },
  terms: {
    t_on: { tex: 't_{on}', quantity: 'time', name: 'closed' },
    t_off: { tex: 't_{off}', quantity: 'time', name: 'open' },
  },
  source: SOURCES.definition,
});
