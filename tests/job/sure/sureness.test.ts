import { describe, expect, it } from 'vitest';
import { applyEdit, setPm } from '$lib/job/edit';
import { evaluate } from '$lib/job/evaluate';
import { doubts, finished, sureness, surenessKey, type StudySize } from '$lib/job/sure/sureness';
import { unsurePaths } from '$lib/job/sure/surenessInputs';
import { emptyJob, type Job } from '$lib/job/types';
import { spread, squaredCorrelation } from '$lib/solver/uncertainty/propagate';

const edit = (job: Job, path: string, text: string, side: 'asFound' | 'candidate' = 'asFound') =>
  applyEdit(job, side, path, text).job;
const pm = (job: Job, path: string, text: string, side: 'asFound' | 'candidate' = 'asFound') =>
  setPm(job, side, path, text).job;

const SIZE: StudySize = { draws: 256, samples: 32, repetitions: 4 };
const hot = pm(edit(emptyJob(), 'site.ambient', '95 °F'), 'site.ambient', '6 °F');
const of = (job: Job, side: 'asFound' | 'candidate' = 'asFound') =>
  finished(sureness(evaluate(job)[side]!, SIZE));
const doubtsOf = (job: Job) => finished(doubts(evaluate(job).asFound, 'cruise', SIZE))!;

describe('how sure a side is', () => {
  it('says nothing where nothing has a ±', () => {
    expect(of(emptyJob())).toBeNull();
    expect(finished(doubts(evaluate(emptyJob()).asFound, 'cruise', SIZE))).toBeNull();
  });

  it('one unsure input: half its ± is the standard deviation that goes through', () => {
    const study = of(hot)!;
    expect(study.inputs).toEqual(['site.ambient']);
    const [doubt] = doubtsOf(hot).shares!;
    // Few draws: their own error is told beside them.
    expect(Math.abs(doubt!.first - 1)).toBeLessThan(5 * doubt!.firstError + 0.01);
    expect(Math.abs(doubt!.total - 1)).toBeLessThan(5 * doubt!.totalError + 0.01);
    // The slope of the settled temperature in ambient, by two loops that differ in it alone.
    const at = (text: string) => {
      const outcome = evaluate(edit(emptyJob(), 'site.ambient', text)).asFound.steady.cruise;
      if (!outcome.ok) throw new Error(outcome.problem.message);
      return outcome.value.temperatures.reservoir;
    };
    const slope = (at('97 °F') - at('93 °F')) / (4 / 1.8);
    const sd = spread(study.draws['reservoir-cruise'])!.sd;
    expect(sd / ((slope * 3) / 1.8)).toBeCloseTo(1, 2);
  });

  it('an input of another duty has no share, and is not run again and again', () => {
    const { shares, runs } = doubtsOf(pm(hot, 'duty.traffic.power', '3 hp'));
    const traffic = shares!.find(({ path }) => path === 'duty.traffic.power')!;
    expect(Math.abs(traffic.first)).toBeLessThan(1e-8);
    expect(traffic.total).toBeLessThan(1e-8);
    const { samples, repetitions } = SIZE;
    expect(runs).toBeLessThan(samples * repetitions * 4);
  });

  it('what both sides share moves together', () => {
    const planned = edit(hot, 'reservoir.volume', '2.9 gal', 'candidate');
    const [a, b] = [of(planned)!, of(planned, 'candidate')!];
    // Volume does not move where the loop settles: draw by draw the same, as sharply as a draw is settled.
    a.draws['reservoir-cruise'].forEach((value, i) =>
      expect(Math.abs(b.draws['reservoir-cruise'][i]! - value)).toBeLessThan(1e-4),
    );
  });

  it('another part of the candidate draws on its own; the same new part in two candidates together', () => {
    let job = pm(edit(emptyJob(), 'fans.volts', '12 V'), 'fans.volts', '2 V');
    job = pm(edit(job, 'fans.volts', '12.5 V', 'candidate'), 'fans.volts', '2 V', 'candidate');
    const traffic = (j: Job, side: 'asFound' | 'candidate' = 'asFound') => [
      ...of(j, side)!.draws['reservoir-traffic'],
    ];
    const together = (x: number[], y: number[]) =>
      squaredCorrelation(x.map((value, i) => [value, y[i]!]));
    const planned = traffic(job, 'candidate');
    expect(together(traffic(job), planned)).toBeLessThan(0.04);
    const another = edit(job, 'reservoir.volume', '2.9 gal', 'candidate');
    expect(together(planned, traffic(another, 'candidate'))).toBeGreaterThan(0.99);
    const other = edit(job, 'fans.volts', '12.6 V', 'candidate');
    expect(together(planned, traffic(other, 'candidate'))).toBeLessThan(0.04);
  });

  it('depends on no input that only other sheets read, nor on the duty shown', () => {
    const key = (job: Job) => surenessKey(evaluate(job).asFound);
    expect(key(edit(hot, 'view.duty', 'pull'))).toBe(key(hot));
    expect(key(pm(hot, 'site.ambient', '3 °F'))).not.toBe(key(hot));
    expect(unsurePaths([evaluate(hot).asFound])).toEqual(['site.ambient']);
  });

  it('a draw that makes no loop is left out and counted', () => {
    const wide = pm(edit(emptyJob(), 'coolant.share', '55 %'), 'coolant.share', '30 %');
    const study = of(wide)!;
    const lost = study.draws['reservoir-cruise'].filter(Number.isNaN).length;
    expect(study.failed).toBeGreaterThan(0);
    expect(lost).toBe(study.failed);
    expect(study.failed).toBeLessThan(SIZE.draws);
    expect(doubtsOf(wide).shares).toBeNull();
  });
}, 60_000);
