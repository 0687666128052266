/** Results of the sheet: the balance as tried, and how firmly it holds. */
import type { Side } from '$lib/job/evaluate';
import { stateAbove, stateBelow } from '$lib/solver/loop/limits';
import { holding, suctionOf } from '$lib/solver/loop/runaway/readings';
import type { Result } from '../types';
import type { Study } from './study';

const NONE = 'no balance as tried';

export function results(side: Side, study: Study | null): Result[] {
  const at = study?.now.found.fromCold ?? null;
  const suction = study && at ? suctionOf(study.now.balance, at) : null;
  return [
    {
      id: 'settles',
      name: 'Liquid leaving the reservoir, as tried',
      symbol: 'T',
      value: at?.T ?? null,
      absent: NONE,
      quantity: 'temperature',
      differenceQuantity: 'temperatureDifference',
      better: 'lower',
      ...(at && { state: stateBelow(at.T, side.limits.reservoir) }),
    },
    {
      id: 'drop',
      name: 'Drop across the front exchanger',
      symbol: '\\Delta T_f',
      value: at?.drop ?? null,
      absent: NONE,
      quantity: 'temperatureDifference',
    },
    {
      id: 'flow',
      name: 'Liquid flow, mean',
      symbol: '\\dot V',
      value: at?.flow ?? null,
      absent: NONE,
      quantity: 'volumeFlow',
      better: 'higher',
    },
    {
      id: 'charge-out',
      name: 'Charge air to the engine, pump running',
      symbol: 'T_3',
      value: at?.chargeOut ?? null,
      absent: at ? 'heat is stated outright, so the air is not known' : NONE,
      quantity: 'temperature',
      differenceQuantity: 'temperatureDifference',
      better: 'lower',
    },
    {
      id: 'holding',
      name: 'Heat that pulls the liquid back, per degree',
      symbol: 'S',
      value: at ? holding(at) : null,
      absent: NONE,
      quantity: 'conductance',
      better: 'higher',
    },
    {
      id: 'boiling-margin',
      name: 'Hottest liquid below boiling',
      symbol: '\\Delta T_b',
      value: at?.boilingMargin ?? null,
      absent: NONE,
      quantity: 'temperatureDifference',
      better: 'higher',
      ...(at && { state: stateAbove(at.boilingMargin, 0, 'temperature') }),
    },
    {
      id: 'suction-margin',
      name: 'Suction head to spare, as tried',
      symbol: '\\Delta NPSH',
      value: suction?.margin ?? null,
      absent: NONE,
      quantity: 'head',
      better: 'higher',
      ...(suction && { state: stateAbove(suction.margin, 0, 'head') }),
    },
    {
      id: 'crossings',
      name: 'Crossings within the liquid’s range',
      symbol: 'n',
      value: study?.now.found.all.length ?? null,
      absent: 'not solved',
      quantity: 'count',
    },
  ];
}
