import { describe, expect, it } from 'vitest';
import { pullsBy, reservoirShare, segmentAt, storedByPart } from '$lib/solver/loop/drive';
import { points, readAt } from '$lib/solver/loop/history';
import {
  belowLimit,
  heatKept,
  heatStoredFormula,
  heatStoredSum,
} from '$lib/solver/loop/timeFormulas';
import { thermalMass, totalCapacity } from '$lib/solver/loop/thermalMass';
import type { Segment } from '$lib/solver/loop/types';
import { coldState, warmUp } from '$lib/solver/loop/warmUp';
import { exampleLoop } from './example';

const schedule: Segment[] = [
  { duty: 'cruise', duration: 60 },
  { duty: 'pull', duration: 10 },
  { duty: 'cruise', duration: 50 },
  { duty: 'pull', duration: 10 },
];
const start = coldState(exampleLoop);
const run = warmUp(exampleLoop, { schedule, start, chargeLimit: 345, recoveryBand: 1 });

describe('where in the drive', () => {
  it('finds the segment, an edge with the one that begins', () => {
    expect([0, 59.9, 60, 69.9, 70, 125, 130].map((t) => segmentAt(run, t))).toEqual([
      0, 0, 1, 1, 2, 3, 3,
    ]);
  });
  it('counts pulls begun', () => {
    expect([0, 60, 65, 100, 121].map((t) => pullsBy(run, schedule, t))).toEqual([0, 1, 1, 1, 2]);
  });
});

describe('what the parts hold', () => {
  const parts = storedByPart(exampleLoop, start, run.end);
  it('the nodes hold together what the parts of the loop hold', () => {
    const C = parts.reduce((sum, part) => sum + part.C, 0);
    const total = totalCapacity(thermalMass(exampleLoop, start.reservoir));
    expect(C / total).toBeCloseTo(1, 12);
  });
  it('the lines close: kept at the borders, stored in the parts', () => {
    const [E_t, E_cl, E_cm, E_fl, E_fm] = parts.map(({ C, T_0, T_1 }) =>
      heatStoredFormula.value({ C, T_0, T_1 }),
    ) as [number, number, number, number, number];
    parts.forEach(({ heat }, i) => expect([E_t, E_cl, E_cm, E_fl, E_fm][i]).toBeCloseTo(heat, 6));
    const stored = heatStoredSum.value({ E_t, E_cl, E_cm, E_fl, E_fm });
    const kept = heatKept.value({ E_in: run.heatIn, E_out: run.heatOut });
    expect(Math.abs(kept / stored - 1)).toBeLessThan(1e-4); // the integrator's tolerance
  });
  it('the reservoir’s share is its liquid’s', () => {
    expect(
      reservoirShare([
        { part: 'reservoirLiquid', capacity: 30, liquidVolume: 1 },
        { part: 'chargeMetal', capacity: 70, liquidVolume: 0 },
      ]),
    ).toBeCloseTo(0.3, 12);
  });
});

describe('reading a history', () => {
  it('gives the points themselves, and straight lines between them', () => {
    const sampled = points(run.history, 'reservoir');
    const [a, b] = [sampled[20]!, sampled[21]!];
    expect(readAt(run.history, 'reservoir', a[0])).toBeCloseTo(a[1], 9);
    expect(readAt(run.history, 'reservoir', (a[0] + b[0]) / 2)).toBeCloseTo((a[1] + b[1]) / 2, 9);
  });
  it('holds the ends beyond them', () => {
    expect(readAt(run.history, 'reservoir', -5)).toBe(run.history.reservoir[0]);
    expect(readAt(run.history, 'reservoir', 1e6)).toBe(run.end.reservoir);
  });
});

it('a peak past its limit has a negative margin', () => {
  expect(belowLimit.value({ T_max: 340, T_peak: 345 })).toBe(-5);
});
