import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdit, setNote } from '$lib/job/edit';
import { evaluate } from '$lib/job/evaluate';
import { readJob, writeJob } from '$lib/job/file/file';
import { emptyJob, type Job } from '$lib/job/types';

const sample = (): Job => {
  let job: Job = emptyJob('US');
  job = applyEdit(job, 'asFound', 'pump.volts', '12,1 V').job;
  job = applyEdit(job, 'asFound', 'pump.curve', [
    ['0 gpm', '9 ft'],
    ['9 gpm', '0 ft'],
  ]).job;
  job = applyEdit(job, 'asFound', 'fans.volts', 'loud').job;
  job = applyEdit(job, 'candidate', 'hose.back.bore', '−12 AN').job;
  job = applyEdit(job, 'asFound', 'title.vehicle', 'Grey wagon “№ 3”').job;
  return setNote(job, 'job', 'Line one\nline two');
};

const read = (text: string) => readJob(text);

describe('the file', () => {
  it('comes back as it was written, drafts included', () => {
    const job = sample();
    const result = read(writeJob(job));
    expect(result).toMatchObject({ ok: true, notes: [] });
    if (result.ok) {
      expect(result.job).toEqual(job);
      expect(writeJob(result.job)).toBe(writeJob(job));
      expect(evaluate(result.job).asFound.loop).toEqual(evaluate(job).asFound.loop);
    }
  });
  it('has the same text whatever the order of the edits', () => {
    const a = applyEdit(
      applyEdit(emptyJob(), 'asFound', 'pump.volts', '12 V').job,
      'asFound',
      'site.ambient',
      '80 F',
    ).job;
    const b = applyEdit(
      applyEdit(emptyJob(), 'asFound', 'site.ambient', '80 F').job,
      'asFound',
      'pump.volts',
      '12 V',
    ).job;
    expect(writeJob(a)).toBe(writeJob(b));
  });
  it('keeps what it does not know, and says so', () => {
    const file = JSON.parse(writeJob(sample())) as Record<string, unknown> & { asFound: object };
    file.telemetry = { rows: [1, 2] };
    file.asFound = { ...file.asFound, 'winch.speed': { is: '3', colour: 'red' } };
    const result = read(JSON.stringify(file));
    expect(result.ok).toBe(true);
    if (!result.ok) return;
    expect(result.notes).toHaveLength(2);
    const again = JSON.parse(writeJob(result.job)) as typeof file;
    expect(again.telemetry).toEqual(file.telemetry);
    expect(again.asFound).toMatchObject({ 'winch.speed': { is: '3', colour: 'red' } });
  });
});

/** The right shape as a rule, anything now and then. */
const mostly = (right: fc.Arbitrary<unknown>) =>
  fc.oneof({ weight: 6, arbitrary: right }, { weight: 1, arbitrary: fc.jsonValue() });

describe('a bad file', () => {
  const good = writeJob(sample());
  const changed = (change: (file: Record<string, never>) => void) => {
    const file = JSON.parse(good) as Record<string, never>;
    change(file);
    return JSON.stringify(file);
  };
  it.each<[string, string, string]>([
    ['empty', '', 'empty'],
    ['blank', '  \n', 'empty'],
    ['not JSON', 'hello', 'not-json'],
    ['a web page', '<!doctype html><p>', 'not-json'],
    ['other JSON', '{"a":1}', 'not-a-job'],
    ['a list', '[]', 'not-a-job'],
    ['null', 'null', 'not-a-job'],
    ['newer', changed((f) => Object.assign(f, { soakline: 99 })), 'newer-version'],
    ['odd version', changed((f) => Object.assign(f, { soakline: '1' })), 'not-a-job'],
    ['no units', changed((f) => Object.assign(f.header!, { units: 'imperial' })), 'wrong-shape'],
    [
      'number for text',
      changed((f) => Object.assign(f.asFound!, { 'pump.volts': { is: 12 } })),
      'wrong-shape',
    ],
    [
      'prototype',
      good.replace('"asFound": {', '"asFound": {"__proto__": {"is": "1"},'),
      'forbidden-key',
    ],
    [
      'constructor',
      changed((f) => Object.assign(f.asFound!, { constructor: { is: '1' } })),
      'forbidden-key',
    ],
    ['nested', `{"soakline":1,"x":${'['.repeat(100)}${']'.repeat(100)}}`, 'forbidden-key'],
    ['huge', `"${'x'.repeat(40_000_001)}"`, 'too-large'],
  ])('%s', (_, text, code) => {
    const result = read(text);
    expect(result).toMatchObject({ ok: false, code });
    if (!result.ok) {
      expect(result.message.length).toBeGreaterThan(10);
      expect(result.message).not.toContain('\n');
    }
  });
  it('names the place of a wrong shape', () => {
    const result = read(changed((f) => Object.assign(f.asFound!, { 'pump.volts': { is: 12 } })));
    expect(!result.ok && result.message).toContain('asFound.pump.volts');
  });
  it('cut short anywhere is refused as cut short', () => {
    for (let end = 1; end < good.trimEnd().length; end += 7) {
      expect(read(good.slice(0, end)), `${end}`).toMatchObject({ ok: false, code: 'truncated' });
    }
  });
  it('never throws', () => {
    fc.assert(fc.property(fc.string(), (text) => void read(text)));
    fc.assert(fc.property(fc.json(), (text) => void read(text)));
    const shape = fc.record(
      {
        soakline: fc.constantFrom<unknown>(1, 1, 2, 2, 2, 3, 0, null, '1'),
        header: mostly(fc.constant({ units: 'US', paper: 'A4' })),
        asFound: mostly(
          fc.dictionary(
            fc.constantFrom(
              'pump.volts',
              'pump.curve',
              'schedule',
              'coolant.kind',
              'x',
              'toString',
            ),
            fc.record(
              { is: fc.oneof(fc.string(), fc.array(fc.array(fc.string()))) },
              { requiredKeys: [] },
            ),
          ),
        ),
        candidate: mostly(fc.constant(null)),
      },
      { requiredKeys: ['soakline', 'header', 'asFound', 'candidate'] },
    );
    let accepted = 0;
    fc.assert(
      fc.property(shape, (file) => {
        const result = read(JSON.stringify(file));
        if (!result.ok) return;
        accepted += 1;
        // What was accepted can be evaluated and written, whatever it says.
        evaluate(result.job);
        expect(read(writeJob(result.job)).ok).toBe(true);
      }),
      { numRuns: 400 },
    );
    expect(accepted).toBeGreaterThan(10);
  }, 30_000);
});
