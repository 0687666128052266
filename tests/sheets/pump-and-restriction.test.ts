import { describe, expect, it } from 'vitest';
import { evaluate, type Side } from '$lib/job/evaluate';
import type { Job } from '$lib/job/types';
import type { SideId } from '$lib/job/types';
import { boreChart, pumpChart, secondPumpChart } from '../../sheets/pump-and-restriction/charts';
import { content } from '../../sheets/pump-and-restriction/content';
import { dashRows, headRows, pumpRows, runRows } from '../../sheets/pump-and-restriction/bars';
import { settledOf } from '../../sheets/wiring/duty';
import type { Chart } from '$lib/kit';
import { JOBS, demoJob, edited, shown } from './jobs';

const says = (side: Side) => {
  const { findings, results, lines } = content(side);
  const codes = findings.map(({ code }) => code);
  const value = (id: string) => results.find((r) => r.id === id)?.value;
  return { findings, codes, value, ids: lines.map(({ id }) => id) };
};
const found = (changes: Readonly<Record<string, string>> = {}, job: Job = demoJob()) =>
  evaluate(edited(job, changes)).asFound;
const levelOf = (side: Side, code: string) =>
  content(side).findings.find((finding) => finding.code === code)?.level;

/** A healthy loop to depart from: one pump at full volts on hose without necks. */
const wide: Record<string, string> = { 'pump.volts': '13.5 V', 'pump.motor': 'brushed' };
for (const run of ['suction', 'delivery', 'transfer', 'back']) {
  wide[`hose.${run}.bore`] = '1 in';
  wide[`hose.${run}.fittingBore`] = '0 in';
}

describe('findings follow the loop', () => {
  it('no volts: one thing to do, no flow to explain, no head to share', () => {
    const { codes, value, ids } = says(found({ 'pump.volts': '0 V' }));
    expect(codes).toEqual(['no-flow']);
    expect(value('flow')).toBe(0);
    expect(value('head')).toBeNull();
    expect(ids).toEqual(['speed-ratio', 'shut-off-head']);
  });
  it('a controller below its cut-out stands, although it has volts', () => {
    const side = found({
      'pump.motor': 'held-speed',
      'pump.volts': '8 V',
      'pump.cutoutVolts': '9 V',
    });
    expect(says(side).codes).toEqual(['no-flow']);
    expect(says(side).ids).toEqual(['shut-off-head']);
  });
  it('low volts are told on a brushed pump only', () => {
    const low = { ...wide, 'pump.volts': '12 V' };
    expect(levelOf(found(low), 'volts-low')).toBe('watch');
    expect(levelOf(found({ ...wide, 'pump.volts': '10 V' }), 'volts-low')).toBe('act');
    expect(levelOf(found({ ...low, 'pump.motor': 'held-speed' }), 'volts-low')).toBeUndefined();
    expect(levelOf(found(wide), 'volts-low')).toBeUndefined();
  });
  // A fitting of half the bore has β = 1/2: K = (0.375 + 0.5625) · 16 = 15 a piece, on any hose.
  it('fittings that neck are told, full bore ones are not', () => {
    expect(says(found(wide)).codes).not.toContain('fittings-neck');
    const necked = { ...wide, 'hose.back.fittingBore': '0.5 in' };
    expect(levelOf(found(necked), 'fittings-neck')).toBe('watch');
    expect(says(found(necked)).ids).toContain('fitting-back');
  });
  it('a narrow suction hose is too fast', () => {
    const narrow = { ...wide, 'hose.suction.bore': '0.5 in' };
    const { codes, value } = says(found(narrow));
    expect(value('velocity-suction')!).toBeGreaterThan(4 * 0.3048);
    expect(codes).toContain('velocity-suction');
    expect(codes).not.toContain('velocity-healthy');
    expect(says(found(wide)).codes).toContain('velocity-healthy');
  });
  it('past the last point of its curve the head is a guess', () => {
    const job = edited(demoJob(), wide);
    const cut = {
      ...job,
      asFound: {
        ...job.asFound,
        'pump.curve': {
          is: [
            ['0 gpm', '16 ft'],
            ['3 gpm', '15 ft'],
          ],
        },
      },
    };
    expect(says(evaluate(cut).asFound).codes).toContain('beyond-curve');
    expect(says(found(wide)).codes).not.toContain('beyond-curve');
  });
  it('a slow pump and thick cold liquid: the flow is not turbulent any more', () => {
    const cold = { ...wide, 'site.ambient': '-10 °F', 'coolant.share': '50 %' };
    const slow = found({ ...cold, 'pump.volts': '4 V' });
    const slowest = Math.min(...settledOf(slow)!.operating.shares.map((x) => x.reynolds ?? 1e9));
    expect(slowest).toBeLessThan(4000);
    expect(says(slow).codes).toContain('laminar');
    expect(says(found(wide)).codes).not.toContain('laminar');
  });
  it('a tank far below the pump and hot liquid leave no suction head', () => {
    const side = found({ 'reservoir.cap': '0 psi', 'pump.npshRequired': '45 ft' });
    expect(levelOf(side, 'suction-short')).toBe('act');
    expect(says(side).codes).not.toContain('suction-holds');
  });
  it('a margin that rests on the cap alone is told', () => {
    const side = found({ ...wide, 'reservoir.cap': '16 psi', 'pump.npshRequired': '45 ft' });
    const { margins } = settledOf(side)!;
    expect(margins.suction).toBeGreaterThan(0);
    expect(says(side).codes).toContain('suction-on-cap');
  });
  it('a second pump never doubles the flow', () => {
    const { value } = says(found(wide));
    for (const id of ['gain-two-in-series', 'gain-two-in-parallel']) {
      expect(value(id)!).toBeGreaterThan(0);
      expect(value(id)!).toBeLessThan(1);
    }
  });
  // Such edits are refused; a file from elsewhere may still hold one.
  it('a loop that contradicts itself says so and shows no numbers', () => {
    const job = demoJob();
    const asFound = {
      ...job.asFound,
      'reservoir.volume': { is: '9 gal' },
      'reservoir.totalVolume': { is: '1 gal' },
    };
    const { findings, results, lines } = content(evaluate({ ...job, asFound }).asFound);
    expect(findings.map((f) => f.code)).toEqual(['unsolved']);
    expect([results.length, lines.length]).toEqual([0, 0]);
  });
  it('boiling or freezing is told first', () => {
    for (const [name, status] of [
      ['fans off, still air, hot day', 'boils'],
      ['frost, water in the loop', 'freezes'],
    ] as const) {
      for (const duty of ['traffic', 'cruise', 'pull']) {
        const { asFound, candidate } = evaluate(shown(JOBS[name]!(), duty, 'US'));
        for (const side of [asFound, candidate]) {
          if (settledOf(side)?.status !== status) continue;
          expect(says(side!).codes[0]).toBe(status);
          expect(says(side!).ids).not.toContain('pass-rise');
        }
      }
    }
  });
});

