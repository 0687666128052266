import { describe, expect, it } from 'vitest';
import { evaluate } from '$lib/job/evaluate';
import type { Job } from '$lib/job/types';
import { content } from '../../sheets/reservoir/content';
import { pullChart, riseChart, warmUpChart } from '../../sheets/reservoir/charts';
import { demoJob, DUTY_IDS, edited, JOBS, shown } from './jobs';

const US = (job: Job, duty = 'cruise') => evaluate(shown(job, duty, 'US'));
const codes = (job: Job, duty = 'cruise') =>
  content(US(job, duty).asFound).findings.map((f) => f.code);
const result = (job: Job, id: string, duty = 'cruise') =>
  content(US(job, duty).asFound).results.find((r) => r.id === id)!.value;

/** The demonstration's loop is short of air and flow; its candidate is a loop that works. */
const healthy = (): Job => {
  const job = demoJob();
  return { ...job, asFound: { ...job.asFound, ...job.candidate!.changes } };
};

/** Another tank; the full volume makes room first, since a job refuses liquid that does not fit. */
const tank = (job: Job, volume: string, full: string): Job =>
  edited(edited(job, { 'reservoir.totalVolume': '20 gal', 'reservoir.volume': volume }), {
    'reservoir.totalVolume': full,
  });

describe.each(Object.keys(JOBS))('%s', (name) => {
  it.each(DUTY_IDS)('draws without a hole, %s', (duty) => {
    const { asFound, candidate } = US(JOBS[name]!(), duty);
    for (const chart of [riseChart, pullChart, warmUpChart]) {
      const { curves = [], spots = [] } = chart(asFound, candidate);
      for (const { points } of curves) {
        expect(points.length).toBeGreaterThan(1);
        expect(points.flat().every(Number.isFinite)).toBe(true);
      }
      for (const { x, y } of spots) expect(Number.isFinite(x) && Number.isFinite(y)).toBe(true);
    }
    // Every state has something to say, with numbers that are numbers.
    for (const side of [asFound, candidate]) {
      if (!side) continue;
      const { findings } = content(side);
      expect(findings.length).toBeGreaterThan(1);
      for (const { sentence } of findings) {
        for (const word of sentence) {
          if (typeof word !== 'string') expect(word.value, sentence.join()).not.toBeNaN();
        }
      }
    }
  });
});

describe('volume sets the delay, never the end', () => {
  const doubled = () => tank(healthy(), '4 gal', '4.6 gal');
  const halved = () => tank(healthy(), '1 gal', '1.3 gal');

  it.each(DUTY_IDS)('typing another volume leaves the settled temperature: %s', (duty) => {
    const T = result(healthy(), 'settles', duty)!;
    expect(result(doubled(), 'settles', duty)).toBeCloseTo(T, 9);
    expect(result(halved(), 'settles', duty)).toBeCloseTo(T, 9);
  });
  // The finding must not speak of an end that the balance sheet does not have, nor of delays in disorder.
  it.each(DUTY_IDS)('says the end once and three delays that grow with volume: %s', (duty) => {
    const side = US(healthy(), duty).asFound;
    const numbers = (code: string) =>
      content(side)
        .findings.find((f) => f.code === code)!
        .sentence.flatMap((part) => (typeof part === 'string' ? [] : [part.value]));
    const outcome = side.steady[duty];
    expect(outcome.ok && outcome.value.temperatures.reservoir).toBe(numbers('volume-cannot')[0]);
    const [rise, fall] = [numbers('volume-buys').slice(3), numbers('volume-buys').slice(0, 3)];
    expect(rise).toHaveLength(3);
    expect(rise).toEqual([...rise].sort((a, b) => a - b));
    expect(fall).toEqual([...fall].sort((a, b) => b - a));
  });
  it('the delay with the present liquid is that of the line', () => {
    const side = US(healthy()).asFound;
    const line = content(side).lines.find(({ id }) => id === 'loop.time-constant');
    const told = content(side).results.find(({ id }) => id === 'time-constant')!.value!;
    expect(line?.kind === 'formula' && told / line.value).toBeCloseTo(1, 9);
  });
  it('frozen at ambient is told instead of an end', () => {
    const said = codes(JOBS['frost, water in the loop']!());
    expect(said).toContain('frozen-from-cold');
    expect(said).not.toContain('volume-cannot');
  });
  it('and changes rise and time constant the opposite ways', () => {
    for (const id of ['rise-in-pull', 'rise-followed']) {
      expect(result(doubled(), id)!).toBeLessThan(result(halved(), id)!);
    }
    expect(result(doubled(), 'time-constant')!).toBeGreaterThan(result(halved(), 'time-constant')!);
  });
  it('the closed form, which gives nothing off, is above what is followed in time', () => {
    expect(result(healthy(), 'rise-in-pull')!).toBeGreaterThan(result(healthy(), 'rise-followed')!);
  });
  it('the volume said to be needed makes the rise the allowed one', () => {
    const allowed = (10 * 5) / 9; // the default, 10 °F
    const needed = result(healthy(), 'volume-needed')!;
    const job = tank(healthy(), `${needed * 1000} L`, `${needed * 1100} L`);
    expect(result(job, 'rise-in-pull')).toBeCloseTo(allowed, 6);
  });
});

