import { describe, expect, it } from 'vitest';
import { applyEdit } from '$lib/job/edit';
import { evaluate } from '$lib/job/evaluate';
import type { Job, Row } from '$lib/job/types';
import {
  heatChart,
  massRows,
  storedRows,
  temperatureChart,
} from '../../sheets/warm-up-and-recovery/charts';
import { content } from '../../sheets/warm-up-and-recovery/content';
import { demoJob, DUTY_IDS, edited, inEveryDuty, JOBS, shown } from './jobs';

const US = (job: Job, duty = 'cruise') => evaluate(shown(job, duty, 'US'));
const said = (job: Job, duty = 'cruise') => content(US(job, duty).asFound);
const codes = (job: Job, duty = 'cruise') => said(job, duty).findings.map((f) => f.code);
const result = (job: Job, id: string) => said(job).results.find((r) => r.id === id)!.value;

/** The demonstration's candidate as the loop found: one that works. */
const healthy = (): Job => {
  const job = demoJob();
  return { ...job, asFound: { ...job.asFound, ...job.candidate!.changes } };
};

const drive = (job: Job, rows: readonly Row[]): Job => {
  const next = applyEdit(job, 'asFound', 'schedule', rows);
  if (next.problem !== undefined) throw new Error(next.problem);
  return next.job;
};

describe.each(Object.keys(JOBS))('%s', (name) => {
  it.each(DUTY_IDS)('says and draws only numbers, %s', (duty) => {
    const { asFound, candidate } = US(JOBS[name]!(), duty);
    const { curves = [], spots = [] } = temperatureChart(asFound, candidate);
    for (const { points } of [...curves, ...heatChart(asFound, candidate).curves!]) {
      expect(points.flat().every(Number.isFinite)).toBe(true);
    }
    for (const { x, y } of spots) expect(Number.isFinite(x) && Number.isFinite(y)).toBe(true);
    for (const row of [...massRows(asFound, candidate), ...storedRows(asFound, candidate)]) {
      expect(row.found).toBeGreaterThanOrEqual(0);
    }
    for (const side of [asFound, candidate]) {
      if (!side) continue;
      const { findings } = content(side);
      expect(findings.length).toBeGreaterThan(0);
      for (const { sentence } of findings) {
        for (const word of sentence) {
          if (typeof word !== 'string') expect(word.value, sentence.join()).not.toBeNaN();
        }
      }
    }
  });
});

describe('lines', () => {
  it('energy closes on every side it is said of', () => {
    for (const name of Object.keys(JOBS)) {
      const line = said(JOBS[name]!()).lines.find(({ id }) => id === 'energy-closure');
      if (line?.kind !== 'balance') continue;
      const larger = Math.max(Math.abs(line.left.x.E_in!), Math.abs(line.left.x.E_out!), 1);
      expect(Math.abs(line.left.value - line.right.value) / larger, name).toBeLessThan(1e-4);
    }
  });
  it('closed form and integration stand beside each other, a tenth of the way apart at most', () => {
    const { lines } = said(healthy());
    const closed = lines.find(({ id }) => id === 'loop.approach-in-time');
    const check = lines.find(({ id }) => id === 'closed-form-check');
    if (closed?.kind !== 'formula' || check?.kind !== 'formula') throw new Error('no such line');
    const way = Math.abs(closed.x.T_end! - closed.x.T_0!);
    // One mass against five; see closedForm.test.ts.
    expect(Math.abs(check.value)).toBeLessThan(way / 10);
  });
});

describe('findings follow the drive', () => {
  it('a stopped pump: flat tank, climbing intake', () => {
    const job = JOBS['pump without volts']!();
    expect(codes(job)).toContain('no-flow');
    const { run } = { run: US(job).asFound.warmUp };
    if (!run.ok) throw new Error(run.problem.message);
    const { reservoir } = run.value.history;
    // The tank only follows the bay; the charge goes far above anything in the tank.
    expect(run.value.peakCharge!.value - Math.max(...reservoir)).toBeGreaterThan(30);
    expect(codes(job)).not.toContain('recovers');
  });
  it('the limit: reached when it is low, never when it is high', () => {
    const at = (limit: string) => codes(edited(healthy(), { 'limits.charge': limit }));
    expect(at('100 °F')).toContain('limit-reached');
    expect(at('380 °F')).toContain('limit-never');
    expect(at('380 °F')).not.toContain('limit-reached');
  });
  it('reached at cruise asks for action, in a pull for watching', () => {
    const level = (limit: string) =>
      said(edited(healthy(), { 'limits.charge': limit })).findings.find(
        ({ code }) => code === 'limit-reached',
      )!.level;
    expect(level('97 °F')).toBe('act');
    const cruise = US(healthy()).asFound.steady.cruise;
    if (!cruise.ok) throw new Error(cruise.problem.message);
    expect(level(`${cruise.value.chargeOut! + 20} K`)).toBe('watch');
  });
  it('recovery: seen, not yet, and no room for it', () => {
    const pull: Row = ['pull', '30 s', '', ''];
    const warm: Row = ['cruise', '60 min', '', ''];
    const of = (...after: Row[]) =>
      codes(edited(drive(healthy(), [warm, pull, ...after]), { 'limits.recoveryBand': '1 °F' }));
    expect(of(warm)).toContain('recovers');
    expect(of(['cruise', '20 s', '', ''])).toContain('no-recovery');
    expect(of()).toContain('recovery-unseen');
  });
  it('a wide band is never left', () => {
    expect(codes(edited(healthy(), { 'limits.recoveryBand': '80 °F' }))).toContain('never-left');
  });
  it('a drive of seconds is told to be too short', () => {
    const job = drive(healthy(), [['cruise', '5 s', '', '']]);
    expect(codes(job)).toContain('drive-short');
    expect(codes(drive(healthy(), [['cruise', '200 min', '', '']]))).not.toContain('drive-short');
  });
  it('liquid that freezes at the start leaves no drive to follow', () => {
    const job = JOBS['frost, water in the loop']!();
    expect(codes(job)).toContain('freezes');
    expect(said(job).lines.map(({ id }) => id)).not.toContain('energy-closure');
  });
  it('heat stated outright: no charge temperature, and it says why', () => {
    const { results } = said(edited(healthy(), inEveryDuty({ by: 'heat' })));
    const peak = results.find(({ id }) => id === 'peak-charge')!;
    expect(peak.value).toBeNull();
    expect(peak.absent).toContain('stated outright');
  });
});

describe('volume sets the delay (the physics)', () => {
  it('more liquid: longer time constant, lower peak in the same drive from cold', () => {
    const large = edited(healthy(), {
      'reservoir.totalVolume': '20 gal',
      'reservoir.volume': '8 gal',
    });
    expect(result(large, 'time-constant')!).toBeGreaterThan(result(healthy(), 'time-constant')!);
    expect(result(large, 'peak-reservoir')!).toBeLessThan(result(healthy(), 'peak-reservoir')!);
  });
});
