import { describe, expect, it } from 'vitest';
import { demoJob } from '$lib/job/demo';
import { applyEdit, setPm, setUnits } from '$lib/job/edit';
import { readJob, writeJob } from '$lib/job/file/file';
import {
  dropRevision,
  inputChanges,
  isFull,
  keepRevision,
  movedResults,
  nextMark,
  type ResultKept,
} from '$lib/job/folder/revisions';
import { emptyJob, type Job } from '$lib/job/types';

const WORDS = { date: '2031-04-05', by: 'A. Tester', note: 'first visit' };
const kept = (job: Job, results: readonly ResultKept[] = []) =>
  keepRevision(job, job, WORDS, results);
const state = (job: Job) => ({ asFound: job.asFound, candidate: job.candidate, results: [] });
const edit = (job: Job, path: string, text: string, side: 'asFound' | 'candidate' = 'asFound') => {
  const edited = applyEdit(job, side, path, text);
  expect(edited.problem).toBeUndefined();
  return edited.job;
};

describe('marks', () => {
  it('run A, B … Z, AA, AB', () => {
    const after = (mark: string) => nextMark([{ ...kept(emptyJob()).revisions[0]!, mark }]);
    expect(nextMark([])).toBe('A');
    expect(['A', 'Y', 'Z', 'AZ', 'ZZ'].map(after)).toEqual(['B', 'Z', 'AA', 'BA', 'AAA']);
  });
});

describe('a revision', () => {
  const result = {
    sheet: 'loop-balance',
    id: 'cruise.reservoir',
    name: 'Reservoir, cruise',
    side: 'asFound',
    quantity: 'temperature',
    value: 350.25,
  } as const;

  it('keeps inputs and results, and comes back from the file as it was', () => {
    const job = kept(demoJob(), [result]);
    const [revision] = job.revisions;
    expect(revision).toEqual({
      mark: 'A',
      ...WORDS,
      asFound: demoJob().asFound,
      candidate: demoJob().candidate,
      results: [result],
    });
    const read = readJob(writeJob(job));
    expect(read.ok && read.job.revisions).toEqual(job.revisions);
  });

  it('does not follow later edits', () => {
    const job = edit(kept(demoJob()), 'pump.volts', '12.1 V');
    expect(job.revisions[0]!.asFound['pump.volts']).toEqual(demoJob().asFound['pump.volts']);
  });

  it('is dropped by its mark; a job holds so many and no more', () => {
    let job = demoJob();
    while (!isFull(job)) job = kept(job);
    const full = job.revisions.length;
    expect(kept(job)).toBe(job);
    expect(dropRevision(job, 'B').revisions.map(({ mark }) => mark)).not.toContain('B');
    expect(dropRevision(job, 'B').revisions).toHaveLength(full - 1);
  });
});

describe('inputs changed', () => {
  it('are told from one text to the other, with group and label', () => {
    const before = demoJob();
    const after = edit(before, 'pump.volts', '12.1 V');
    expect(inputChanges(state(before), state(after), 'US')).toEqual([
      {
        path: 'pump.volts',
        side: 'asFound',
        group: 'Pump',
        label: 'Voltage at the pump',
        from: expect.stringMatching(/^10\.9 V/),
        to: expect.stringMatching(/^12\.1 V/),
      },
    ]);
  });

  it('are none between a job and itself, in either unit system, or with the same value in other units', () => {
    const job = demoJob();
    expect(inputChanges(state(job), state(job), 'US')).toEqual([]);
    expect(inputChanges(state(job), state(setUnits(job, 'SI')), 'SI')).toEqual([]);
    // 0.5 in is 12.7 mm exactly (NIST SP 811, App. B).
    const inches = edit(job, 'hose.suction.bore', '0.5 in');
    const metric = edit(job, 'hose.suction.bore', '12.7 mm');
    expect(inputChanges(state(inches), state(metric), 'US')).toEqual([]);
  });

  it('tell a ± that changed', () => {
    const job = demoJob();
    const after = setPm(job, 'asFound', 'pump.volts', '0.5 V').job;
    const [change, ...more] = inputChanges(state(job), state(after), 'US');
    expect(more).toEqual([]);
    expect(change).toMatchObject({ path: 'pump.volts', to: '10.9 V ± 0.5 V' });
  });

  it('tell what the candidate gained and gave up', () => {
    const job = demoJob();
    const { 'pump.volts': _gone, ...changes } = job.candidate!.changes;
    const after = { ...job, candidate: { ...job.candidate!, changes } };
    expect(inputChanges(state(job), state(after), 'US')).toEqual([
      expect.objectContaining({
        path: 'pump.volts',
        side: 'candidate',
        from: '13.2 V ± 0.2 V',
        to: 'as found',
      }),
    ]);
    expect(inputChanges(state(job), state({ ...job, candidate: null }), 'US')).toEqual([
      expect.objectContaining({ side: 'candidate', from: job.candidate!.name, to: 'none' }),
    ]);
  });
});

describe('results moved', () => {
  const at = (value: number | null, more: Partial<ResultKept> = {}): ResultKept => ({
    sheet: 's',
    id: 'flow',
    name: 'Flow',
    side: 'asFound',
    quantity: 'length',
    value,
    ...more,
  });
  const moved = (a: ResultKept[], b: ResultKept[]) =>
    movedResults(a, b, 'SI').map(({ before, after }) => [before, after]);

  it('are told only beyond what their print shows', () => {
    // Four digits are printed: 1.234 m both times, then 1.234 m and 1.236 m.
    expect(moved([at(1.2341)], [at(1.2344)])).toEqual([]);
    expect(moved([at(1.2341)], [at(1.2356)])).toEqual([[1.2341, 1.2356]]);
  });

  it('tell a result that came or went with its reason, not one that only one state knew', () => {
    expect(moved([at(null)], [at(2)])).toEqual([[null, 2]]);
    expect(moved([at(2)], [at(null)])).toEqual([[2, null]]);
    expect(moved([], [at(2)])).toEqual([]);
    expect(moved([at(2)], [])).toEqual([]);
    expect(moved([at(2, { side: 'candidate' })], [at(3)])).toEqual([]);
  });

  it('are told once where two sheets show the same', () => {
    const other = { sheet: 't', id: 'same-flow' };
    expect(moved([at(1), at(1, other)], [at(2), at(2, other)])).toEqual([[1, 2]]);
    expect(moved([at(1), at(5, other)], [at(2), at(2, other)])).toEqual([
      [1, 2],
      [5, 2],
    ]);
  });

  it('pass over the rounding left of a balance', () => {
    expect(moved([at(5e-14, { quantity: 'ratio' })], [at(-2e-13, { quantity: 'ratio' })])).toEqual(
      [],
    );
  });

  it('pass over a quantity that this version does not know', () => {
    expect(moved([at(1, { quantity: 'hue' })], [at(2, { quantity: 'hue' })])).toEqual([]);
  });
});
