import { exchangerEnds } from '$lib/job/sure/bands/exchangers';
import { describe, expect, it } from 'vitest';
import { evaluate, type Side } from '$lib/job/evaluate';
import type { Job } from '$lib/job/types';
import type { DutyId, SteadySolution } from '$lib/solver/loop/types';
import {
  chargeChart,
  differenceRows,
  flowChart,
  solvedSides,
  velocityChart,
} from '../../sheets/exchangers/charts';
import { content } from '../../sheets/exchangers/content';
import { DUTY_IDS, JOBS, demoJob, edited, inEveryDuty, shown } from './jobs';

const sidesOf = (job: Job, duty: DutyId) => evaluate(shown(job, duty, 'US'));
const found = (job: Job, duty: DutyId): Side => sidesOf(job, duty).asFound;
const codes = (side: Side) => content(side).findings.map(({ code }) => code);
const solution = (side: Side, duty: DutyId): SteadySolution => {
  const outcome = side.steady[duty];
  if (!outcome.ok) throw new Error(outcome.problem.message);
  return outcome.value;
};
const lineValue = (side: Side, id: string) => {
  const line = content(side).lines.find((l) => l.id === id);
  return line?.kind === 'formula' ? line.value : NaN;
};
const relative = (got: number, expected: number) => Math.abs(got / expected - 1);

describe('the lines lead from the ratings to the solution', () => {
  it.each(DUTY_IDS)('%s, both sides', (duty) => {
    const { asFound, candidate } = sidesOf(demoJob(), duty);
    for (const side of [asFound, candidate!]) {
      const s = solution(side, duty);
      const cooler = s.chargeCooler!;
      for (const [id, expected] of [
        ['charge.air-side', cooler.hA_air],
        ['charge.liquid-side', cooler.hA_liquid],
        ['charge.ua', cooler.UA],
        ['charge.effectiveness', cooler.effectiveness],
        ['front.heat', s.front.heat],
        ['front.liquid-out', s.temperatures.frontOut],
      ] as const) {
        expect(relative(lineValue(side, id), expected), id).toBeLessThan(1e-8);
      }
      const zones = s.air.zones.filter((z) => z.airMassFlow > 0);
      const UA = zones.map((z) => lineValue(side, `front.${z.zone}.ua`));
      expect(
        relative(
          UA.reduce((sum, x) => sum + x, 0),
          s.front.UA,
        ),
      ).toBeLessThan(1e-8);
    }
  });
});

describe('a core of another arrangement shows its steps', () => {
  it.each(['counterflow', 'crossflow-air-mixed', 'parallel'])('%s', (arrangement) => {
    const job = edited(demoJob(), { 'frontExchanger.arrangement': arrangement });
    const side = found(job, 'cruise');
    const s = solution(side, 'cruise');
    for (const { zone } of s.air.zones) {
      expect(lineValue(side, `front.${zone}.ntu`)).toBeGreaterThan(0);
      expect(lineValue(side, `front.${zone}.ratio`)).toBeGreaterThan(0);
    }
    expect(relative(lineValue(side, 'front.heat'), s.front.heat)).toBeLessThan(1e-8);
  });
});

describe('what is said of the demonstration loop', () => {
  // A dirty core behind little air, most of it uneven, some coming round: each must be named.
  it('as found: dirt, uneven and hot air, the air side', () => {
    const said = codes(found(demoJob(), 'cruise'));
    expect(said).toContain('front-fouled');
    expect(said).toContain('air-uneven-or-hot');
    expect(said).toContain('front-held-by-air');
    // Common practice: at cruise the intake reads the liquid.
    expect(said).toContain('intake-is-liquid');
    expect(said).toContain('flow-or-size');
  });
  it('candidate: clean, and no longer said to be dirty', () => {
    const { candidate } = sidesOf(demoJob(), 'cruise');
    expect(candidate!.loop.frontExchanger.cleanliness).toBe(1);
    expect(codes(candidate!)).not.toContain('front-fouled');
  });
  it('plenty of air and hardly any flow: the liquid side', () => {
    const job = edited(demoJob(), {
      'pump.volts': '3 V',
      'fans.coverage': '100 %',
      'airPath.ramRecovery': '80 %',
      'airPath.recirculation': '0 %',
      'airPath.stackHeat': '0 kW',
    });
    expect(codes(found(job, 'pull'))).toContain('front-held-by-liquid');
  });
});

