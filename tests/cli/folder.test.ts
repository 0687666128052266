/** Refusals of `npm run folder`: at once, before a browser or a build is looked for. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';

const place = mkdtempSync(join(tmpdir(), 'folder-'));
afterAll(() => rmSync(place, { recursive: true, force: true }));

const folder = (args: string[], env: Record<string, string> = {}) =>
  spawnSync(process.execPath, ['src/cli/folder.mjs', ...args], {
    encoding: 'utf8',
    timeout: 120_000,
    env: { ...process.env, ...env },
  });
const JOB = 'static/demo-job.json';
const file = (name: string, text: string) => {
  const path = join(place, name);
  writeFileSync(path, text);
  return path;
};
const OUT = join(place, 'out');

describe('npm run folder', { timeout: 120_000 }, () => {
  it.each([
    ['no job', ['--out', OUT], /no job file/i],
    ['no directory', [JOB], /--out DIR is missing/],
    ['two jobs', [JOB, JOB, '--out', OUT], /one too many/],
    ['an unknown option', [JOB, '--out', OUT, '--colour'], /--colour/],
    ['a job that is not there', [join(place, 'none.json'), '--out', OUT], /no such file/],
    ['a file that is no job', [file('words.json', 'pump,flow\n'), '--out', OUT], /not JSON/],
    [
      'a job of a newer version',
      [
        file('new.json', readFileSync(JOB, 'utf8').replace(/"soakline": \d+/, '"soakline": 99')),
        '--out',
        OUT,
      ],
      /newer version/,
    ],
    ['a file in place of the directory', [JOB, '--out', file('file', '')], /not a directory/],
    ['a directory below a file', [JOB, '--out', join(file('file2', ''), 'x')], /cannot be written/],
  ])('%s: exit 1 and one line', (_, args, message) => {
    const { status, stdout, stderr } = folder(args);
    expect(status).toBe(1);
    expect(stdout).toBe('');
    expect(stderr.trimEnd().split('\n')).toHaveLength(1);
    expect(stderr).toMatch(message);
    expect(existsSync(OUT)).toBe(false);
  });

  it('without a browser says how to get one', () => {
    const { status, stderr } = folder([JOB, '--out', join(place, 'no-browser')], {
      CHROMIUM: join(place, 'no-such-browser'),
    });
    expect(status).toBe(1);
    expect(stderr.trimEnd().split('\n')).toHaveLength(1);
    expect(stderr).toMatch(/CHROMIUM/);
  });

  it('explains itself', () => {
    const { status, stdout } = folder(['--help']);
    expect(status).toBe(0);
    for (const name of ['folder.pdf', 'results.csv', 'results.json', 'inputs.csv', 'job.json'])
      expect(stdout).toContain(name);
  });
});
