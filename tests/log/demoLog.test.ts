/** The invented log that ships is what its maker makes, says that it is invented, and gives what the job keeps. */
import { readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { evaluate } from '$lib/job/evaluate';
import { demoJob } from '../sheets/jobs';
import { demoLog } from './demoLog';
import { demoRecord, SPANS } from './demoRecord';

const FILE = 'static/demo-log.csv';
const JOB = 'static/demo-job.json';

/** Every number to seven digits: what a file needs, and no more. */
const short = (_key: string, value: unknown) =>
  typeof value === 'number' ? Number(value.toPrecision(7)) : value;

describe('the invented log', () => {
  // The demonstration job's own loop; MAKE_DEMO_LOG=1 writes the log and what the job keeps of it anew.
  const made = demoLog(evaluate(demoJob()).asFound.loop);
  const record = demoRecord(demoJob(), made);
  if (process.env.MAKE_DEMO_LOG) {
    writeFileSync(FILE, made);
    const file = JSON.parse(readFileSync(JOB, 'utf8'));
    file.asFound['log.spans'] = {
      is: SPANS.map(({ from, to, use }) => [`${from} s`, `${to} s`, use]),
      from: 'cruise and the first pull; the second set aside',
    };
    file.log = JSON.parse(JSON.stringify(record, short));
    writeFileSync(JOB, `${JSON.stringify(file, null, 2)}\n`);
  }

  it('ships as made', () => {
    expect(readFileSync(FILE, 'utf8') === made).toBe(true);
  });
  it('says so in its first line and is small', () => {
    expect(made.split('\r\n')[0]).toMatch(/^# Invented log/);
    expect(made.length).toBeLessThan(300_000);
  });
  it('gives what the demonstration job keeps of it', () => {
    const kept = demoJob().log!;
    expect(kept.invented).toBe(true);
    expect(kept.channels).toEqual(record.channels);
    expect(kept.events).toHaveLength(record.events.length);
    for (const { name, value } of record.fit!.estimates)
      expect(kept.fit!.estimates.find((e) => e.name === name)!.value / value).toBeCloseTo(1, 2);
  });
});
