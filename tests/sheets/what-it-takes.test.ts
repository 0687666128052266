import { describe, expect, it } from 'vitest';
import { evaluate } from '$lib/job/evaluate';
import { asked } from '$lib/job/invert/invertEdits';
import { questionPaths } from '$lib/job/invert/invertQuestion';
import type { Job, SideId } from '$lib/job/types';
import { fieldAt } from '$lib/job/fields';
import { chartOptions } from '$lib/kit/plot/build';
import { resultChart, rivalRows, rungRows } from '../../sheets/what-it-takes/charts';
import { content } from '../../sheets/what-it-takes/content';
import { PRESETS, textsOf } from '../../sheets/what-it-takes/presets';
import { studyOf } from '../../sheets/what-it-takes/study';
import { demoJob, edited, inEveryDuty, JOBS } from './jobs';
import { walkContent } from './walk';

const ask = (job: Job, texts: Record<string, string>) => asked(texts)(job);
const said = (job: Job, side: SideId = 'asFound') => content(evaluate(job)[side]!);
const codes = (job: Job, side: SideId = 'asFound') =>
  said(job, side).findings.map(({ code }) => code);
const result = (job: Job, id: string, side: SideId = 'asFound') =>
  said(job, side).results.find((r) => r.id === id)!;
const without = (job: Job): Job => ({ ...job, candidate: null });

describe('questions ready to press', () => {
  it.each(PRESETS)(
    '$id: every line can be rebuilt, on both sides and in both systems',
    (preset) => {
      for (const units of ['US', 'SI'] as const) {
        const base = demoJob();
        const job = ask({ ...base, header: { ...base.header, units } }, textsOf(preset, units));
        const { asFound, candidate } = evaluate(job);
        // Every text was taken.
        for (const key of Object.keys(preset.texts)) {
          expect(asFound.values[`whatItTakes.${key}`]!.why, key).toBeUndefined();
        }
        for (const side of [asFound, candidate!]) {
          expect(walkContent(content(side), units)).toEqual([]);
          expect(content(side).lines.length).toBeGreaterThan(1);
        }
      }
    },
    60_000,
  );

  it('both systems ask the same, to a degree', () => {
    for (const preset of PRESETS) {
      const [us, si] = (['US', 'SI'] as const).map(
        (units) => evaluate(ask(demoJob(), textsOf(preset, units))).asFound.values,
      );
      for (const key of Object.keys(preset.texts)) {
        const path = `whatItTakes.${key}`;
        const off = Math.abs((us![path]!.si ?? 0) - (si![path]!.si ?? 0));
        expect(off, `${preset.id} ${key}`).toBeLessThan(1);
      }
    }
  });
});

describe('what the demonstration is told', () => {
  const core = ask(demoJob(), textsOf(PRESETS[0]!, 'US'));

  it('no exchanger does it, and why; the candidate has room to spare', () => {
    expect(result(core, 'value').value).toBeNull();
    expect(result(core, 'value').absent).toBe('no value can');
    expect(codes(core)).toEqual(expect.arrayContaining(['none', 'largest-step', 'next', 'gap-1']));
    expect(codes(core, 'candidate')).toContain('already');
    // What the candidate may give up is a smaller core than it has.
    const { value } = result(core, 'value', 'candidate');
    expect(value!).toBeLessThan(result(core, 'present', 'candidate').value!);
  });

  it('wire: the joints lose it before any wire does', () => {
    const wire = PRESETS.find(({ id }) => id === 'wire')!;
    expect(codes(ask(demoJob(), textsOf(wire, 'US')))).toEqual(
      expect.arrayContaining(['none', 'joints']),
    );
  });

  it('the reservoir takes away the rise and nothing else', () => {
    const job = ask(demoJob(), {
      input: 'part.reservoir',
      result: 'pull-end',
      kind: 'at-most',
      temperature: '150 °F',
    });
    expect(codes(job)).toEqual(expect.arrayContaining(['none', 'only-the-rise', 'largest-step']));
    // By hand the charge is past the target before the liquid has gained anything.
    const rise = said(job).lines.find(({ id }) => id === 'target.rise-allowed');
    expect(rise?.kind === 'formula' && rise.value).toBeLessThan(0);
  }, 30_000);

  it('with what the value found leaves, both sides of the check agree', () => {
    const job = ask(without(demoJob()), {
      input: 'part.frontSameBuild',
      result: 'charge',
      kind: 'at-most',
      temperature: '140 °F',
    });
    const check = said(job).lines.find(({ id }) => id === 'check')!;
    if (check.kind !== 'balance') throw new Error('no balance');
    expect(check.left.value).toBeCloseTo(check.right.value, 6);
    expect(check.unknown.value).toBe(result(job, 'value').value);
  });
});

