/** Results of the plan of instruments. */
import type { Result } from '../types';
import { failed, missing } from './checks';
import * as plan from '$lib/solver/instruments/plan/formulas';
import type { Study } from './study';

const NO_DROP = 'the loop shows no drop in this duty';

export function results(study: Study): Result[] {
  const { air, heat, checks, heatWanted, probe } = study;
  const left = missing(checks).length;
  const off = failed(checks).length;
  return [
    {
      id: 'checks-missing',
      name: 'Checks still to make',
      symbol: 'n',
      value: left,
      quantity: 'count',
      better: 'lower',
    },
    {
      id: 'checks-off',
      name: 'Checks that came out off',
      symbol: 'n_x',
      value: off,
      quantity: 'count',
      better: 'lower',
      state: off === 0 ? 'ok' : 'over',
    },
    {
      id: 'boil-point',
      name: 'Water boils here at',
      symbol: 'T_b',
      value: air.ok ? air.value.boilPoint : null,
      absent: 'the pressure of the air is not known',
      quantity: 'temperature',
    },
    {
      id: 'pair',
      name: 'Two probes may disagree by',
      symbol: 'u_\\Delta',
      value: plan.pairPlusMinus.value({ u_T: probe }),
      quantity: 'temperatureDifference',
      better: 'lower',
    },
    {
      id: 'drop',
      name: 'Drop to be read',
      symbol: '\\Delta T_f',
      value: heat?.drop ?? null,
      absent: NO_DROP,
      quantity: 'temperatureDifference',
    },
    {
      id: 'heat-share',
      name: 'Heat by flow and drop, ±',
      symbol: 'x_Q',
      value: heat?.share ?? null,
      absent: NO_DROP,
      quantity: 'percent',
      better: 'lower',
      ...(heat && { state: heat.share <= heatWanted ? 'ok' : 'over' }),
    },
    {
      id: 'probe-wanted',
      name: 'Each probe must be good to ±',
      symbol: 'u_w',
      value: heat?.wanted ?? null,
      absent: heat ? 'no probe is good enough: the flow alone is less sure' : NO_DROP,
      quantity: 'temperatureDifference',
    },
  ];
}
