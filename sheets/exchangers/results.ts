/** Results of both exchangers: the duty shown, and the charge cooler in the other duties. */
import type { Side } from '$lib/job/evaluate';
import { chargeCooling } from '$lib/solver/loop/exchangerCurves';
import { frontDrop } from '$lib/solver/loop/readings';
import { frontChanged } from '$lib/solver/loop/frontWhatIf';
import type { PreparedLoop } from '$lib/solver/loop/prepare';
import type { DutyId, SteadySolution } from '$lib/solver/loop/types';
import type { Result } from '../types';

const NO_AIR = 'heat is stated outright, so the air is not known';
const STANDS = 'the liquid stands still';

/** The duty shown. */
export function mainResults(prepared: PreparedLoop, s: SteadySolution): Result[] {
  const flows = s.status !== 'no-flow';
  const cooler = flows ? s.chargeCooler : null;
  const noCooler = flows ? NO_AIR : STANDS;
  return [
    {
      id: 'charge-effectiveness',
      name: 'Charge cooler, effectiveness',
      symbol: '\\varepsilon_c',
      value: cooler?.effectiveness ?? null,
      absent: noCooler,
      quantity: 'percent',
      better: 'higher',
    },
    {
      id: 'charge-ua',
      name: 'Charge cooler, conductance',
      symbol: 'UA_c',
      value: cooler?.UA ?? null,
      absent: noCooler,
      quantity: 'conductance',
      better: 'higher',
    },
    {
      id: 'charge-heat',
      name: 'Charge cooler, heat into the liquid',
      symbol: '\\dot Q_c',
      value: flows ? s.ledger.charge : null,
      absent: STANDS,
      quantity: 'heat',
    },
    {
      id: 'front-ua',
      name: 'Front exchanger, conductance',
      symbol: 'UA_f',
      value: flows ? s.front.UA : null,
      absent: STANDS,
      quantity: 'conductance',
      better: 'higher',
    },
    {
      id: 'front-per-degree',
      name: 'Front exchanger, heat per degree above the fresh air',
      symbol: 'G',
      value: flows ? frontChanged(prepared, s).conductance : null,
      absent: STANDS,
      quantity: 'conductance',
      better: 'higher',
    },
    {
      id: 'front-heat',
      name: 'Front exchanger, heat given off',
      symbol: '\\dot Q_f',
      value: flows ? s.front.heat : null,
      absent: STANDS,
      quantity: 'heat',
    },
    {
      id: 'front-drop',
      name: 'Front exchanger, drop of the liquid',
      symbol: '\\Delta T_f',
      value: flows ? frontDrop(s) : null,
      absent: STANDS,
      quantity: 'temperatureDifference',
    },
    {
      id: 'front-liquid-share',
      name: 'Front exchanger, drop over the drop possible',
      symbol: '\\varepsilon_l',
      value: flows ? s.front.liquidEffectiveness : null,
      absent: STANDS,
      quantity: 'percent',
      better: 'higher',
    },
    {
      id: 'front-out',
      name: 'Liquid leaving the front exchanger',
      symbol: 'T_{f,out}',
      value: flows ? s.temperatures.frontOut : null,
      absent: STANDS,
      quantity: 'temperature',
      differenceQuantity: 'temperatureDifference',
      better: 'lower',
    },
  ];
}

const DUTIES: readonly (readonly [DutyId, string])[] = [
  ['traffic', 'in traffic'],
  ['cruise', 'at cruise'],
  ['pull', 'in a pull held'],
];

/** One charge cooler, three very different jobs. */
export const dutyResults = ({ steady }: Side): Result[] =>
  DUTIES.map(([duty, words]): Result => {
    const outcome = steady[duty];
    const s = outcome.ok ? outcome.value : null;
    return {
      id: `${duty}.charge-cooling`,
      name: `Charge cooled towards the liquid, ${words}`,
      symbol: '\\varepsilon_a',
      value: s?.chargeCooler && s.status !== 'no-flow' ? chargeCooling(s.chargeCooler) : null,
      absent: !s ? 'this duty could not be solved' : s.status === 'no-flow' ? STANDS : NO_AIR,
      quantity: 'percent',
      better: 'higher',
    };
  });
