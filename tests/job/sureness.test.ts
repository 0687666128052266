import { describe, expect, it } from 'vitest';
import { applyEdit, setPm } from '$lib/job/edit';
import { evaluate } from '$lib/job/evaluate';
import { DRAWS, sureness, surenessKey, unsurePaths } from '$lib/job/sureness';
import { emptyJob, type Job } from '$lib/job/types';
import { spread, squaredCorrelation } from '$lib/solver/uncertainty/propagate';

const edit = (job: Job, path: string, text: string, side: 'asFound' | 'candidate' = 'asFound') =>
  applyEdit(job, side, path, text).job;
const pm = (job: Job, path: string, text: string) => setPm(job, 'asFound', path, text).job;

const hot = pm(edit(emptyJob(), 'site.ambient', '95 °F'), 'site.ambient', '6 °F');
const of = (job: Job, side: 'asFound' | 'candidate' = 'asFound') => sureness(evaluate(job)[side]!);

describe('how sure a side is', () => {
  it('says nothing where nothing has a ±', () => expect(of(emptyJob())).toBeNull());

  it('one unsure input: half its ± is the standard deviation that goes through', () => {
    const study = of(hot)!;
    expect(study.inputs).toEqual(['site.ambient']);
    const [doubt] = study.doubts!;
    expect(Math.abs(doubt!.share - 1)).toBeLessThan(0.15); // few draws: its own error is told beside it
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

  it('what both sides share moves together', () => {
    const planned = edit(hot, 'reservoir.volume', '2.9 gal', 'candidate');
    const [a, b] = [of(planned)!, of(planned, 'candidate')!];
    // Volume does not move where the loop settles: draw by draw the same.
    a.draws['reservoir-cruise'].forEach((value, i) =>
      expect(b.draws['reservoir-cruise'][i]!).toBeCloseTo(value, 6),
    );
  });

  it('another part of the candidate draws on its own', () => {
    let job = pm(edit(emptyJob(), 'fans.volts', '12 V'), 'fans.volts', '2 V');
    job = setPm(edit(job, 'fans.volts', '12 V', 'candidate'), 'candidate', 'fans.volts', '2 V').job;
    // An equal text is no change; a different fan is.
    job = setPm(
      edit(job, 'fans.volts', '12.5 V', 'candidate'),
      'candidate',
      'fans.volts',
      '2 V',
    ).job;
    const [a, b] = [of(job)!, of(job, 'candidate')!];
    const x = a.draws['reservoir-traffic'];
    const y = b.draws['reservoir-traffic'];
    expect(squaredCorrelation([...x].map((value, i) => [value, y[i]!]))).toBeLessThan(0.04);
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
    expect(study.failed).toBeLessThan(DRAWS);
    expect(study.doubts).toBeNull();
  });
}, 60_000);
