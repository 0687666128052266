/** Lines of one pull: how far it heats the loop, what volume would hold it, how the loop comes back. */
import { defineFormula, type Term } from '../formula';
import { SOURCES } from '../sources';
import {
  CAPACITY,
  LIQUID_CAPACITY,
  METAL_CAPACITY,
  OTHER_LIQUID,
  TANK_LIQUID,
} from './capacityFormulas';

const HEAT: Term = { tex: '\\dot Q', quantity: 'heat', name: 'heat into the liquid in the pull' };
const TIME: Term = { tex: 't_p', quantity: 'time', name: 'length of the pull' };
const RISE: Term = {
  tex: '\\Delta T_p',
  quantity: 'temperatureDifference',
  name: 'rise in one pull',
};
const FLOW: Term = { tex: '\\dot V', quantity: 'volumeFlow', name: 'liquid flow' };

/** Rise of a loop that gives nothing off while the heat lasts. */
export const riseInPull = defineFormula({
  id: 'reservoir.rise-in-pull',
  expr: 'Q * t / C',
  gives: RISE,
  terms: { Q: HEAT, t: TIME, C: CAPACITY },
  source: SOURCES.lumpedCapacity,
});

/** Liquid in the reservoir that keeps the rise to what is allowed; negative: the metal alone holds it. */
export const volumeForRise = defineFormula({
  id: 'reservoir.volume-for-rise',
  expr: '(Q * t / dT - C_m) / rho_cp - V_o',
  gives: { tex: 'V_{need}', quantity: 'volume', name: 'liquid needed in the reservoir' },
  terms: {
    Q: HEAT,
    t: TIME,
    dT: { tex: '\\Delta T_{all}', quantity: 'temperatureDifference', name: 'rise allowed' },
    C_m: METAL_CAPACITY,
    rho_cp: LIQUID_CAPACITY,
    V_o: OTHER_LIQUID,
  },
  source: SOURCES.lumpedCapacity,
});

/** Time one filling takes to pass the tank once. */
export const residenceTime = defineFormula({
  id: 'reservoir.residence-time',
  expr: 'V_t / Q',
  gives: { tex: 't_r', quantity: 'time', name: 'residence time' },
  terms: { V_t: TANK_LIQUID, Q: FLOW },
  source: SOURCES.definition,
});

/** The same for the share of the flow that mixes. */
export const mixingTime = defineFormula({
  id: 'reservoir.mixing-time',
  expr: 'V_t / ((1 - s) * Q)',
  gives: { tex: 't_m', quantity: 'time', name: 'time the tank takes to mix' },
  terms: {
    V_t: TANK_LIQUID,
    s: { tex: 's_{sc}', quantity: 'percent', name: 'share going straight to the outlet' },
    Q: FLOW,
  },
  source: SOURCES.definition,
});

/** How often the tank's liquid comes round while the pull lasts. */
export const turnovers = defineFormula({
  id: 'reservoir.turnovers',
  expr: 't / t_r',
  gives: { tex: 'n_p', quantity: 'ratio', name: 'turnovers in one pull' },
  terms: { t: TIME, t_r: { tex: 't_r', quantity: 'time', name: 'residence time' } },
  source: SOURCES.definition,
});

/** Time until a rise has decayed into the band, conductance steady. */
export const recovery = defineFormula({
  id: 'reservoir.recovery',
  expr: 'tau * log(dT / dT_band)',
  gives: { tex: 't_{rec}', quantity: 'time', name: 'time to recover' },
  terms: {
    tau: { tex: '\\tau', quantity: 'time', name: 'time constant' },
    dT: RISE,
    dT_band: {
      tex: '\\Delta T_{rec}',
      quantity: 'temperatureDifference',
      name: 'counts as recovered within',
    },
  },
  source: SOURCES.lumpedCapacity,
});
