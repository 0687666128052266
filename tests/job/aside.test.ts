/** Candidates put aside and taken up again. */
import { describe, expect, it } from 'vitest';
import {
  applyEdit,
  branchCandidate,
  dropAside,
  nameCandidate,
  putAside,
  setUnits,
  takeUp,
} from '$lib/job/edit';
import { evaluate, evaluateAside } from '$lib/job/evaluate';
import { readJob, writeJob } from '$lib/job/file/file';
import { emptyJob, type Job } from '$lib/job/types';

const planned = (job: Job, path: string, text: string) =>
  applyEdit(job, 'candidate', path, text).job;
const names = (job: Job) => [job.candidate?.name ?? null, ...job.aside.map(({ name }) => name)];

const three = (): Job => {
  let job = nameCandidate(planned(emptyJob(), 'hose.back.bore', '1 in'), 'hose');
  job = nameCandidate(planned(branchCandidate(job), 'pump.volts', '12 V'), 'hose and volts');
  job = putAside(job);
  return nameCandidate(planned(job, 'reservoir.volume', '1.1 gal'), 'tank');
};

describe('candidates put aside', () => {
  it('keep their order and their changes', () => {
    const job = three();
    expect(names(job)).toEqual(['tank', 'hose', 'hose and volts']);
    expect(Object.keys(job.aside[1]!.changes).sort()).toEqual(['hose.back.bore', 'pump.volts']);
  });
  it('change places with the one taken up', () => {
    expect(names(takeUp(three(), 0))).toEqual(['hose', 'tank', 'hose and volts']);
    expect(takeUp(three(), 9)).toEqual(three());
  });
  it('are taken up where there is none, and can be dropped', () => {
    const job = takeUp(putAside(three()), 0);
    expect(names(job)).toEqual(['hose', 'hose and volts', 'tank']);
    expect(names(dropAside(job, 0))).toEqual(['hose', 'tank']);
  });
  it('a variant gets a name of its own', () => {
    const job = branchCandidate(branchCandidate(takeUp(three(), 0)));
    expect(new Set(names(job)).size).toBe(names(job).length);
  });
  it('travel in the file', () => {
    const read = readJob(writeJob(three()));
    expect(read).toMatchObject({ ok: true, job: three() });
  });
  it('are solved like any other side, and keep what was solved', () => {
    const job = three();
    const [hose] = evaluateAside(job);
    const other = takeUp(job, 0);
    expect(hose!.loop).toEqual(evaluate(other).candidate!.loop);
    expect(evaluateAside(applyEdit(job, 'candidate', 'fans.volts', '12 V').job)[0]).toBe(hose);
  });
  it('bare numbers get their unit when the job changes units', () => {
    const job = putAside(planned(emptyJob('US'), 'reservoir.volume', '1.1'));
    const { volume } = { volume: evaluateAside(job)[0]!.loop.reservoir.liquidVolume };
    expect(evaluateAside(setUnits(job, 'SI'))[0]!.loop.reservoir.liquidVolume).toBeCloseTo(
      volume,
      12,
    );
  });
});
