/** Lines of a drive with events. */
import { HEAT_OF_FUSION } from '../../fluids/ice';
import { defineFormula, type Term } from '../../formula';
import { SOURCES } from '../../sources';

const energy = (tex: string, name: string): Term => ({ tex, quantity: 'energy', name });
const temperature = (tex: string, name: string): Term => ({ tex, quantity: 'temperature', name });
const time = (tex: string, name: string): Term => ({ tex, quantity: 'time', name });
const mass = (tex: string, name: string): Term => ({ tex, quantity: 'mass', name });

/** What stayed in the loop or left it as steam. */
export const keptInParts = defineFormula({
  id: 'events.kept-in-parts',
  expr: 'E_s + E_h + E_m + E_v',
  gives: energy('\\Sigma E', 'heat taken up'),
  terms: {
    E_s: energy('E_s', 'by warmer liquid and metal'),
    E_h: energy('E_h', 'by warmer liquid on its way in the hoses'),
    E_m: energy('E_m', 'by ice that melted'),
    E_v: energy('E_v', 'carried off by steam'),
  },
  source: SOURCES.energyBalance,
});

/** Heat that melted ice; none of it shows on a thermometer. */
export const meltingHeat = defineFormula({
  id: 'events.melting-heat',
  expr: 'L_f * (m_0 - m_1)',
  gives: energy('E_m', 'heat taken up by melting'),
  terms: {
    L_f: {
      tex: 'L_f',
      quantity: 'latentHeat',
      name: 'heat of fusion of ice, IAPWS R10-06(2009), from memory',
      fixed: HEAT_OF_FUSION,
    },
    m_0: mass('m_0', 'ice when the drive begins'),
    m_1: mass('m_1', 'ice left at its end'),
  },
  source: SOURCES.definition,
});

/** Share of a drive in which something runs. */
export const runningTime = defineFormula({
  id: 'events.running-time',
  expr: 't_on / t',
  gives: { tex: 'x_t', quantity: 'percent', name: 'share of the drive' },
  terms: { t_on: time('t_{on}', 'time it runs'), t: time('t', 'time of the drive') },
  source: SOURCES.definition,
});

/** Mean time of the liquid in the hoses. */
export const hoseTime = defineFormula({
  id: 'events.hose-time',
  expr: 'V_h / Q',
  gives: time('t_h', 'time in the hoses, all four'),
  terms: {
    V_h: { tex: 'V_h', quantity: 'volume', name: 'liquid in the hoses' },
    Q: { tex: '\\dot V', quantity: 'volumeFlow', name: 'flow at the start of the drive' },
  },
  source: SOURCES.definition,
});

/** What the events do to a peak. */
export const peakShift = defineFormula({
  id: 'events.peak-shift',
  expr: 'T_e - T_p',
  gives: { tex: '\\Delta T_e', quantity: 'temperatureDifference', name: 'moved by what happens' },
  terms: {
    T_e: temperature('T_e', 'highest with what happens on the way'),
    T_p: temperature('T_p', 'highest of the plain drive'),
  },
  source: SOURCES.definition,
});
