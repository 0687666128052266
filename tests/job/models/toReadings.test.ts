import { describe, expect, it } from 'vitest';
import { applyEdit, setPm } from '$lib/job/edit';
import { evaluate } from '$lib/job/evaluate';
import { readJob, writeJob } from '$lib/job/file/file';
import { toConditions, toReadings } from '$lib/job/models/toReadings';
import { emptyJob, type Job } from '$lib/job/types';

const typed = (job: Job, path: string, text: string): Job => {
  const { job: next, problem } = applyEdit(job, 'asFound', path, text);
  if (problem !== undefined) throw new Error(problem);
  return next;
};
const valuesOf = (job: Job) => evaluate(job).asFound.values;

describe('what was measured', () => {
  it('is nothing in an empty job, and no default stands in', () => {
    const values = valuesOf(emptyJob());
    expect(toReadings(values)).toEqual([]);
    expect(values['measured.traffic.reservoir']).toMatchObject({ text: '', assumed: false });
    expect(toConditions(values)).toEqual({ ambientSigma: expect.any(Number) as number, speed: {} });
  });

  it('comes with its ± read as two standard deviations, or with the usual one', () => {
    let job = typed(emptyJob(), 'measured.traffic.volts', '12 V');
    job = setPm(job, 'asFound', 'measured.traffic.volts', '0.4 V').job;
    job = typed(job, 'measured.cruise.reservoir', '140 °F');
    const [volts, tank] = toReadings(valuesOf(job));
    expect(volts).toMatchObject({ channel: 'volts', place: 'traffic', value: 12 });
    expect(volts!.sigma).toBeCloseTo(0.2, 12);
    expect(tank).toMatchObject({ channel: 'reservoir', place: 'cruise' });
    expect(tank!.value).toBeCloseTo(333.15, 9);
    expect(tank!.sigma).toBeGreaterThan(0);
  });

  it('goes away when its blank is emptied; a text that is no value is kept and not used', () => {
    const job = typed(emptyJob(), 'measured.traffic.amps', '5 A');
    expect(toReadings(valuesOf(job))).toHaveLength(1);
    expect(toReadings(valuesOf(typed(job, 'measured.traffic.amps', '')))).toEqual([]);
    const refused = applyEdit(job, 'asFound', 'measured.traffic.amps', 'many');
    expect(refused.problem).toBeTruthy();
    expect(toReadings(valuesOf(refused.job))).toHaveLength(1);
  });

  it('takes ambient, speed and the paper', () => {
    let job = typed(emptyJob(), 'measured.ambient', '80 °F');
    job = typed(job, 'measured.cruise.speed', '30 mph');
    job = typed(job, 'measured.paper', 'blown');
    const values = valuesOf(job);
    expect(toConditions(values)).toMatchObject({ speed: { cruise: 30 * 0.44704 } });
    expect(toConditions(values).ambient).toBeCloseTo(299.817, 3);
    expect(toReadings(values)).toMatchObject([{ channel: 'paper', place: 'once', value: -1 }]);
  });

  it('comes back from a file', () => {
    const job = typed(emptyJob(), 'measured.traffic.flow', '3 gpm');
    expect(readJob(writeJob(job))).toMatchObject({ ok: true, notes: [], job });
  });
});
