import { describe, expect, it } from 'vitest';
import { nodeCapacities } from '$lib/solver/loop/thermalMass';
import type { Segment, TransientState } from '$lib/solver/loop/types';
import { coldState, warmUp } from '$lib/solver/loop/warmUp';
import { exampleLoop } from './example';

const DRIVE: readonly Segment[] = [
  { duty: 'cruise', duration: 600 },
  { duty: 'pull', duration: 12 },
  { duty: 'cruise', duration: 300 },
  { duty: 'traffic', duration: 200 },
];
const start = coldState(exampleLoop);
const run = warmUp(exampleLoop, { schedule: DRIVE, start, chargeLimit: 345, recoveryBand: 0.5 });

describe('heat gathered', () => {
  it('less heat given off is what the parts have stored (first law)', () => {
    const capacity = nodeCapacities(exampleLoop, start.reservoir);
    const stored = (Object.keys(capacity) as (keyof TransientState)[]).reduce(
      (sum, node) => sum + capacity[node] * (run.end[node] - start[node]),
      0,
    );
    // The integrator's tolerance: 1e-6 of each temperature, over 15 K of rise.
    expect(Math.abs((run.heatIn - run.heatOut) / stored - 1)).toBeLessThan(1e-4);
  });
  it('agrees with the area under the plotted heat', () => {
    const area = (heat: Float64Array) => {
      let sum = 0;
      for (let i = 1; i < heat.length; i++) {
        sum += ((heat[i]! + heat[i - 1]!) / 2) * (run.history.t[i]! - run.history.t[i - 1]!);
      }
      return sum;
    };
    // Points of the plot are two seconds apart, the metal of a core answers in one: a few per cent of
    // the pulls' share of the heat.
    expect(Math.abs(area(run.history.heatIn) / run.heatIn - 1)).toBeLessThan(0.02);
    expect(Math.abs(area(run.history.heatOut) / run.heatOut - 1)).toBeLessThan(0.02);
  });
});

describe('the segment a drive is judged by', () => {
  const { reservoir, t } = run.history;
  it('is the pull', () => {
    expect(run.hardest).toMatchObject({ index: 1, from: 600, to: 612 });
  });
  it('starts where the history stands', () => {
    expect(run.hardest!.before).toBeCloseTo(reservoir[t.indexOf(600)]!, 9);
  });
  it('peaks at least as high as any plotted point until the next segment ends, and not much higher', () => {
    const plotted = Array.from(reservoir).filter((_, i) => t[i]! >= 600 && t[i]! <= 912);
    const highest = Math.max(...plotted);
    expect(run.hardest!.peak).toBeGreaterThanOrEqual(highest - 1e-9);
    expect(run.hardest!.peak - highest).toBeLessThan(0.05);
  });
  it('does not exist where no time passed', () => {
    const frozen = coldState(exampleLoop, 200);
    const none = warmUp(exampleLoop, {
      schedule: DRIVE,
      start: frozen,
      chargeLimit: 345,
      recoveryBand: 1,
    });
    expect(none).toMatchObject({ status: 'freezes', hardest: null, recoveryTime: null });
  });
});
