/** Lines of a loop in time, taken as one well-mixed mass: see lumped.ts. */
import { defineFormula, type Term } from '../formula';
import { SOURCES } from '../sources';

const conductance = (tex: string, name: string): Term => ({ tex, quantity: 'conductance', name });
const temperature = (tex: string, name: string): Term => ({ tex, quantity: 'temperature', name });
const difference = (tex: string, name: string): Term => ({
  tex,
  quantity: 'temperatureDifference',
  name,
});

const C: Term = { tex: 'C', quantity: 'heatCapacity', name: 'heat capacity of the whole loop' };
const G = conductance('G_\\Sigma', 'heat given up per degree, all ways together');
const TAU: Term = { tex: '\\tau', quantity: 'time', name: 'time constant' };
const T_END = temperature('T_\\infty', 'temperature it settles at');
const T_START = temperature('T_0', 'temperature at the start');

/** Each kelvin hotter, the loop loses this much more and takes up this much less: `restoring`. */
export const restoringSum = defineFormula({
  id: 'loop.restoring-sum',
  expr: 'G_f + G_c + G_e + G_h + G_t',
  gives: G,
  terms: {
    G_f: conductance('G_f', 'front exchanger, from its liquid inlet to the air'),
    G_c: conductance('G_c', 'charge cooler, to the charge air; 0 where heat is stated'),
    G_e: conductance('G_e', 'engine to charge cooler'),
    G_h: conductance('G_h', 'bay to hoses'),
    G_t: conductance('G_t', 'bay to reservoir'),
  },
  source: SOURCES.energyBalance,
});

/** `timeConstant`. */
export const timeConstantFormula = defineFormula({
  id: 'loop.time-constant',
  expr: 'C / G',
  gives: TAU,
  terms: { C, G },
  source: SOURCES.lumpedCapacity,
});

/** `lumpedTemperature`, written from the end. */
export const approachInTime = defineFormula({
  id: 'loop.approach-in-time',
  expr: 'T_end + (T_0 - T_end) * exp(-t / tau)',
  gives: temperature('T(t)', 'temperature by the closed form'),
  terms: {
    T_end: T_END,
    T_0: T_START,
    t: { tex: 't', quantity: 'time', name: 'time since the start' },
    tau: TAU,
  },
  source: SOURCES.lumpedCapacity,
});

/** What the integration gives beyond the closed form. */
export const integrationGap = defineFormula({
  id: 'loop.integration-gap',
  expr: 'T_int - T_closed',
  gives: difference('\\Delta T_{int}', 'integration above the closed form'),
  terms: {
    T_int: temperature('T_{int}', 'temperature by integration'),
    T_closed: temperature('T(t)', 'temperature by the closed form'),
  },
  source: SOURCES.definition,
});

/** How far something lifted a temperature. */
export const peakRise = defineFormula({
  id: 'loop.peak-rise',
  expr: 'T_peak - T_before',
  gives: difference('\\Delta T_{peak}', 'rise to the peak'),
  terms: {
    T_peak: temperature('T_{peak}', 'highest temperature, by integration'),
    T_before: temperature('T_{before}', 'temperature before'),
  },
  source: SOURCES.definition,
});

const HEAT_IN: Term = { tex: 'E_{in}', quantity: 'energy', name: 'heat that came in' };
const HEAT_OUT: Term = { tex: 'E_{out}', quantity: 'energy', name: 'heat that went out' };

/** Heat one part has taken up: `heatStored`. */
export const heatStoredFormula = defineFormula({
  id: 'loop.heat-stored',
  expr: 'C * (T_1 - T_0)',
  gives: { tex: 'E', quantity: 'energy', name: 'heat stored' },
  terms: {
    C: { tex: 'C', quantity: 'heatCapacity', name: 'heat capacity of the part' },
    T_1: temperature('T_1', 'its temperature at the end'),
    T_0: temperature('T_0', 'its temperature at the start'),
  },
  source: SOURCES.definition,
});

/** What stayed in the loop, from its borders. */
export const heatKept = defineFormula({
  id: 'loop.heat-kept',
  expr: 'E_in - E_out',
  gives: { tex: 'E_{in} - E_{out}', quantity: 'energy', name: 'heat that stayed' },
  terms: { E_in: HEAT_IN, E_out: HEAT_OUT },
  source: SOURCES.energyBalance,
});

const stored = (tex: string, name: string): Term => ({ tex, quantity: 'energy', name });

/** What stayed in the loop, from its parts. */
export const heatStoredSum = defineFormula({
  id: 'loop.heat-stored-sum',
  expr: 'E_t + E_cl + E_cm + E_fl + E_fm',
  gives: stored('\\Sigma E', 'heat stored in the parts'),
  terms: {
    E_t: stored('E_t', 'reservoir'),
    E_cl: stored('E_{cl}', 'liquid to and in the charge cooler'),
    E_cm: stored('E_{cm}', 'metal of the charge cooler'),
    E_fl: stored('E_{fl}', 'liquid to and in the front exchanger'),
    E_fm: stored('E_{fm}', 'metal of the front exchanger'),
  },
  source: SOURCES.energyBalance,
});

/** Distance of a peak to its limit; negative: past it. */
export const belowLimit = defineFormula({
  id: 'loop.below-limit',
  expr: 'T_max - T_peak',
  gives: difference('m_T', 'margin to the limit'),
  terms: {
    T_max: temperature('T_{max}', 'limit'),
    T_peak: temperature('T_{peak}', 'highest temperature, by integration'),
  },
  source: SOURCES.definition,
});