describe('plots', () => {
  it.each(PRESETS)(
    '$id: can be drawn, phone and desk, with the target on it',
    (preset) => {
      const { asFound, candidate } = evaluate(ask(demoJob(), textsOf(preset, 'US')));
      const [one, two] = [studyOf(asFound), studyOf(candidate!)];
      const chart = resultChart(one, two);
      expect(chart.limits!.length).toBeGreaterThan(0);
      expect(chart.spots!.some(({ label }) => label === 'now')).toBe(true);
      const [low, high] = chart.x.domain!;
      expect(low).toBeLessThan(high);
      for (const { points } of chart.curves!) {
        for (const [x] of points) expect(x >= low && x <= high).toBe(true);
      }
      for (const width of [340, 900])
        expect(() => chartOptions(chart, 'US', { width, height: 300 })).not.toThrow();
      for (const { found } of [...rungRows(one, two), ...rivalRows(one, two)])
        expect(found).toBeGreaterThanOrEqual(0);
    },
    60_000,
  );
});

describe('states at the edge', () => {
  it.each(Object.keys(JOBS))(
    'every question can be asked of: %s',
    (name) => {
      const job = JOBS[name]!();
      const questions: Record<string, string>[] = [
        { input: 'site.ambient', result: 'reservoir', duty: 'traffic' },
        { input: 'part.hoses', result: 'flow', kind: 'within' },
        { input: 'fans.count', result: 'charge', kind: 'exactly' },
      ];
      for (const texts of questions) {
        const { asFound } = evaluate(ask(job, texts));
        expect(walkContent(content(asFound), 'US')).toEqual([]);
      }
    },
    60_000,
  );

  it('air not known where heat is stated outright', () => {
    const job = edited(demoJob(), inEveryDuty({ by: 'heat' }));
    expect(codes(ask(job, { result: 'charge', input: 'site.ambient' }))).toContain('unsolved');
    expect(codes(ask(job, { result: 'reservoir', input: 'site.ambient' }))).not.toContain(
      'unsolved',
    );
  });

  it('asks only for what the question needs, and every path is a field', () => {
    const paths = (texts: Record<string, string>) =>
      questionPaths(evaluate(ask(demoJob(), texts)).asFound.values);
    expect(paths({ result: 'flow' })).toContain('whatItTakes.flow');
    expect(paths({ result: 'flow' })).not.toContain('whatItTakes.temperature');
    expect(paths({ result: 'peak' })).not.toContain('whatItTakes.duty');
    expect(paths({ input: 'site.ambient' })).not.toContain('whatItTakes.ambient');
    expect(paths({ kind: 'within', result: 'flow' })).toContain('whatItTakes.withinShare');
    for (const path of paths({ result: 'pulls' })) expect(fieldAt(path).path).toBe(path);
  });

  it('a count of pulls is passed by a step, and said to be', () => {
    const job = ask(demoJob(), {
      input: 'duty.pull.power',
      result: 'pulls',
      kind: 'at-least',
      count: '2',
      duty: 'cruise',
    });
    const { value } = result(job, 'value', 'candidate');
    const at = result(job, 'result-found', 'candidate').value;
    if (value === null) expect(at).toBeNull();
    else expect(codes(job, 'candidate')).toContain('jump');
  }, 60_000);
});