describe('findings follow the loop', () => {
  it('air space: none, too small, enough', () => {
    const full = (total: string) => codes(tank(healthy(), '2 gal', total));
    expect(full('2 gal')).toContain('no-air-space');
    expect(full('2.02 gal')).toContain('air-space-small');
    expect(full('3 gal')).toContain('air-space-enough');
  });
  it('a high cap over much air is not reached, a low one over little opens', () => {
    const cap = (volume: string, psi: string) =>
      codes(edited(tank(healthy(), volume, '2.3 gal'), { 'reservoir.cap': psi }));
    expect(cap('1 gal', '16 psi')).toContain('cap-not-reached');
    expect(cap('2.2 gal', '1 psi')).toContain('cap-opens');
    const vented = cap('2 gal', '0 psi');
    expect(vented).not.toContain('cap-opens');
    expect(vented).not.toContain('cap-not-reached');
  });
  it('level below the pump', () => {
    expect(codes(edited(healthy(), { 'reservoir.level': '-0.5 ft' }))).toContain(
      'level-below-pump',
    );
    expect(codes(edited(healthy(), { 'reservoir.level': '0.5 ft' }))).not.toContain(
      'level-below-pump',
    );
  });
  it('short circuit', () => {
    expect(codes(edited(healthy(), { 'reservoir.shortCircuit': '60 %' }))).toContain(
      'short-circuit',
    );
    expect(codes(edited(healthy(), { 'reservoir.shortCircuit': '0 %' }))).not.toContain(
      'short-circuit',
    );
  });
  it('glycol against water', () => {
    expect(codes(healthy())).toContain('glycol-capacity');
    expect(codes(JOBS['plain water']!())).toContain('plain-water');
  });
  it('a long pull runs short of volume, a short one does not', () => {
    expect(codes(edited(healthy(), { 'reservoirQuestion.pullTime': '60 s' }))).toContain(
      'volume-short',
    );
    expect(codes(edited(healthy(), { 'reservoirQuestion.pullTime': '1 s' }))).toContain(
      'volume-enough',
    );
  });
  it('a stopped pump: the tank cannot help, and no line pretends it could', () => {
    const job = JOBS['pump without volts']!();
    expect(codes(job)).toContain('no-flow');
    expect(result(job, 'rise-in-pull')).toBeNull();
    const ids = content(US(job).asFound).lines.map((line) => line.id);
    expect(ids).not.toContain('reservoir.rise-in-pull');
    expect(ids).toContain('reservoir.liquid-growth');
  });
});
