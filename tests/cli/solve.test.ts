import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { CONTENTS } from '$sheets/contents';
import { demoJob } from '$lib/job/demo';
import { evaluate } from '$lib/job/evaluate';
import { writeJob } from '$lib/job/file/file';
import { ownCalculations } from '$lib/job/own/ownCalculation';

const solve = (...args: string[]) =>
  spawnSync(process.execPath, ['--import', 'tsx', 'src/cli/solve.ts', ...args], {
    encoding: 'utf8',
    timeout: 240_000,
  });

interface Reported {
  readonly id: string;
  readonly value: number | null;
  readonly unit: string;
}
interface Report {
  readonly units: string;
  readonly sides: Record<
    'asFound' | 'candidate',
    { sheets: Record<string, Reported[]>; own: Record<string, Reported[]> }
  >;
}

/** Every sheet is solved twice; a busy machine takes its time. */
const LONG = { timeout: 300_000 };

describe('npm run solve', () => {
  const folder = mkdtempSync(join(tmpdir(), 'solve-'));
  const file = (name: string, text: string) => {
    const path = join(folder, name);
    writeFileSync(path, text);
    return path;
  };

  const line = (id: string, symbol: string, expression: string) => ({
    id,
    kind: 'calculation' as const,
    statement: '',
    symbol,
    expression,
    unit: '',
  });
  const own = [line('a', 'G_x', 'Q_c / (T_3 - T_amb)'), line('b', '', 'G_x + Q_c')];

  it('prints the results and own lines that the sheets show, for both sides', LONG, () => {
    const job = { ...demoJob(), own: { 'loop-balance': own } };
    const { status, stdout, stderr } = solve(file('own.json', writeJob(job)));
    expect(stderr).toBe('');
    expect(status).toBe(0);
    const report = JSON.parse(stdout) as Report;
    expect(report.units).toBe('SI');
    const evaluated = evaluate(job);
    for (const side of ['asFound', 'candidate'] as const) {
      for (const slug in CONTENTS) {
        const shown = CONTENTS[slug]!(evaluated[side]!, evaluated).results;
        // What was read on the vehicle is not read again on a candidate.
        if (side === 'asFound') expect(shown.length, slug).toBeGreaterThan(0);
        expect(report.sides[side].sheets[slug]!.map(({ id, value }) => ({ id, value }))).toEqual(
          shown.map(({ id, value }) => ({ id, value })),
        );
      }
      const { lines } = CONTENTS['loop-balance']!(evaluated[side]!, evaluated);
      const outcome = ownCalculations(own, lines)[0]!.outcome;
      const value = outcome.ok ? outcome.value : NaN;
      expect(report.sides[side].own['loop-balance']).toMatchObject([
        { id: 'a', symbol: 'G_x', unit: 'W/K', value },
        { id: 'b', value: null, absent: expect.stringMatching(/^You add/) },
      ]);
    }
  });

  const good = readFileSync('static/demo-job.json', 'utf8');
  it.each([
    ['no file named', [], /usage/],
    ['a file that is not there', [join(folder, 'none.json')], /no such file/],
    ['a file cut short', [file('short.json', good.slice(0, 500))], /breaks off/],
    ['no JSON', [file('words.json', 'pump,flow\n1,2\n')], /not JSON/],
    [
      'a newer job',
      [file('new.json', good.replace(/"soakline": \d+/, '"soakline": 7'))],
      /newer version/,
    ],
  ])('%s: exit 1 and one line', { timeout: 60_000 }, (_, args, message) => {
    const { status, stdout, stderr } = solve(...args);
    expect(status).toBe(1);
    expect(stdout).toBe('');
    expect(stderr.trimEnd().split('\n')).toHaveLength(1);
    expect(stderr).toMatch(message);
  });
});
