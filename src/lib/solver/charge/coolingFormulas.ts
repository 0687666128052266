/** Lines the sheets show of what the charge cooler does to the charge air. */
import { defineFormula } from '../formula';
import { SOURCES } from '../sources';

const heat = { tex: '\\dot Q_c', quantity: 'heat', name: 'heat from the charge air' } as const;
const outlet = { tex: 'T_3', quantity: 'temperature', name: 'charge air to the engine' } as const;
const inlet = { tex: 'T_2', quantity: 'temperature', name: 'compressor outlet' } as const;
const liquidIn = {
  tex: 'T_{l,in}',
  quantity: 'temperature',
  name: 'liquid into the charge cooler',
} as const;

export const chargeHeat = defineFormula({
  id: 'charge.heat',
  expr: 'eps * C_min * (T_2 - T_l)',
  gives: heat,
  terms: {
    eps: { tex: '\\varepsilon', quantity: 'ratio', name: 'effectiveness of the charge cooler' },
    C_min: { tex: 'C_{min}', quantity: 'conductance', name: 'smaller capacity rate' },
    T_2: inlet,
    T_l: liquidIn,
  },
  source: SOURCES.kaysLondon,
});

export const chargeOutlet = defineFormula({
  id: 'charge.outlet',
  expr: 'T_2 - Q / C_a',
  gives: outlet,
  terms: {
    T_2: inlet,
    Q: heat,
    C_a: { tex: 'C_a', quantity: 'conductance', name: 'capacity rate of the air' },
  },
  source: SOURCES.energyBalance,
});

export const intakeAboveLiquid = defineFormula({
  id: 'charge.intake-above-liquid',
  expr: 'T_3 - T_l',
  gives: {
    tex: '\\Delta T_{3l}',
    quantity: 'temperatureDifference',
    name: 'charge air above the liquid',
  },
  terms: { T_3: outlet, T_l: liquidIn },
  source: SOURCES.definition,
});

export const coolantRise = defineFormula({
  id: 'charge.coolant-rise',
  expr: 'Q / (rho * V * c_p)',
  gives: {
    tex: '\\Delta T_l',
    quantity: 'temperatureDifference',
    name: 'rise of the liquid in one pass',
  },
  terms: {
    Q: heat,
    rho: { tex: '\\rho', quantity: 'density', name: 'density of the liquid' },
    V: { tex: '\\dot V', quantity: 'volumeFlow', name: 'liquid flow' },
    c_p: { tex: 'c_p', quantity: 'specificHeat', name: 'specific heat of the liquid' },
  },
  source: SOURCES.energyBalance,
});