describe('states at the edge', () => {
  it('a pump without volts: the ratings stay, nothing is said to flow', () => {
    const side = found(JOBS['pump without volts']!(), 'cruise');
    const { lines, findings, results } = content(side);
    expect(findings[0]).toMatchObject({ code: 'no-flow', level: 'act' });
    expect(lines.length).toBeGreaterThan(0);
    for (const { id } of lines) expect(id).toMatch(/^(charge|front)\.rated-/);
    for (const { value, absent } of results) {
      expect(value).toBeNull();
      expect(absent).toBeTruthy();
    }
  });
  it('heat stated outright: the front exchanger in full, the charge cooler by its rating', () => {
    const side = found(JOBS['heat stated outright']!(), 'pull');
    expect(codes(side)).toContain('heat-stated');
    expect(codes(side)).not.toContain('intake-is-liquid');
    expect(lineValue(side, 'front.heat')).toBeGreaterThan(0);
    expect(lineValue(side, 'charge.rated-ua')).toBeGreaterThan(0);
    expect(lineValue(side, 'charge.ua')).toBeNaN();
  });
  it('no air at all: said to boil where it boils, no line of air that does not move', () => {
    const side = found(JOBS['fans off, still air, hot day']!(), 'traffic');
    expect(solution(side, 'traffic').air.totalMassFlow).toBe(0);
    const { lines } = content(side);
    expect(lines.some(({ id }) => id.startsWith('front.shrouded'))).toBe(false);
    expect(codes(side).includes('boils')).toBe(solution(side, 'traffic').status === 'boils');
  });
  it('boils: told first', () => {
    const job = edited(demoJob(), {
      ...inEveryDuty({ by: 'heat', heat: '80 kW' }),
    });
    const side = found(job, 'pull');
    expect(solution(side, 'pull').status).toBe('boils');
    expect(content(side).findings[0]).toMatchObject({ code: 'boils', level: 'act' });
  });
  it('freezes: told first', () => {
    const job = JOBS['frost, water in the loop']!();
    const frozen = DUTY_IDS.flatMap((duty) => {
      const { asFound, candidate } = sidesOf(job, duty);
      return [asFound, candidate!].filter((side) => solution(side, duty).status === 'freezes');
    });
    expect(frozen.length).toBeGreaterThan(0);
    for (const side of frozen) {
      expect(content(side).findings[0]).toMatchObject({ code: 'freezes', level: 'act' });
    }
  });
  it('condensation is said exactly where the liquid is below the dew point', () => {
    const job = edited(demoJob(), { 'site.humidity': '100 %' });
    const seen = new Set<boolean>();
    for (const duty of DUTY_IDS) {
      const { asFound, candidate } = sidesOf(job, duty);
      for (const side of [asFound, candidate!]) {
        const s = solution(side, duty);
        const wet = s.temperatures.chargeCoolerIn < s.charge!.dewPoint;
        expect(codes(side).includes('charge-condenses')).toBe(wet);
        seen.add(wet);
      }
    }
    const cold = edited(
      job,
      { 'duty.pull.power': '5 hp', 'duty.pull.manifold': '20 psi' },
      'candidate',
    );
    const { candidate } = sidesOf(cold, 'pull');
    const s = solution(candidate!, 'pull');
    expect(s.temperatures.chargeCoolerIn).toBeLessThan(s.charge!.dewPoint);
    expect(codes(candidate!)).toContain('charge-condenses');
    expect(seen.has(false)).toBe(true);
  });
});

describe('plots', () => {
  it.each(Object.keys(JOBS))('hold numbers only: %s', (name) => {
    for (const duty of DUTY_IDS) {
      const { asFound, candidate } = sidesOf(JOBS[name]!(), duty);
      const sides = solvedSides(asFound, candidate);
      if (sides.length === 0) continue;
      const ends = exchangerEnds(candidate ? [asFound, candidate] : [asFound]);
      for (const draw of [velocityChart, flowChart, chargeChart]) {
        const chart = draw(sides, ends);
        expect(chart.curves).toHaveLength(sides.length);
        const numbers = [
          ...chart.curves!.flatMap((c) => c.points.flat()),
          ...chart.spots!.flatMap(({ x, y }) => [x, y]),
          ...(chart.limits ?? []).map(({ at }) => at),
        ];
        expect(numbers.every(Number.isFinite)).toBe(true);
      }
      for (const core of ['chargeCooler', 'front'] as const) {
        for (const row of differenceRows(sides, core)) {
          expect(row.found).toBeGreaterThanOrEqual(0);
          expect(Number.isFinite(row.candidate ?? 0)).toBe(true);
        }
      }
    }
  });
  it('the bars add up to heat over conductance', () => {
    const side = found(demoJob(), 'cruise');
    const s = solution(side, 'cruise');
    const rows = differenceRows(solvedSides(side, null), 'front');
    const sum = rows.reduce((total, row) => total + row.found, 0);
    expect(relative(sum, s.front.heat / s.front.UA)).toBeLessThan(1e-9);
  });
});
