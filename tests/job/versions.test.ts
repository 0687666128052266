/** A file of every past version opens, says the same, and is written as the present one. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { evaluate } from '$lib/job/evaluate';
import { readJob, writeJob } from '$lib/job/file/file';
import { FORMAT_VERSION } from '$lib/job/types';

const PAST = Array.from({ length: FORMAT_VERSION - 1 }, (_, i) => i + 1);

describe.each(PAST)('a file of version %i', (version) => {
  const text = readFileSync(`tests/job/versions/${version}.json`, 'utf8');
  const file = JSON.parse(text) as { soakline: number; asFound: Record<string, { is: string }> };

  it('is of that version', () => expect(file.soakline).toBe(version));
  it('opens with everything that was entered', () => {
    const read = readJob(text);
    expect(read.ok).toBe(true);
    if (!read.ok) return;
    expect(read.notes).toEqual([]);
    for (const [path, entry] of Object.entries(file.asFound))
      expect(read.job.asFound[path]).toEqual(entry);
    const again = readJob(writeJob(read.job));
    expect(again.ok && again.job).toEqual(read.job);
  });
  it('can be solved', () => {
    const read = readJob(text);
    if (!read.ok) throw new Error(read.message);
    const { asFound, candidate } = evaluate(read.job);
    for (const side of [asFound, candidate!])
      for (const duty of ['traffic', 'cruise', 'pull'] as const)
        expect(side.steady[duty].ok).toBe(true);
  });
});
