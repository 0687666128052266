/** Formulas of the fans, as the sheets show them. */
import { defineFormula, type Term } from '../formula';
import { SOURCES } from '../sources';
import { STANDARD_AIR_DENSITY, type FanModel } from './fan';
import { FACE, RHO, SHARE, U } from './terms';

const FAN_FLOW: Term = { tex: 'q', quantity: 'airFlow', name: 'air flow of one fan' };

/** Air through one fan behind a shroud. */
export const fanFlow = defineFormula({
  id: 'airside.fan-flow',
  expr: 'u * A * x / n',
  gives: FAN_FLOW,
  terms: { u: U, A: FACE, x: SHARE, n: { tex: 'n', quantity: 'count', name: 'number of fans' } },
  source: SOURCES.definition,
});

/** Pressure of a running fan up to free delivery. One formula per fan, as it reads that fan's curve. */
export const fanPressure = (fan: Pick<FanModel, 'rated'>) =>
  defineFormula({
    id: 'airside.fan-pressure',
    expr: 's^2 * rho / rho_0 * P_1(q / s)',
    gives: { tex: '\\Delta p_{fan}', quantity: 'airPressure', name: 'pressure of the fan' },
    terms: {
      s: { tex: 's', quantity: 'ratio', name: 'fan speed over rated speed' },
      rho: RHO,
      rho_0: {
        tex: '\\rho_0',
        quantity: 'density',
        name: 'density of standard air',
        fixed: STANDARD_AIR_DENSITY,
      },
      q: FAN_FLOW,
    },
    functions: {
      P_1: {
        tex: 'P_1',
        says: 'pressure of one fan at rated speed in standard air, read from its curve at the flow in brackets',
        takes: ['airFlow'],
        gives: 'airPressure',
        call: (flow) => fan.rated.value(flow),
      },
    },
    source: SOURCES.fanLaws,
  });

/** Pressure a fan takes when air is driven through it past free delivery (0 for a standing fan). */
export const drivenFanPressure = defineFormula({
  id: 'airside.driven-fan-pressure',
  expr: '-(K * rho / 2 * (q^2 - q_0^2) / A_d^2)',
  gives: { tex: '\\Delta p_{fan}', quantity: 'airPressure', name: 'pressure of the fan' },
  terms: {
    K: { tex: '\\zeta', quantity: 'ratio', name: 'loss coefficient of the driven fan' },
    rho: RHO,
    q: FAN_FLOW,
    q_0: { tex: 'q_0', quantity: 'airFlow', name: 'free delivery at this speed' },
    A_d: { tex: 'A_d', quantity: 'area', name: 'swept disc of one fan' },
  },
  source: SOURCES.commonPractice,
});
