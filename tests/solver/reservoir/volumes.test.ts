import { describe, expect, it } from 'vitest';
import { prepareLoop } from '$lib/solver/loop/prepare';
import { steady } from '$lib/solver/loop/steady';
import type { Loop } from '$lib/solver/loop/types';
import { coldState, warmUp } from '$lib/solver/loop/warmUp';
import { pullStart } from '$lib/solver/reservoir/pullStart';
import {
  pullRise,
  timeConstantWith,
  volumeRuns,
  withVolume,
  type VolumeQuestion,
} from '$lib/solver/reservoir/volumes';
import { exampleLoop, stoppedLoop } from '../loop/example';

const prepared = prepareLoop(exampleLoop);
const cruise = steady(prepared, 'cruise');
const question: VolumeQuestion = {
  settled: cruise,
  before: cruise,
  pullTime: 10,
  recoveryBand: 1,
  chargeLimit: 340,
};
const runs = volumeRuns(prepared, question, [0.5, 1, 2]);
const [half, present, double] = runs as [(typeof runs)[0], (typeof runs)[0], (typeof runs)[0]];

describe('volume sets the delay, never the end', () => {
  it('half and double the liquid settle where the present does', () => {
    for (const factor of [0.5, 2]) {
      const { temperatures } = steady(withVolume(prepared, factor), 'cruise');
      expect(temperatures).toEqual(cruise.temperatures);
    }
  });
  it('and get there in time: 5 time constants of the largest leave less than 1 % of the way', () => {
    const ambient = exampleLoop.site.ambientTemperature;
    const way = present.settled.temperatures.reservoir - ambient;
    for (const { held, settled } of runs) {
      const { reservoir } = held().end;
      expect(Math.abs(reservoir - settled.temperatures.reservoir)).toBeLessThan(way / 100);
    }
  });
  // C = rho cp V + what does not depend on V, and the conductance does not know the volume.
  it('the time constant is a straight line in the volume', () => {
    const slope = (a: typeof half, b: typeof half) =>
      (b.timeConstant! - a.timeConstant!) / (b.volume - a.volume);
    expect(slope(half, present)).toBeGreaterThan(0);
    expect(timeConstantWith(prepared, cruise, 2)).toBe(double.timeConstant);
    expect(timeConstantWith(stoppedLoop, steady(stoppedLoop, 'cruise'), 2)).toBeNull();
    expect(slope(present, double) / slope(half, present)).toBeCloseTo(1, 9);
  });
  it('more liquid is behind less on the way, and after a pull', () => {
    const at = (run: typeof half, share: number) => {
      const { history, endTime } = run.held();
      return history.reservoir[history.t.findIndex((time) => time >= share * endTime)]!;
    };
    for (const share of [0.05, 0.1, 0.2]) {
      expect(at(half, share)).toBeGreaterThan(at(present, share));
      expect(at(present, share)).toBeGreaterThan(at(double, share));
    }
    expect(half.rise).toBeGreaterThan(present.rise);
    expect(present.rise).toBeGreaterThan(double.rise);
    expect(double.rise).toBeGreaterThan(0);
  });
});

describe('the way back after a pull', () => {
  it('rises to the peak and has come back by three quarters or more where the drawing ends', () => {
    for (const run of runs) {
      const drawn = pullRise(run).map(([, rise]) => rise);
      expect(drawn[0]).toBe(0);
      expect(Math.max(...drawn)).toBeCloseTo(run.rise, 1);
      expect(drawn.at(-1)!).toBeLessThan(run.rise / 4);
    }
  });
});

describe('sharing what was prepared', () => {
  it('gives what preparing anew gives', () => {
    const { reservoir } = exampleLoop;
    const larger: Loop = {
      ...exampleLoop,
      reservoir: {
        ...reservoir,
        liquidVolume: 2 * reservoir.liquidVolume,
        totalVolume: reservoir.totalVolume + reservoir.liquidVolume,
      },
    };
    const shared = withVolume(prepared, 2);
    expect(shared.loop).toEqual(larger);
    const asked = {
      schedule: [{ duty: 'pull', duration: 20 } as const],
      chargeLimit: 340,
      recoveryBand: 1,
    };
    const one = warmUp(shared, { ...asked, start: coldState(shared) });
    const two = warmUp(larger, { ...asked, start: coldState(larger) });
    expect(one.end).toEqual(two.end);
    // The runs also share their forcings; alone, a run is the same to the table's tolerance.
    const alone = volumeRuns(larger, question, [1])[0]!;
    expect(Math.abs(alone.rise - double.rise)).toBeLessThan(1e-4);
    expect(steady(shared, 'pull').temperatures).toEqual(steady(larger, 'pull').temperatures);
  });
});

describe('first moment of a pull', () => {
  it('gives at the settled temperature what the steady solution gives', () => {
    const settled = steady(prepared, 'pull');
    const start = pullStart(prepared, 'pull', settled.temperatures.pumpIn)!;
    expect(start.chargeHeat).toBeCloseTo(settled.ledger.charge, 6);
    expect(start.liquidIn).toBeCloseTo(settled.temperatures.chargeCoolerIn, 9);
    const { effectiveness, C_min, airIn } = start.cooler!;
    expect(effectiveness * C_min * (airIn - start.liquidIn)).toBeCloseTo(start.chargeHeat, 6);
  });
  it('gives more to colder liquid', () => {
    expect(pullStart(prepared, 'pull', 305)!.chargeHeat).toBeGreaterThan(
      pullStart(prepared, 'pull', 325)!.chargeHeat,
    );
  });
  it('does not exist where the liquid stands still', () => {
    expect(pullStart(stoppedLoop, 'pull', 310)).toBeNull();
  });
});