describe('lines', () => {
  it('the worst run is named', () => {
    const side = found();
    const runs = settledOf(side)!.operating.shares.filter((x) => x.velocity !== null);
    const worst = runs.reduce((a, b) => (b.head > a.head ? b : a));
    const { lines } = content(side);
    const said = lines.filter(({ statement }) => statement.includes('the worst of the four'));
    expect(said.map(({ id }) => id)).toEqual([`head-${worst.part}`]);
  });
  it('hoses of one bore share velocity and friction, another bore has its own', () => {
    const factors = (ids: string[]) => ids.filter((id) => /^friction-(?![ab]-)/.test(id));
    const one = factors(says(found(wide)).ids);
    expect(one).toHaveLength(1);
    const two = says(found({ ...wide, 'hose.suction.bore': '1.25 in' })).ids;
    expect(factors(two)).toHaveLength(2);
  });
  it('two in parallel show the flow of one', () => {
    const { ids } = says(found({ ...wide, 'pump.arrangement': 'two-in-parallel' }));
    expect(ids).toContain('flow-one');
    expect(ids).not.toContain('flow-two-in-parallel');
  });
});

const finite = ({ curves = [], spots = [], limits = [] }: Chart) => {
  for (const { points } of curves) expect(points.flat().every(Number.isFinite)).toBe(true);
  for (const { x, y } of spots) expect([x, y].every(Number.isFinite)).toBe(true);
  for (const { at } of limits) expect(Number.isFinite(at)).toBe(true);
};

describe('plots and bars', () => {
  it.each(Object.keys(JOBS))('hold numbers only: %s', (name) => {
    const { asFound, candidate } = evaluate(JOBS[name]!());
    finite(pumpChart(asFound, candidate));
    finite(secondPumpChart(asFound));
    const here = settledOf(asFound);
    if (!here || here.status === 'no-flow') return;
    finite(boreChart(asFound, candidate));
    const planned = settledOf(candidate);
    const rows = [
      ...headRows(asFound, here, planned, 'US'),
      ...runRows(asFound, here).rows,
      ...pumpRows(asFound, here, candidate, planned, 'US'),
      ...dashRows(asFound, here, 'US'),
    ];
    for (const { found: value } of rows) expect(value).toBeGreaterThanOrEqual(0);
  });
  it('the operating point lies on both curves', () => {
    const { curves = [], spots = [] } = pumpChart(found(wide), null);
    const { x, y } = spots[0]!;
    for (const { points } of curves) {
      const after = points.findIndex(([flow]) => flow >= x);
      const [a, b] = [points[after - 1]!, points[after]!];
      const between = a[1] + ((b[1] - a[1]) * (x - a[0])) / (b[0] - a[0]);
      // Straight between samples of a bent curve.
      expect(Math.abs(between / y - 1)).toBeLessThan(0.01);
    }
  });
  it('head by part adds up to the head of the pump', () => {
    const side = found();
    const s = settledOf(side)!;
    const sum = headRows(side, s, null, 'US').reduce((total, row) => total + row.found, 0);
    expect(sum / s.operating.head).toBeCloseTo(1, 9);
    const within = runRows(side, s).rows.reduce((total, row) => total + row.found, 0);
    const worst = Math.max(...s.operating.shares.flatMap((x) => (x.velocity ? [x.head] : [])));
    expect(within / worst).toBeCloseTo(1, 9);
  });
});

it('the candidate is judged by its own numbers', () => {
  const { candidate } = evaluate(demoJob());
  const side = (id: SideId) => (id === 'candidate' ? candidate! : found());
  expect(says(side('candidate')).value('flow')).toBe(settledOf(candidate)!.operating.flow);
  expect(says(side('asFound')).value('flow')).toBe(settledOf(found())!.operating.flow);
});
