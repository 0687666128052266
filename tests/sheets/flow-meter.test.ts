import { describe, expect, it } from 'vitest';
import { evaluate } from '$lib/job/evaluate';
import type { Job } from '$lib/job/types';
import { content } from '../../sheets/flow-meter/content';
import { kChart } from '../../sheets/flow-meter/charts';
import { ERROR_PATHS, MADE_PATHS, PLACE_PATHS, RUN_PATHS } from '../../sheets/flow-meter/inputs';
import { studyOf } from '../../sheets/flow-meter/study';
import { demoJob, edited, JOBS } from './jobs';
import { walkContent } from './walk';

type Changes = Readonly<Record<string, string>>;
type Rows = string[][];

/** The demonstration job with no meter but this. */
function job(changes: Changes = {}, runs: Rows = [], base: Job = demoJob()): Job {
  const asFound = Object.fromEntries(
    Object.entries(base.asFound).filter(([path]) => !path.startsWith('meter.')),
  );
  if (runs.length > 0) asFound['meter.runs'] = { is: runs };
  return edited({ ...base, asFound }, changes);
}
const said = (j: Job) => content(evaluate(j).asFound);
const codes = (j: Job) => said(j).findings.map((f) => f.code);
const level = (j: Job, code: string) => said(j).findings.find((f) => f.code === code)?.level;
const value = (j: Job, id: string) => said(j).results.find((r) => r.id === id)!.value;

const GOOD: Rows = [
  ['2 gal', '40 s', '3600'],
  ['2 gal', '24 s', '3606'],
  ['2 gal', '60 s', '3595'],
];
/** 1800 pulses/gal less a lag of 0.3 gpm. */
const SLIPPING: Rows = [4, 2, 1].map((gpm) => [
  '2 gal',
  `${120 / gpm} s`,
  String(Math.round(3600 * (1 - 0.3 / gpm))),
]);
const STATES: Readonly<Record<string, () => Job>> = {
  'no runs': () => job(),
  'one run': () => job({}, GOOD.slice(0, 1)),
  'three that agree': () => job({}, GOOD),
  'count by the watch': () => job({ 'meter.counting': 'by-watch' }, GOOD),
  'one wild': () => job({}, [...GOOD, ['2 gal', '40 s', '4400']]),
  'slips at low flow': () => job({}, SLIPPING),
  'twelve runs': () =>
    job(
      {},
      Array.from({ length: 12 }, () => GOOD[0]!),
    ),
  'in the suction': () => job({ 'meter.run': 'suction' }, GOOD),
  'among the losses': () => job({ 'meter.fitted': 'among' }, GOOD),
  fitted: () => job({ 'meter.fitted': 'fitted' }, GOOD),
  'input too slow': () => job({ 'meter.inputHighest': '20 Hz' }, GOOD),
  'no loss': () => job({ 'meter.ratedLoss': '0 psi' }, GOOD),
  'pump without volts': () => job({}, GOOD, JOBS['pump without volts']!()),
};

describe.each(Object.keys(STATES))('%s', (name) => {
  it('can be rebuilt from the print, both sides, both systems', () => {
    const { asFound, candidate } = evaluate(STATES[name]!());
    for (const side of [asFound, candidate!]) {
      const c = content(side);
      for (const units of ['US', 'SI'] as const) expect(walkContent(c, units)).toEqual([]);
      expect(c.lines.length).toBeGreaterThan(4);
      expect(c.findings.length).toBeGreaterThan(2);
    }
    const chart = kChart(studyOf(asFound));
    for (const { points } of chart?.curves ?? []) {
      expect(points.flat().every(Number.isFinite)).toBe(true);
    }
    for (const path of [...RUN_PATHS, ...ERROR_PATHS, ...MADE_PATHS, ...PLACE_PATHS]) {
      expect(asFound.values[path], path).toBeDefined();
    }
  });
});

