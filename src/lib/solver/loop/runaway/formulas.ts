/** Lines of the sheet on runaway. */
import { defineFormula } from '../../formula';
import { SOURCES } from '../../sources';

const conductance = (tex: string, name: string) =>
  ({ tex, quantity: 'conductance', name }) as const;
const temperature = (tex: string, name: string) =>
  ({ tex, quantity: 'temperature', name }) as const;
const degrees = (tex: string, name: string) =>
  ({ tex, quantity: 'temperatureDifference', name }) as const;
const flow = (tex: string, name: string) => ({ tex, quantity: 'volumeFlow', name }) as const;
const percent = (tex: string, name: string) => ({ tex, quantity: 'percent', name }) as const;

const ambientNow = temperature('T_{amb}', 'ambient as tried');

export const triedAmbient = defineFormula({
  id: 'runaway.ambient',
  expr: 'T_amb + dT',
  gives: ambientNow,
  terms: {
    T_amb: temperature('T_{amb,0}', 'ambient as described'),
    dT: degrees('\\Delta T_{amb}', 'hotter than described'),
  },
  source: SOURCES.definition,
});

export const triedFlow = defineFormula({
  id: 'runaway.flow',
  expr: 'k * V_p * s',
  gives: flow('\\dot V', 'liquid flow, mean'),
  terms: {
    k: percent('k_V', 'flow knob'),
    V_p: flow('\\dot V_p', 'flow at which pump, loop and suction side agree'),
    s: percent('s_r', 'share of the time for which the pump runs'),
  },
  source: SOURCES.definition,
});

export const warmedBay = defineFormula({
  id: 'runaway.bay',
  expr: 'T_amb + dT_b + g * (T - T_amb)',
  gives: temperature('T_b', 'air in the engine bay'),
  terms: {
    T_amb: ambientNow,
    dT_b: degrees('\\Delta T_b', 'rise stated for the duty'),
    g: percent('g_b', 'bay air per degree of liquid above ambient'),
    T: temperature('T', 'liquid leaving the reservoir'),
  },
  source: SOURCES.commonPractice,
});

/** Drop of the liquid where its heat is given off. */
export const exchangerDrop = defineFormula({
  id: 'runaway.drop',
  expr: 'Q / C',
  gives: degrees('\\Delta T_f', 'drop across the front exchanger'),
  terms: {
    Q: { tex: '\\dot Q_f', quantity: 'heat', name: 'heat leaving at the front exchanger' },
    C: conductance('C_l', 'heat the liquid carries per degree'),
  },
  source: SOURCES.energyBalance,
});

/** Positive: the crossing holds. */
export const holdingSlope = defineFormula({
  id: 'runaway.holding-slope',
  expr: 'S_out - S_in',
  gives: conductance('S', 'heat that pulls the liquid back per degree off the crossing'),
  terms: {
    S_out: conductance('S_{out}', 'rise of the heat leaving per degree of liquid'),
    S_in: conductance('S_{in}', 'rise of the heat entering per degree of liquid'),
  },
  source: SOURCES.energyBalance,
});

/** Room to the last balance, knob by knob. */
export const roomInDegrees = defineFormula({
  id: 'runaway.room-degrees',
  expr: 'x_e - x',
  gives: degrees('\\Delta x', 'room to the last balance'),
  terms: {
    x_e: degrees('x_e', 'ambient above described at which the last balance is lost'),
    x: degrees('x', 'ambient above described, as tried'),
  },
  source: SOURCES.definition,
});

export const roomInPercent = defineFormula({
  id: 'runaway.room-percent',
  expr: 'x_e - x',
  gives: percent('\\Delta x', 'room to the last balance; below zero: downwards'),
  terms: {
    x_e: percent('x_e', 'setting at which the last balance is lost'),
    x: percent('x', 'setting tried'),
  },
  source: SOURCES.definition,
});
