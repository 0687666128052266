/** Results of the loop balance: the duty shown in full, the other duties by their temperatures. */
import type { Side } from '$lib/job/evaluate';
import { stateAbove, stateBelow } from '$lib/solver/loop/limits';
import type { DutyId, SteadySolution } from '$lib/solver/loop/types';
import type { Result } from '../types';

const DUTY_WORD: Readonly<Record<DutyId, string>> = {
  traffic: 'traffic',
  cruise: 'cruise',
  pull: 'a pull held',
};

const NO_AIR = 'heat is stated outright, so the air is not known';

/** The duty shown, in full. */
export function mainResults(s: SteadySolution, { limits }: Side): Result[] {
  return [
    {
      id: 'charge-out',
      name: 'Charge air to the engine',
      symbol: 'T_3',
      value: s.chargeOut,
      absent: NO_AIR,
      quantity: 'temperature',
      differenceQuantity: 'temperatureDifference',
      better: 'lower',
      ...(s.chargeOut !== null && { state: stateBelow(s.chargeOut, limits.charge) }),
    },
    {
      id: 'reservoir',
      name: 'Reservoir',
      symbol: 'T_t',
      value: s.temperatures.reservoir,
      quantity: 'temperature',
      differenceQuantity: 'temperatureDifference',
      better: 'lower',
      state: stateBelow(s.temperatures.reservoir, limits.reservoir),
    },
    {
      id: 'flow',
      name: 'Liquid flow',
      symbol: '\\dot V',
      value: s.operating.flow,
      quantity: 'volumeFlow',
      better: 'higher',
    },
    {
      id: 'charge-heat',
      name: 'Heat from the charge air',
      symbol: '\\dot Q_c',
      value: s.ledger.charge,
      quantity: 'heat',
    },
    {
      id: 'front-heat',
      name: 'Heat given off by the front exchanger',
      symbol: '\\dot Q_f',
      value: s.front.heat,
      quantity: 'heat',
    },
    {
      id: 'front-conductance',
      name: 'Front exchanger, heat per degree above ambient',
      symbol: 'G',
      value: s.front.conductanceToAmbient,
      quantity: 'conductance',
      better: 'higher',
    },
    {
      id: 'charge-cooler-effectiveness',
      name: 'Charge cooler effectiveness',
      symbol: '\\varepsilon_c',
      value: s.chargeCooler?.effectiveness ?? null,
      absent: NO_AIR,
      quantity: 'percent',
      better: 'higher',
    },
    {
      id: 'face-velocity',
      name: 'Air through the face of the front exchanger',
      symbol: 'v_f',
      value: s.air.meanFaceVelocity,
      quantity: 'faceVelocity',
      better: 'higher',
    },
    {
      id: 'suction-margin',
      name: 'Suction head to spare at the pump',
      symbol: '\\Delta NPSH',
      value: s.margins.suction,
      quantity: 'head',
      better: 'higher',
      state: stateAbove(s.margins.suction, 0, 'head'),
    },
    {
      id: 'boiling-margin',
      name: 'Hottest liquid below boiling',
      symbol: '\\Delta T_b',
      value: s.margins.boiling,
      quantity: 'temperatureDifference',
      better: 'higher',
      state: stateAbove(s.margins.boiling, 0, 'temperature'),
    },
    {
      id: 'freezing-margin',
      name: 'Coldest liquid above freezing',
      symbol: '\\Delta T_f',
      value: s.margins.freezing,
      quantity: 'temperatureDifference',
      state: stateAbove(s.margins.freezing, 0, 'temperature'),
    },
  ];
}

/** Temperatures of every duty, so that a change is judged where it matters and where it hurts. */
export function dutyResults({ steady, limits }: Side): Result[] {
  return (['traffic', 'cruise', 'pull'] as const).flatMap((duty) => {
    const outcome = steady[duty];
    const s = outcome.ok ? outcome.value : null;
    const absent = s ? NO_AIR : 'this duty could not be solved';
    const charge = s?.chargeOut ?? null;
    const tank = s?.temperatures.reservoir ?? null;
    const common = {
      absent,
      quantity: 'temperature',
      differenceQuantity: 'temperatureDifference',
      better: 'lower',
    } as const;
    return [
      {
        ...common,
        id: `${duty}.charge-out`,
        name: `Charge air to the engine, ${DUTY_WORD[duty]}`,
        symbol: 'T_3',
        value: charge,
        ...(charge !== null && { state: stateBelow(charge, limits.charge) }),
      },
      {
        ...common,
        id: `${duty}.reservoir`,
        name: `Reservoir, ${DUTY_WORD[duty]}`,
        symbol: 'T_t',
        value: tank,
        ...(tank !== null && { state: stateBelow(tank, limits.reservoir) }),
      },
    ];
  });
}
