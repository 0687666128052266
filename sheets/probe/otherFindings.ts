/** How finely the circuit reads; which probe of a lot to reject. */
import { ICE_POINT } from '$lib/solver/instruments/probe/boilPoint';
import { countStep } from '$lib/solver/instruments/probe/fineness';
import { q, say, type Finding } from '../types';
import type { Lot, Study } from './study';

/** A step of the reading that a technician sees jump, K (1 °F). */
const COARSE = 1 / 1.8;

export function coarseness({ job, setup, trim }: Study): Finding[] {
  const R_b = trim?.bias ?? setup?.divider.bias ?? job.setup.divider.bias;
  const step = (T: number) => countStep(job.setup, R_b, T);
  const boil = step(job.boilPoint);
  const ice = step(ICE_POINT);
  return [
    boil > COARSE
      ? {
          code: 'coarse',
          level: 'watch',
          sentence: say`At the boil one count is ${q(boil, 'temperatureDifference')}: the reading jumps by it, and no trim makes it finer. A smaller bias with a table to match would.`,
        }
      : {
          code: 'fine',
          level: 'info',
          sentence: say`One count is ${q(ice, 'temperatureDifference')} in ice and ${q(boil, 'temperatureDifference')} at the boil.`,
        },
  ];
}

export const lotFindings = ({ lot }: Study): Finding[] =>
  (['ice', 'boil'] as const).flatMap((bath) => {
    const compared = lot[bath];
    return compared ? [lotFinding(bath, compared)] : [];
  });

function lotFinding(bath: 'ice' | 'boil', { probes, rows, spread, median }: Lot): Finding {
  const where = bath === 'ice' ? 'in ice' : 'at the boil';
  const name = (p: (typeof probes)[number]) => `number ${rows[p.index]! + 1}`;
  const rejected = probes.filter((p) => p.reject);
  const apart = probes.filter((p) => p.apart && !p.reject);
  const spreadWords = say`The probes spread over ${q(spread, 'temperatureDifference')} ${where}, round ${q(median, 'temperature')}.`;
  if (rejected.length > 0 && probes.length === 2) {
    return {
      code: `lot-${bath}`,
      level: 'act',
      sentence: [
        ...spreadWords,
        ...say` Two probes cannot say which of them is wrong: add a third.`,
      ],
    };
  }
  if (rejected.length > 0) {
    return {
      code: `lot-${bath}`,
      level: 'act',
      sentence: [...spreadWords, ` Reject ${rejected.map(name).join(', ')}.`],
    };
  }
  return {
    code: `lot-${bath}`,
    level: apart.length > 0 ? 'watch' : 'good',
    sentence: [
      ...spreadWords,
      apart.length > 0
        ? ` All are within what you allow, but ${apart.map(name).join(', ')} stands apart from the rest.`
        : ' All may go into one loop.',
    ],
  };
}
