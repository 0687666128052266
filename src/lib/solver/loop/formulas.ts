/** Time to reach a temperature and approach: lines tied by test to lumped.ts and to a plain difference. */
import { defineFormula } from '../formula';
import { SOURCES } from '../sources';

const temperature = (tex: string, name: string) =>
  ({ tex, quantity: 'temperature', name }) as const;
const start = temperature('T_0', 'temperature at the start');
const settled = temperature('T_\\infty', 'temperature at which it settles');
const time = { tex: 't', quantity: 'time', name: 'time' } as const;
const tau = { tex: '\\tau', quantity: 'time', name: 'time constant' } as const;

export const timeToReachFormula = defineFormula({
  id: 'loop.time-to-reach',
  expr: 'tau * log((T_s - T_0) / (T_s - T_1))',
  gives: { ...time, name: 'time until it is reached' },
  terms: { tau, T_s: settled, T_0: start, T_1: temperature('T_1', 'temperature to be reached') },
  source: SOURCES.lumpedCapacity,
});

/** The first number to compare between loops. */
export const approachFormula = defineFormula({
  id: 'loop.approach',
  expr: 'T_res - T_amb',
  gives: {
    tex: '\\Delta T_{app}',
    quantity: 'temperatureDifference',
    name: 'approach: liquid in the reservoir above ambient',
  },
  terms: {
    T_res: temperature('T_{res}', 'liquid in the reservoir'),
    T_amb: temperature('T_{amb}', 'ambient temperature'),
  },
  source: SOURCES.definition,
});
