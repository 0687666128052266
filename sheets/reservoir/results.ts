/** Results of the reservoir: what volume buys, what it cannot, the room it needs. */
import type { Side } from '$lib/job/evaluate';
import { stateBelow } from '$lib/solver/loop/limits';
import type { Result } from '../types';
import type { AirSpace } from './airSpace';
import type { Capacity } from './capacity';
import type { Pull } from './pull';
import { runOf, VOLUME_FACTORS, type Study } from './study';

const FACTOR_WORD: Readonly<Record<(typeof VOLUME_FACTORS)[number], [id: string, words: string]>> =
  {
    0.5: ['time-constant-half', ', half the liquid'],
    1: ['time-constant', ''],
    2: ['time-constant-double', ', double the liquid'],
  };

const NO_PULL = 'the loop has no balance to start a pull from';

export function pullResults(side: Side, study: Study, pull: Pull | null): Result[] {
  const allowed = side.values['reservoirQuestion.allowedRise']!.si!;
  const present = runOf(study, 1);
  const common = { absent: NO_PULL, better: 'lower' } as const;
  return [
    {
      ...common,
      id: 'rise-in-pull',
      name: 'Rise in one pull, nothing given off',
      symbol: '\\Delta T_p',
      value: pull?.rise ?? null,
      quantity: 'temperatureDifference',
      ...(pull && { state: pull.rise > allowed ? 'over' : 'ok' }),
    },
    {
      ...common,
      id: 'rise-followed',
      name: 'Rise of the reservoir, followed in time',
      symbol: '\\Delta T_{p,t}',
      value: present?.rise ?? null,
      quantity: 'temperatureDifference',
    },
    {
      id: 'volume-needed',
      name: 'Liquid needed for the rise allowed',
      symbol: 'V_{need}',
      value: pull && pull.needed > 0 ? pull.needed : null,
      absent: pull ? 'none: metal, cores and hoses hold the heat' : NO_PULL,
      quantity: 'volume',
    },
    ...delayResults(study),
    {
      ...common,
      id: 'recovery-time',
      name: 'Recovery after the pull, followed in time',
      symbol: 't_{rec}',
      value: present?.pull.recoveryTime ?? null,
      absent: present ? 'not within five time constants' : NO_PULL,
      quantity: 'time',
    },
    {
      id: 'residence-time',
      name: 'Residence time',
      symbol: 't_r',
      value: pull?.residence ?? null,
      absent: 'the liquid stands still or finds no balance',
      quantity: 'time',
    },
  ];
}

/** The end, one for every volume. */
export function settledResults({ limits }: Side, study: Study): Result[] {
  const settled = runOf(study, 1)?.settled;
  const value = settled?.status === 'balanced' ? settled.temperatures.reservoir : null;
  return [
    {
      id: 'settles',
      name: 'Reservoir settles, whatever its volume',
      symbol: 'T_\\infty',
      value,
      absent: 'no balance in this duty',
      quantity: 'temperature',
      differenceQuantity: 'temperatureDifference',
      better: 'lower',
      ...(value !== null && { state: stateBelow(value, limits.reservoir) }),
    },
  ];
}

/** The delay, one for each volume. */
const delayResults = (study: Study): Result[] =>
  VOLUME_FACTORS.map((factor) => {
    const [id, words] = FACTOR_WORD[factor];
    return {
      id,
      name: `Time constant after the pull${words}`,
      symbol: '\\tau',
      value: runOf(study, factor)?.timeConstant ?? null,
      absent: study.before ? 'nothing brings the loop back' : NO_PULL,
      quantity: 'time',
      better: 'lower',
    };
  });

export function holdingResults(capacity: Capacity, air: AirSpace): Result[] {
  return [
    {
      id: 'capacity',
      name: 'Heat the whole loop takes up per degree',
      symbol: 'C',
      value: capacity.C,
      quantity: 'heatCapacity',
      better: 'higher',
    },
    { id: 'mass', name: 'Weight of the liquid', symbol: 'm_l', value: air.mass, quantity: 'mass' },
    {
      id: 'growth',
      name: 'Growth of the liquid up to boiling',
      symbol: '\\Delta V',
      value: air.growth,
      quantity: 'volume',
    },
    {
      id: 'air-left',
      name: 'Air space left at boiling',
      symbol: 'V_{a2}',
      value: air.left,
      quantity: 'volume',
      better: 'higher',
      state: air.left < 0 ? 'over' : 'ok',
    },
    {
      id: 'sealed-pressure',
      name: 'Pressure in the closed tank when settled, gauge',
      symbol: 'p_t',
      value: air.gauge,
      absent: 'vented, full, or without a balance',
      quantity: 'gaugePressure',
    },
  ];
}
