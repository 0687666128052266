import { describe, expect, it } from 'vitest';
import { evaluate, type Side } from '$lib/job/evaluate';
import type { Job } from '$lib/job/types';
import type { Chart } from '$lib/kit';
import { helpRows } from '../../sheets/suction-margin/bars';
import { mapChart, marginChart } from '../../sheets/suction-margin/charts';
import { content } from '../../sheets/suction-margin/content';
import { content as pumpContent } from '../../sheets/pump-and-restriction/content';
import { studyOf } from '../../sheets/suction-margin/study';
import { settledOf } from '../../sheets/wiring/duty';
import { DUTY_IDS, JOBS, demoJob, edited, shown } from './jobs';
import { walkContent } from './walk';

const found = (changes: Readonly<Record<string, string>> = {}, job: Job = demoJob()): Side =>
  evaluate(edited(job, changes)).asFound;
const says = (side: Side) => {
  const { findings, results, lines } = content(side);
  return {
    codes: findings.map(({ code }) => code),
    level: (code: string) => findings.find((f) => f.code === code)?.level,
    value: (id: string) => results.find((r) => r.id === id)?.value,
    result: (id: string) => results.find((r) => r.id === id),
    ids: lines.map(({ id }) => id),
  };
};

/** Open to the air, high up, with a pump that needs much: short once the liquid is warm. */
const short = {
  'reservoir.vent': 'vented',
  'site.altitude': '8000 ft',
  'pump.npshRequired': '22 ft',
};

describe('findings follow the suction side', () => {
  it('the loop as it comes has suction head to spare, and is told what to look for instead', () => {
    const { codes, value, level } = says(found());
    expect(value('suction-margin')!).toBeGreaterThan(0);
    expect(level('not-cavitation')).toBe('good');
    expect(codes).toContain('look-alikes');
    expect(codes).not.toContain('not-counted');
  });
  it('short: it cavitates, and flows that are not counted are too high', () => {
    const { level, codes } = says(found(short));
    expect(level('cavitates')).toBe('act');
    expect(codes).toContain('not-counted');
    expect(codes).not.toContain('not-cavitation');
  });
  it('counted: less flow than in health, and the finding says so', () => {
    const ignored = found(short);
    const counted = found({ ...short, 'pump.cavitation': 'counted' });
    const { codes, value } = says(counted);
    expect(codes).toContain('head-lost');
    expect(codes).not.toContain('not-counted');
    expect(value('flow')!).toBeLessThan(says(ignored).value('flow')!);
    expect(value('head-left')!).toBeLessThan(0.97);
  });
  it('healthy, counting changes nothing', () => {
    const { value } = says(found({ 'pump.cavitation': 'counted' }));
    expect(value('flow')! / says(found()).value('flow')!).toBeCloseTo(1, 6);
  });
  it('no volts: not cavitation, and no margin to speak of', () => {
    const { codes, value } = says(found({ 'pump.volts': '0 V' }));
    expect(codes).toEqual(['no-flow']);
    expect(value('suction-margin')).toBeNull();
    expect(value('first-loss')).toBeNull();
  });
  it('a margin that rests on the cap is told; open to the air there is no cap to rest on', () => {
    const spare = settledOf(found({ 'reservoir.cap': '0 psi' }))!.margins.suction;
    // Ask for two metres more than an open tank has to spare: the cap (16 psi, about 11 m) gives them.
    const open = settledOf(found({ 'reservoir.cap': '0 psi' }))!.operating.npshRequired;
    const needs = `${((spare + open + 2) / 0.3048).toFixed(2)} ft`;
    const capped = { 'reservoir.cap': '16 psi', 'pump.npshRequired': needs };
    expect(says(found(capped)).level('rests-on-cap')).toBe('watch');
    const { codes, result } = says(found({ ...capped, 'reservoir.vent': 'vented' }));
    expect(codes).not.toContain('rests-on-cap');
    expect(codes).toContain('cavitates');
    expect(result('vented-margin')!.value).toBeNull();
  });
  it('a cap above what the tank is made for is told', () => {
    const strong = { 'reservoir.cap': '16 psi', 'reservoir.ratedGauge': '10 psi' };
    expect(says(found(strong)).level('cap-above-rating')).toBe('act');
    expect(says(found({ ...strong, 'reservoir.ratedGauge': '16 psi' })).codes).not.toContain(
      'cap-above-rating',
    );
    expect(says(found({ ...strong, 'reservoir.vent': 'vented' })).codes).not.toContain(
      'cap-above-rating',
    );
  });
  it('mounting: below the liquid, inlet down', () => {
    expect(says(found({ 'reservoir.level': '-1 ft' })).level('level-below-inlet')).toBe('act');
    expect(says(found({ 'pump.inletFaces': 'down' })).codes).toContain('inlet-faces-down');
    expect(says(found()).codes).not.toContain('inlet-faces-down');
  });
  // Geometry: an eye four inches above its port has four inches less liquid over it.
  it('the way the inlet faces counts', () => {
    const available = (inletFaces: string) =>
      says(found({ 'pump.inletFaces': inletFaces, 'pump.eyeDepth': '4 in' })).value(
        'npsh-available',
      )!;
    expect(available('up') - available('down')).toBeCloseTo(2 * 4 * 0.0254, 9);
  });
  // Over 34 ft of head lost ahead of the pump is more than the air at sea level pushes with.
  it('a hose that asks more than all the pressure there is', () => {
    const job = edited(demoJob(), {
      'hose.suction.bore': '0.2 in',
      'hose.suction.fittingBore': '0.15 in',
      'hose.suction.length': '6 m',
      'reservoir.vent': 'vented',
      'pump.volts': '13.5 V',
    });
    const strong = [
      ['0 gpm', '120 ft'],
      ['20 gpm', '0 ft'],
    ];
    const asFound = { ...job.asFound, 'pump.curve': { is: strong } };
    const side = evaluate({ ...job, asFound }).asFound;
    expect(settledOf(side)!.operating.shares[0]!.head).toBeGreaterThan(34 * 0.3048);
    expect(says(side).level('below-zero')).toBe('act');
    expect(says(side).ids).not.toContain('inlet-pressure');
    expect(says(found()).ids).toContain('inlet-pressure');
    for (const units of ['US', 'SI'] as const)
      expect(walkContent(content(side), units)).toEqual([]);
  });
  it('required by points has its own line, and a note outside them', () => {
    const side = found({ 'pump.npshBy': 'points' });
    expect(says(side).ids).toContain('npsh-required');
    expect(says(found()).ids).not.toContain('npsh-required');
  });
  it('never within the liquid’s range under a strong cap', () => {
    const { codes, result } = says(
      found({ 'reservoir.cap': '40 psi', 'pump.npshRequired': '1 ft' }),
    );
    expect(codes).toContain('never-short');
    expect(result('first-loss')!.absent).toContain('never');
  });
  it('plenty of suction head: suppressed, else NPSH3 is not the start', () => {
    const rich = says(found({ 'reservoir.cap': '16 psi', 'pump.npshRequired': '3 ft' }));
    const { npshAvailable } = settledOf(found({ 'reservoir.cap': '16 psi' }))!.operating;
    expect(npshAvailable).toBeGreaterThan(4 * 3 * 0.3048);
    expect(rich.codes).toContain('suppressed');
    expect(says(found({ 'pump.npshRequired': '20 ft' })).codes).toContain('npsh3-is-not-the-start');
  });
});

