/** Lines of what a loop holds: liquid, metal, heat per degree. */
import { ALUMINIUM_CP } from '../aluminium';
import { defineFormula, type Term } from '../formula';
import { SOURCES } from '../sources';

export const LIQUID_CAPACITY: Term = {
  tex: '\\rho c_p',
  quantity: 'volumetricHeatCapacity',
  name: 'heat capacity of the liquid by volume',
};
export const METAL_CAPACITY: Term = {
  tex: 'C_m',
  quantity: 'heatCapacity',
  name: 'heat capacity of the metal',
};
export const TANK_LIQUID: Term = {
  tex: 'V_t',
  quantity: 'volume',
  name: 'liquid in the reservoir',
};
export const OTHER_LIQUID: Term = {
  tex: 'V_o',
  quantity: 'volume',
  name: 'liquid outside the reservoir',
};
export const CAPACITY: Term = {
  tex: 'C',
  quantity: 'heatCapacity',
  name: 'heat capacity of the whole loop',
};

const bore = (n: number, run: string): Term => ({
  tex: `d_${n}`,
  quantity: 'bore',
  name: `bore of the ${run} hose`,
});
const length = (n: number, run: string): Term => ({
  tex: `L_${n}`,
  quantity: 'length',
  name: `length of the ${run} hose`,
});

/** Liquid in the four runs of hose. */
export const hoseLiquid = defineFormula({
  id: 'reservoir.hose-liquid',
  // Written out, so that a line with numbers put in can break at each plus.
  expr: 'pi / 4 * d_1^2 * L_1 + pi / 4 * d_2^2 * L_2 + pi / 4 * d_3^2 * L_3 + pi / 4 * d_4^2 * L_4',
  gives: { tex: 'V_h', quantity: 'volume', name: 'liquid in the hoses' },
  terms: {
    d_1: bore(1, 'suction'),
    L_1: length(1, 'suction'),
    d_2: bore(2, 'delivery'),
    L_2: length(2, 'delivery'),
    d_3: bore(3, 'transfer'),
    L_3: length(3, 'transfer'),
    d_4: bore(4, 'return'),
    L_4: length(4, 'return'),
  },
  source: SOURCES.definition,
});

/** Liquid that no tank change touches. */
export const otherLiquid = defineFormula({
  id: 'reservoir.other-liquid',
  expr: 'V_c + V_f + V_h',
  gives: OTHER_LIQUID,
  terms: {
    V_c: { tex: 'V_c', quantity: 'volume', name: 'liquid in the charge cooler' },
    V_f: { tex: 'V_f', quantity: 'volume', name: 'liquid in the front exchanger' },
    V_h: { tex: 'V_h', quantity: 'volume', name: 'liquid in the hoses' },
  },
  source: SOURCES.definition,
});

/** Heat the metal of tank and cores takes up per degree, all of it counted as aluminium. */
export const metalCapacity = defineFormula({
  id: 'reservoir.metal-capacity',
  expr: '(m_t + m_c + m_f) * c_Al',
  gives: METAL_CAPACITY,
  terms: {
    m_t: { tex: 'm_t', quantity: 'mass', name: 'metal of the reservoir' },
    m_c: { tex: 'm_c', quantity: 'mass', name: 'metal of the charge cooler' },
    m_f: { tex: 'm_f', quantity: 'mass', name: 'metal of the front exchanger' },
    c_Al: {
      tex: 'c_{Al}',
      quantity: 'specificHeat',
      name: 'specific heat of aluminium, from memory',
      fixed: ALUMINIUM_CP,
    },
  },
  source: SOURCES.definition,
});

/** Heat the whole loop takes up per degree: `totalCapacity` in loop/thermalMass.ts. */
export const loopCapacity = defineFormula({
  id: 'reservoir.loop-capacity',
  expr: 'rho_cp * (V_t + V_o) + C_m',
  gives: CAPACITY,
  terms: {
    rho_cp: LIQUID_CAPACITY,
    V_t: TANK_LIQUID,
    V_o: OTHER_LIQUID,
    C_m: METAL_CAPACITY,
  },
  source: SOURCES.definition,
});

/** What the liquid weighs. */
export const liquidMass = defineFormula({
  id: 'reservoir.liquid-mass',
  expr: 'rho * (V_t + V_o)',
  gives: { tex: 'm_l', quantity: 'mass', name: 'mass of the liquid' },
  terms: {
    rho: { tex: '\\rho', quantity: 'density', name: 'density of the liquid when filled' },
    V_t: TANK_LIQUID,
    V_o: OTHER_LIQUID,
  },
  source: SOURCES.definition,
});

/** What the mixture takes up against plain water, by volume. */
export const againstWater = defineFormula({
  id: 'reservoir.against-water',
  expr: 'rho_cp / rho_cp_w',
  gives: { tex: 'r_w', quantity: 'percent', name: 'heat capacity by volume over that of water' },
  terms: {
    rho_cp: LIQUID_CAPACITY,
    rho_cp_w: {
      tex: '(\\rho c_p)_w',
      quantity: 'volumetricHeatCapacity',
      name: 'heat capacity of water by volume at this temperature',
    },
  },
  source: SOURCES.iapwsIF97,
});