describe('findings follow the runs', () => {
  it('asks for runs, and says that the maker’s figure stands in', () => {
    expect(codes(STATES['no runs']!())).toContain('no-runs');
    expect(value(STATES['no runs']!(), 'k-factor')).toBeNull();
    expect(codes(STATES['one run']!())).toContain('one-run');
  });
  it('K differs from the reader’s: it says what is shown of the true flow', () => {
    const j = STATES['three that agree']!();
    expect(codes(j)).toEqual(expect.arrayContaining(['runs-agree', 'k-differs']));
    // 1800 counted, 1700 set: by arithmetic 105.9 %.
    expect(value(j, 'reading-factor')!).toBeCloseTo(1800 / 1700, 2);
    expect(codes(edited(j, { 'meter.statedK': '1795 pulses/gal' }))).toContain('k-confirmed');
  });
  it('a wild run is seen and widens the ±', () => {
    const wild = STATES['one wild']!();
    expect(level(wild, 'runs-disagree')).toBe('act');
    expect(value(wild, 'k-plus-minus')!).toBeGreaterThan(
      value(STATES['three that agree']!(), 'k-plus-minus')!,
    );
  });
  it('a lag at low flow is found, with the flow above which K holds', () => {
    const j = STATES['slips at low flow']!();
    expect(codes(j)).toEqual(expect.arrayContaining(['slips', 'runs-slip']));
    // 0.3 gpm over 5 %: 6 gpm, within the rounding of whole pulses.
    const gpm = 3.785411784e-3 / 60;
    expect(Math.abs(value(j, 'linear-above')! / gpm - 6)).toBeLessThan(0.1);
    expect(codes(STATES['three that agree']!())).toContain('no-slip-seen');
  });
  it('the flows to be believed are told, with what sets each end, or that there are none', () => {
    const gpm = 3.785411784e-3 / 60;
    // Nothing slips: the maker's 0.5 gpm, and 8 gpm: 1800 pulses/gal are 240 Hz there, of 1000.
    const plain = STATES['three that agree']!();
    expect(value(plain, 'range-from')! / gpm).toBeCloseTo(0.5, 9);
    expect(value(plain, 'range-to')! / gpm).toBeCloseTo(8, 9);
    // 0.3 gpm of slip at 5 %: 6 gpm.
    expect(Math.abs(value(STATES['slips at low flow']!(), 'range-from')! / gpm - 6)).toBeLessThan(
      0.1,
    );
    // An input of 20 Hz ends at 20 · 60 / 1800 = 0.67 gpm; one that needs 20 Hz or more begins there.
    const slow = STATES['input too slow']!();
    expect(value(slow, 'range-to')! / gpm).toBeCloseTo(0.6667, 2);
    expect(codes(slow)).toContain('range');
    expect(level(edited(slow, { 'meter.inputLowest': '20 Hz' }), 'no-range')).toBe('act');
  });
  it('an input too slow, a meter in the suction, straight hose too short', () => {
    expect(level(STATES['input too slow']!(), 'input-misses')).toBe('act');
    expect(level(STATES['in the suction']!(), 'place')).toBe('act');
    expect(level(job(), 'straight')).toBe('watch');
    const turned = { 'loop.liquidOrder': 'front-first' };
    expect(level(job({ 'meter.run': 'back' }), 'place')).toBe('good');
    expect(level(job({ ...turned, 'meter.run': 'back' }), 'place')).toBe('watch');
    expect(level(job({ ...turned, 'meter.run': 'transfer' }), 'place')).toBe('good');
    const long = { 'meter.straightBefore': '6 in', 'meter.straightAfter': '3 in' };
    expect(level(job(long), 'straight')).toBe('good');
  });
  it('the meter costs flow, unless its loss is in the loop already', () => {
    expect(value(STATES['three that agree']!(), 'flow-taken')!).toBeGreaterThan(0);
    expect(value(STATES['among the losses']!(), 'flow-taken')).toBeNull();
    expect(value(STATES['no loss']!(), 'flow-taken')!).toBeCloseTo(0, 12);
  });
  it('fitted, its loss is in the loop of every sheet, once', () => {
    const flowOf = (j: Job) => {
      const { steady } = evaluate(j).asFound;
      if (!steady.cruise.ok) throw new Error('the demonstration settles');
      return steady.cruise.value.operating.flow;
    };
    const [without, fitted] = [STATES['three that agree']!(), STATES['fitted']!()];
    expect(flowOf(fitted)).toBeLessThan(flowOf(without));
    // Told before as what it would cost, and still told so once it is in; liquid a trifle warmer.
    const [before, after] = [value(without, 'flow-taken')!, value(fitted, 'flow-taken')!];
    expect(Math.abs(after / before - 1)).toBeLessThan(0.02);
    expect(Math.abs((flowOf(without) - flowOf(fitted)) / before - 1)).toBeLessThan(0.05);
  });
  it('a loop that stands still leaves the bucket test standing', () => {
    const still = STATES['pump without volts']!();
    expect(value(still, 'frequency')).toBeNull();
    expect(value(still, 'k-factor')!).toBeGreaterThan(0);
  });
  it('a bucket without any ± is refused in one sentence, nothing else lost', () => {
    const j = job(
      {
        'meter.volumePlusMinus': '0 gal',
        'meter.pulsesPlusMinus': '0',
        'meter.bucketPlusMinus': '0 %',
      },
      GOOD,
    );
    expect(level(j, 'invalid-input')).toBe('act');
    expect(said(j).lines.length).toBeGreaterThan(4);
    expect(walkContent(said(j), 'US')).toEqual([]);
  });
});
