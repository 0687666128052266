/** The invented log that ships is what its maker makes, and it says that it is invented. */
import { readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { evaluate } from '$lib/job/evaluate';
import { demoJob } from '../sheets/jobs';
import { demoLog } from './demoLog';

const FILE = 'static/demo-log.csv';

describe('the invented log', () => {
  // The demonstration job's own loop; MAKE_DEMO_LOG=1 writes the file anew.
  const made = demoLog(evaluate(demoJob()).asFound.loop);
  if (process.env.MAKE_DEMO_LOG) writeFileSync(FILE, made);

  it('ships as made', () => {
    expect(readFileSync(FILE, 'utf8') === made).toBe(true);
  });
  it('says so in its first line and is small', () => {
    expect(made.split('\r\n')[0]).toMatch(/^# Invented log/);
    expect(made.length).toBeLessThan(300_000);
  });
});
