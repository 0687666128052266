import { describe, expect, it } from 'vitest';
import { applyEdit, setPm } from '$lib/job/edit';
import { evaluate } from '$lib/job/evaluate';
import { ambientBand, driveBands, headBands } from '$lib/job/sure/surenessBands';
import { emptyJob, type Job } from '$lib/job/types';
import { readAt } from '$lib/solver/loop/history';
import type { BandPoint } from '$lib/solver/uncertainty/band';

const pm = (job: Job, path: string, value: string, text: string) =>
  setPm(applyEdit(job, 'asFound', path, value).job, 'asFound', path, text).job;
const unsure = (kelvin: number) => pm(emptyJob('SI'), 'site.ambient', '35 °C', `${kelvin} K`);
const side = (job: Job) => evaluate(job).asFound;
const width = (band: readonly BandPoint[]) => band.map(([, low, high]) => high - low);

describe('bands', () => {
  it('are none where nothing has a ±', () => {
    expect(driveBands(side(emptyJob()))).toBeNull();
    expect(headBands(side(emptyJob()))).toBeNull();
    expect(ambientBand(side(emptyJob()))).toBeNull();
  });

  it('hold the drive as entered, and are half as wide for half the ±', () => {
    const wide = driveBands(side(unsure(4)))!.reservoir;
    const narrow = driveBands(side(unsure(2)))!.reservoir;
    const run = side(unsure(4)).warmUp;
    if (!run.ok) throw new Error(run.problem.message);
    expect(wide.length).toBeGreaterThan(100);
    for (const [t, low, high] of wide) {
      const value = readAt(run.value.history, 'reservoir', t);
      expect(value).toBeGreaterThanOrEqual(low - 1e-3);
      expect(value).toBeLessThanOrEqual(high + 1e-3);
    }
    const last = width(wide).at(-1)! / width(narrow).at(-1)!;
    expect(Math.abs(last - 2)).toBeLessThan(0.05);
    // Ambient by itself: the loop rises with it, two standard deviations either way.
    expect(width(wide).at(-1)!).toBeGreaterThan(3);
    expect(width(wide).at(-1)!).toBeLessThan(12);
  });

  it('of pump and loop cross where the loop settles', () => {
    const job = pm(emptyJob('SI'), 'hose.suction.bore', '19 mm', '2 mm');
    const bands = headBands(side(job))!;
    const settled = side(job).steady.cruise;
    if (!settled.ok) throw new Error(settled.problem.message);
    const { flow } = settled.value.operating;
    const near = (band: readonly BandPoint[]) => band.findLast(([x]) => x <= flow)!;
    // The pump does not depend on the hose but through the liquid's warmth; the loop does.
    expect(near(bands.loop)[2] - near(bands.loop)[1]).toBeGreaterThan(
      10 * (near(bands.pump)[2] - near(bands.pump)[1]),
    );
  });

  it('against the day: rises with it, holds the loop as entered', () => {
    const job = pm(unsure(1), 'soak.engineConductance', '30 W/K', '10 W/K');
    const band = ambientBand(side(job))!.reservoir;
    const middles = band.map(([, , , middle]) => middle);
    expect(middles).toEqual(middles.toSorted((a, b) => a - b));
    const settled = side(job).steady.cruise;
    if (!settled.ok) throw new Error(settled.problem.message);
    const T = settled.value.temperatures.reservoir;
    const day = 35 + 273.15;
    const above = band.find(([x]) => x >= day)!;
    const below = band.findLast(([x]) => x <= day)!;
    expect(T).toBeGreaterThan(below[1]);
    expect(T).toBeLessThan(above[2]);
  });
}, 60_000);
