import { describe, expect, it } from 'vitest';
import { evaluate } from '$lib/job/evaluate';
import type { Job } from '$lib/job/types';
import { content } from '../../sheets/diagnosis/content';
import { causeRows, fitTable, nextRows, severityChart } from '../../sheets/diagnosis/bars';
import { studyOf } from '../../sheets/diagnosis/study';
import { demoJob, edited, JOBS } from './jobs';
import { walkContent } from './walk';

const MEASURED = Object.keys(evaluate(demoJob()).asFound.values).filter((p) =>
  p.startsWith('measured.'),
);

/** The demonstration job with only these readings. */
function read(readings: Readonly<Record<string, string>>, job: Job = demoJob()): Job {
  const asFound = Object.fromEntries(
    Object.entries(job.asFound).filter(([path]) => !MEASURED.includes(path)),
  );
  return edited({ ...job, asFound }, readings);
}
const found = (job: Job) => content(evaluate(job).asFound);
const codes = (job: Job) => found(job).findings.map((f) => f.code);
const result = (job: Job, id: string) => found(job).results.find((r) => r.id === id)!;
const study = (job: Job) => {
  const outcome = studyOf(evaluate(job).asFound);
  if (!outcome?.ok) throw new Error('no diagnosis');
  return outcome.value;
};

// A loop not yet seen is solved for every fault and severity.
describe('the diagnosis sheet', { timeout: 30_000 }, () => {
  it('asks for readings where there are none, and solves nothing', () => {
    expect(codes(read({}))).toEqual(['no-readings']);
    expect(found(read({})).lines).toEqual([]);
  });

  it('leaves the candidate alone: it was never measured', () => {
    const said = content(evaluate(demoJob()).candidate!);
    expect(said.findings.map((f) => f.code)).toEqual(['candidate-not-measured']);
    expect(said.results.every((r) => r.value === null)).toBe(true);
  });

  it.each(Object.keys(JOBS))('holds on every job: %s', (name) => {
    const side = evaluate(JOBS[name]!()).asFound;
    expect(walkContent(content(side), 'US')).toEqual([]);
  });

  it('finds an open fuse by a dead plug', () => {
    const job = read({ 'measured.traffic.volts': '0 V', 'measured.traffic.amps': '0 A' });
    expect(result(job, 'leading').name).toMatch(/No volts at the pump/);
    expect(result(job, 'leading').value).toBeGreaterThan(0.9);
  });

  it('finds volts lost from plug and clamp, and says how many', () => {
    const job = read({
      'measured.traffic.volts': '8.2 V',
      'measured.traffic.amps': '2.05 A',
      'measured.traffic.flow': '1.6 gpm',
    });
    expect(result(job, 'leading').name).toMatch(/Volts lost/);
    expect(Math.abs(result(job, 'severity').value! - (1 - 8.2 / 10.9))).toBeLessThan(0.05);
  });

  it('finds a fan that turns backwards by the paper', () => {
    const job = read({ 'measured.paper': 'blown', 'measured.traffic.reservoir': '235 °F' });
    expect(result(job, 'leading').name).toMatch(/backwards/);
  });

  it('says plainly that readings contradict each other, and goes on', () => {
    const job = read({
      'measured.cruise.reservoir': '110 °F',
      'measured.cruise.frontIn': '240 °F',
      'measured.cruise.frontOut': '300 °F',
      'measured.cruise.volts': '15 V',
      'measured.cruise.flow': '9 gpm',
    });
    expect(codes(job)).toContain('contradiction');
    expect(result(job, 'none-of-these').value).toBeGreaterThan(0.5);
    expect(found(job).lines.length).toBeGreaterThan(3);
  });

  it('tells what the readings cannot tell apart', () => {
    expect(codes(read({ 'measured.cruise.reservoir': '206 °F' }))).toContain('not-told-apart');
  });

  const THREE = {
    'measured.traffic.flow': '1.5 gpm',
    'measured.traffic.amps': '3.0 A',
    'measured.traffic.pumpRise': '2.0 psi',
  };
  const says = (job: Job) =>
    found(job)
      .findings.map(({ sentence }) => sentence.filter((w) => typeof w === 'string').join(''))
      .join(' ');
  const EITHER =
    'Either the pump lost its supply or it cavitates; read the volts at the pump during the event.';

  it('comes from three readings to an either-or, and by the fourth to an answer', () => {
    expect(says(read(THREE))).toContain(EITHER);
    // Flow and amps alone leave a blocked way as well: pressure across the pump rules it out.
    const { 'measured.traffic.pumpRise': _pressure, ...two } = THREE;
    expect(codes(read(two))).not.toContain('either-or');
    const decided = (volts: string) => {
      const job = read({ ...THREE, 'measured.traffic.volts': volts });
      expect(codes(job)).not.toContain('either-or');
      expect(says(job)).toContain('That decides it');
      return result(job, 'leading').name;
    };
    expect(decided('10.9 V')).toMatch(/Cavitation/);
    expect(decided('7.5 V')).toMatch(/Breaker|Volts lost/);
  });

  it('is what the demonstration job shows as it comes', () => {
    expect(says(demoJob())).toContain(EITHER);
  });

  it('says that volts are held only where they would follow the flow', () => {
    expect(codes(read(THREE))).not.toContain('volts-held');
    const fed = JOBS['pump worked out from its feed, load by flow']!();
    expect(codes(read(THREE, fed))).toContain('volts-held');
  });

  it('shows the exchanger by its own readings only where it was read', () => {
    const ids = (job: Job) => found(job).lines.map((line) => line.id);
    const drop = { 'measured.traffic.frontIn': '200 °F', 'measured.traffic.frontOut': '196 °F' };
    expect(ids(read({ 'measured.traffic.volts': '11 V' }))).not.toContain(
      'diagnosis.measured-drop',
    );
    expect(ids(read(drop))).toContain('diagnosis.measured-effectiveness');
    expect(ids(read({ ...drop, 'measured.traffic.flow': '2 gpm' }))).toContain(
      'diagnosis.measured-heat',
    );
  });

  it('leaves out a reading that the loop does not predict, and says so', () => {
    const job = read(
      { 'measured.traffic.charge': '200 °F', 'measured.traffic.volts': '10.9 V' },
      JOBS['heat stated outright']!(),
    );
    expect(codes(job)).toContain('reading-not-used');
  });

  it('goes on telling what is wrong with a loop that contradicts itself', () => {
    const job = read({ 'measured.traffic.volts': '11 V' });
    const entry = {
      is: [
        ['0 gpm', '5 ft'],
        ['5 gpm', '9 ft'],
      ],
    };
    const broken = { ...job, asFound: { ...job.asFound, 'pump.curve': entry } };
    const said = found(broken);
    expect(said.findings[0]!.level).toBe('act');
    expect(said.lines).toEqual([]);
  });

  it('draws what it says', () => {
    const s = study(demoJob());
    expect(causeRows(s).length).toBeGreaterThan(1);
    expect(fitTable(s).rows).toHaveLength(s.diagnosis.readings.length);
    expect(nextRows(s).every((row) => row.found >= 0)).toBe(true);
    const chart = severityChart(s);
    if (chart) expect(chart.curves![0]!.points.length).toBeGreaterThan(10);
  });
});
