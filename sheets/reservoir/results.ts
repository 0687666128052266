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
    0.5: ['settles-half', 'with half the liquid'],
    1: ['settles', 'with the present liquid'],
    2: ['settles-double', 'with double the liquid'],
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
    {
      ...common,
      id: 'time-constant',
      name: 'Time constant after the pull',
      symbol: '\\tau',
      value: pull?.timeConstant ?? null,
      quantity: 'time',
    },
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

/** Settled temperatures at three volumes: the same number three times, found three times. */
export function settledResults(side: Side, study: Study): Result[] {
  return VOLUME_FACTORS.map((factor) => {
    const [id, words] = FACTOR_WORD[factor];
    const settled = runOf(study, factor)?.settled;
    const value = settled?.status === 'balanced' ? settled.temperatures.reservoir : null;
    return {
      id,
      name: `Reservoir settles ${words}`,
      symbol: 'T_\\infty',
      value,
      absent: 'no balance in this duty',
      quantity: 'temperature',
      differenceQuantity: 'temperatureDifference',
      better: 'lower',
      ...(value !== null && { state: stateBelow(value, side.limits.reservoir) }),
    };
  });
}

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
