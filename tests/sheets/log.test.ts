/** The log sheet by what the job keeps: with the demonstration's log, without one, and in edge states. */
import { describe, expect, it } from 'vitest';
import { setLog } from '$lib/job/edit';
import { evaluate } from '$lib/job/evaluate';
import type { LogRecord } from '$lib/job/log/logRecord';
import type { Job } from '$lib/job/types';
import { sentence } from '$lib/kit/format';
import { content } from '../../sheets/log/content';
import { demoJob, edited, inEveryDuty } from './jobs';

const of = (job: Job) => content(evaluate(job).asFound);
const withLog = (change: Partial<LogRecord>, job = demoJob()) =>
  setLog(job, { ...job.log!, ...change });
const words = (job: Job) =>
  of(job)
    .findings.map((f) => sentence(f.sentence, 'US'))
    .join('\n');
const codes = (job: Job) => of(job).findings.map(({ code }) => code);

describe('with the invented log', () => {
  it('says in plain words what was found', () => {
    const said = words(demoJob()).replace(/\u00a0/g, ' ');
    expect(said).toMatch(/Your front exchanger’s UA is [\d.]+ Btu\/\(h·°F\) ± [\d.]+/);
    expect(said).toMatch(/the pump’s flow fell by 3[\d.]+ %.*before volts at the pump fell by/);
    expect(said).toMatch(/invented/);
    expect(said).toMatch(/2 outliers/);
  });
  it('has lines from flow and drop to heat and its ±', () => {
    const ids = of(demoJob()).lines.map(({ id }) => id);
    for (const id of ['rate', 'drop', 'heat', 'heat-share', 'effectiveness', 'least-ua', 'lead'])
      expect(ids).toContain(id);
  });
  it('says when the spans were changed after the fit', () => {
    expect(codes(demoJob())).not.toContain('outdated');
    const job = demoJob();
    const spans = { ...job.asFound, 'log.spans': { is: [['10 s', '20 s', 'fit']] } };
    expect(codes({ ...job, asFound: spans })).toContain('outdated');
  });
});

// Trade example: 140 °F in, 126 out, 95 ambient, 6.0 gpm of 50/50 glycol. Figures computed apart from this project.
describe('from the log, how much heat, and is the exchanger bad', () => {
  const K = (f: number) => (f + 459.67) / 1.8;
  const level = (mean: number) => ({ mean, deviation: 0, count: 100 });
  const job = edited(
    withLog({
      fit: null,
      events: [],
      means: {
        spans: [{ from: 0, to: 100 }],
        levels: {
          frontIn: level(K(140)),
          frontOut: level(K(126)),
          ambient: level(K(95)),
          flow: level((6 * 3.785411784e-3) / 60),
        },
      },
    }),
    { 'log.temperatureError': '1 °F', 'log.flowError': '10 %' },
  );
  const value = (id: string) => {
    const line = of(job).lines.find((l) => l.id === id)!;
    if (line.kind !== 'formula') throw new Error(id);
    return line.value;
  };
  it('10.6 kW', () => expect(value('heat') / 1000).toBeCloseTo(10.6, 1));
  it('effectiveness 0.311', () => expect(value('effectiveness')).toBeCloseTo(0.311, 3));
  it('424 W/K', () => expect(Math.abs(value('conductance') - 424)).toBeLessThan(1));
  it('± 14 %', () => expect(value('heat-share')).toBeCloseTo(0.14, 2));
});

describe('edge states', () => {
  it('without a log it asks for one, and has no lines', () => {
    const { lines, findings, results } = of(setLog(demoJob(), null));
    expect(lines).toEqual([]);
    expect(findings.map(({ code }) => code)).toEqual(['no-log']);
    for (const { value, absent } of results) expect(value === null && absent).toBeTruthy();
  });
  it('a log that could not be fitted says why and keeps its lines', () => {
    const job = withLog({ fit: null, refused: 'It holds no temperature of the liquid.' });
    expect(words(job)).toMatch(/No fit: It holds no temperature/);
    expect(of(job).lines.some(({ id }) => id === 'heat')).toBe(true);
  });
  it('what cannot be told apart is named, with the driving that would', () => {
    const { fit } = demoJob().log!;
    const job = withLog({
      fit: {
        ...fit!,
        weak: [{ parameters: ['frontUA', 'capacityRate'], deviation: 0.6 }],
        proposals: [{ says: 'Four pulls of 15 s.', worst: 0.1 }],
      },
    });
    expect(words(job)).toMatch(
      /cannot tell apart: UA of the front exchanger and capacity rate.*What would: Four pulls/,
    );
  });
  it('an interval that is not known is told as not held', () => {
    const { fit } = demoJob().log!;
    const estimates = fit!.estimates.map((e) => ({ ...e, low: null, high: null }));
    expect(words(withLog({ fit: { ...fit!, estimates } }))).toMatch(/this log does not hold it/);
  });
  it.each([
    ['heat stated outright', inEveryDuty({ by: 'heat' })],
    ['pump without volts', { 'pump.volts': '0 V' }],
    ['frost in plain water', { 'coolant.kind': 'water', 'site.ambient': '0 °F' }],
  ])('%s: no number is lost', (_name, changes) => {
    const { lines, results } = of(edited(demoJob(), changes));
    for (const line of lines) if (line.kind === 'formula') expect(line.value).toBeTypeOf('number');
    for (const { value } of results) expect(value === null || Number.isFinite(value)).toBe(true);
  });
});