const VARIANTS: Readonly<Record<string, () => Job>> = {
  ...JOBS,
  short: () => edited(demoJob(), short),
  'short, counted': () => edited(demoJob(), { ...short, 'pump.cavitation': 'counted' }),
  'points, two in parallel, inlet down': () =>
    edited(demoJob(), {
      'pump.npshBy': 'points',
      'pump.arrangement': 'two-in-parallel',
      'pump.inletFaces': 'down',
    }),
  'needs nothing': () => edited(demoJob(), { 'pump.npshRequired': '0 ft' }),
  'a straw': () =>
    edited(demoJob(), {
      'hose.suction.bore': '0.2 in',
      'hose.suction.fittingBore': '0.15 in',
      'hose.suction.length': '6 m',
      'reservoir.vent': 'vented',
    }),
};

it('sheet 2 counts what it takes too: its balance closes, its lines can be rebuilt', () => {
  for (const duty of DUTY_IDS) {
    const job = shown(VARIANTS['short, counted']!(), duty, 'US');
    const said = pumpContent(evaluate(job).asFound);
    expect(walkContent(said, 'US')).toEqual([]);
    expect(said.lines.map(({ id }) => id)).toContain('head-left');
  }
});

describe.each(Object.keys(VARIANTS))('%s', { timeout: 60_000 }, (name) => {
  it.each(DUTY_IDS)('%s: every line can be rebuilt, every number is one', (duty) => {
    for (const units of ['US', 'SI'] as const) {
      const { asFound, candidate } = evaluate(shown(VARIANTS[name]!(), duty, units));
      for (const side of [asFound, candidate]) {
        if (side) expect(walkContent(content(side), units)).toEqual([]);
      }
    }
  });
  it('plots hold numbers only', () => {
    const { asFound, candidate } = evaluate(VARIANTS[name]!());
    finite(marginChart(asFound, candidate));
    for (const units of ['US', 'SI'] as const) finite(mapChart(asFound, 'found', units));
    const study = studyOf(asFound);
    if (!study) return;
    for (const row of helpRows(study, studyOf(candidate), 'US')) {
      expect(row.found).toBeGreaterThan(0);
    }
  });
});

function finite({ curves = [], spots = [], bands = [] }: Chart) {
  for (const { points } of curves) expect(points.flat().every(Number.isFinite)).toBe(true);
  for (const { points } of bands) expect(points.flat().every(Number.isFinite)).toBe(true);
  for (const { x, y } of spots) expect([x, y].every(Number.isFinite)).toBe(true);
}

it('the cap off brings the first loss down to where an open tank has it', () => {
  const off = says(found()).value('first-loss-vented')!;
  const open = says(found({ 'reservoir.vent': 'vented' })).value('first-loss')!;
  expect(off).toBeCloseTo(open, 6);
});

it('the operating point lies on the path of its map and on the curve of the margin', () => {
  const side = found();
  const s = settledOf(side)!;
  for (const [chart, x, y] of [
    [marginChart(side, null), s.liquid.temperature, s.margins.suction],
    [mapChart(side, 'found', 'US'), s.operating.flow, s.liquid.temperature],
  ] as const) {
    expect(chart.spots![0]).toMatchObject({ x, y });
  }
});

it('the first loss is where the sheet’s own line of nothing to spare meets the path', () => {
  const {
    loss,
    picture: { map },
  } = studyOf(found({ 'reservoir.vent': 'vented' }))!;
  if (loss.kind !== 'at') throw new Error('an open loop has a first loss');
  expect(loss.point.margin).toBeCloseTo(0, 6);
  expect(loss.point.temperature).toBeLessThanOrEqual(map.temperatures.at(-1)!);
});
