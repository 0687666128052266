import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { CONTENTS } from '$sheets/contents';
import { drawInFull } from '$sheets/gathering/answer';
import { studyInFull } from '$sheets/how-sure/study';
import { dutyOf } from '$sheets/wiring/duty';
import { asideResults } from '$sheets/upgrades/content';
import { worded } from '$lib/kit/format';
import { demoJob } from '$lib/job/demo';
import { evaluate, evaluateAside } from '$lib/job/evaluate';
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
interface ReportedSide {
  readonly name?: string;
  readonly sheets: Record<string, Reported[]>;
  readonly own: Record<string, Reported[]>;
}
interface Report {
  readonly units: string;
  readonly sides: Record<'asFound' | 'candidate', ReportedSide> & {
    readonly aside: readonly ReportedSide[];
  };
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
    // The command waits for the full study, as the page does.
    for (const side of [evaluated.asFound, evaluated.candidate!]) studyInFull(side, dutyOf(side));
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
      const outcome = ownCalculations(own, lines, evaluated[side]!.values)[0]!.outcome;
      const value = outcome.ok ? outcome.value : NaN;
      expect(report.sides[side].own['loop-balance']).toMatchObject([
        { id: 'a', symbol: 'G_x', unit: 'W/K', value },
        { id: 'b', value: null, absent: expect.stringMatching(/^You add/) },
      ]);
    }
  });

  it('reports every candidate put aside, by every sheet, as the page shows them', LONG, () => {
    const job = demoJob();
    const { status, stdout } = solve('static/demo-job.json');
    expect(status).toBe(0);
    const { sides } = JSON.parse(stdout) as Report;
    expect(sides.candidate.name).toBe(job.candidate!.name);
    expect(sides.aside.map(({ name }) => name)).toEqual(job.aside.map(({ name }) => name));
    const all = evaluate(job);
    // As many draws of every candidate as the command makes for its answer.
    drawInFull(all);
    const compared = asideResults(all);
    for (const [i, side] of evaluateAside(job).entries()) {
      const { sheets } = sides.aside[i]!;
      expect(Object.keys(sheets)).toEqual(Object.keys(CONTENTS));
      const plain = (list: readonly { id: string; value: number | null }[]) =>
        list.map(({ id, value }) => ({ id, value }));
      for (const slug of ['loop-balance', 'warm-up-and-recovery', 'how-sure'])
        expect(plain(sheets[slug]!), slug).toEqual(plain(CONTENTS[slug]!(side).results));
      expect(plain(sheets.upgrades!)).toEqual(plain(compared[i]!));
      // Each is another loop: none is the one in hand or as found by mistake.
      expect(plain(sheets.upgrades!)).not.toEqual(plain(sides.candidate.sheets.upgrades!));
    }
    const charge = sides.aside[0]!.sheets.upgrades!.find(({ id }) => id === 'charge-cruise')!;
    expect(charge).toMatchObject({ unit: 'K', plusMinus: expect.any(Number) as number });
  });

  it('says the same to be read, in the units of the job', LONG, () => {
    const job = demoJob();
    const { status, stdout } = solve('static/demo-job.json', '--text');
    expect(status).toBe(0);
    const heads = [...stdout.matchAll(/^(.*)\n=+$/gm)].map(([, head]) => head);
    expect(heads).toEqual([
      'As found',
      `Candidate: ${job.candidate!.name}`,
      ...job.aside.map(({ name }) => `Put aside: ${name}`),
    ]);
    // First of all what to do first, with its ±.
    expect(stdout.slice(0, stdout.indexOf('As found'))).toMatch(
      /^Do “.*” .* first: \$85 take .* ± /m,
    );
    const tank = stdout.slice(stdout.indexOf('Put aside: 5 gal tank'));
    const { value } = asideResults(evaluate(job))[4]!.find(({ id }) => id === 'charge-cruise')!;
    const shownAs = worded(value!, 'temperature', 'US').split('\u00a0');
    expect(tank).toMatch(
      new RegExp(`Charge air, settled at cruise: ${shownAs[0]} ± [\\d.]+ ${shownAs[1]}`),
    );
    expect(tank).toMatch(/Cost of each degree at cruise: it takes no degrees off/);
  });

  const good = readFileSync('static/demo-job.json', 'utf8');
  it.each([
    ['no file named', [], /usage/],
    ['something it does not know', ['static/demo-job.json', '--pretty'], /usage/],
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
