import { describe, expect, it } from 'vitest';
import { evaluate, type Side } from '$lib/job/evaluate';
import { fanHandover } from '$lib/solver/airside/curves';
import type { Chart } from '$lib/kit';
import { flowRows, pressureRows } from '../../sheets/fans-and-face-airflow/bars';
import {
  fanChart,
  hasOpenFace,
  pathChart,
  speedChart,
  zoneChart,
} from '../../sheets/fans-and-face-airflow/charts';
import { content } from '../../sheets/fans-and-face-airflow/content';
import { settledOf } from '../../sheets/wiring/duty';
import { DUTY_IDS, JOBS, demoJob, edited, shown } from './jobs';

const says = (side: Side) => {
  const { findings, results, lines } = content(side);
  return {
    codes: findings.map(({ code }) => code),
    level: (code: string) => findings.find((finding) => finding.code === code)?.level,
    value: (id: string) => results.find((r) => r.id === id)?.value,
    ids: lines.map(({ id }) => id),
    line: (id: string) => lines.find((line) => line.id === id),
  };
};

/** Two good fans, shroud over all of the face, one core, nothing hot in front, standing in traffic. */
const good: Record<string, string> = {
  'fans.volts': '13 V',
  'fans.ratedVolts': '13 V',
  'fans.coverage': '100 %',
  'frontExchanger.width': '24 in',
  'frontExchanger.height': '12 in',
  'fans.diameter': '10 in',
  'fans.count': '2',
  'airPath.ramRecovery': '60 %',
  'airPath.stackHeat': '0 kW',
  'airPath.recirculation': '0 %',
  'duty.traffic.speed': '0 mph',
};
const found = (changes: Readonly<Record<string, string>> = {}, duty = 'traffic') =>
  evaluate(shown(edited(demoJob(), changes), duty, 'US')).asFound;

describe('findings follow the face', () => {
  it('fans off and standing: no air, nothing to balance', () => {
    const { codes, level, ids, value } = says(found({ ...good, 'fans.volts': '0 V' }));
    expect(level('no-air')).toBe('act');
    expect(codes).toContain('fans-off');
    expect(value('face-velocity')).toBe(0);
    expect(value('free-air-share')).toBeNull();
    expect(ids).toEqual(['ambient-pressure', 'air-density', 'ram-pressure', 'face-area']);
  });
  it('no fans at all, moving: air without a fan line', () => {
    const { codes, ids, value } = says(found({ ...good, 'fans.count': '0' }, 'cruise'));
    expect(codes).not.toContain('no-air');
    expect(value('fan-pressure')).toBeNull();
    expect(value('face-velocity')!).toBeGreaterThan(0);
    expect(ids.filter((id) => id.startsWith('fan'))).toEqual([]);
    expect(ids).toContain('face-velocity-shrouded');
  });
  it('standing, running fans help and pull less than they do freely', () => {
    const { codes, value } = says(found(good));
    expect(codes).toContain('fans-help');
    expect(value('free-air-share')!).toBeGreaterThan(0);
    expect(value('free-air-share')!).toBeLessThan(1);
  });
  // The share only falls as the stack resists more.
  it('a stack that resists more starves the fans', () => {
    const job = edited(demoJob(), good);
    const asFound = {
      ...job.asFound,
      'airPath.stackLoss': { is: [['450 ft/min', '3 inH2O']] },
    };
    const side = evaluate(shown({ ...job, asFound }, 'traffic', 'US')).asFound;
    expect(says(side).level('fans-starved')).toBe('watch');
    expect(says(side).codes).toContain('face-slow');
  });
  it('above the handover the fans are in the way, below it they help', () => {
    const { speed } = fanHandover(found(good).loop)!;
    const at = (share: number) =>
      says(found({ ...good, 'duty.cruise.speed': `${share * speed} m/s` }, 'cruise'));
    expect(at(0.9).codes).toContain('fans-help');
    expect(at(1.1).codes).toContain('fans-in-the-way');
    expect(at(1.1).value('fan-pressure')!).toBeLessThan(0);
    expect(at(0.9).value('fan-pressure')!).toBeGreaterThan(0);
  });
  it('a standing fan is in the way at any speed', () => {
    const { codes } = says(found({ ...good, 'fans.volts': '0 V' }, 'cruise'));
    expect(codes).toContain('fans-in-the-way');
    expect(codes).not.toContain('no-air');
  });
  it('low volts on the fans are told while they lift', () => {
    expect(says(found({ ...good, 'fans.volts': '11 V' })).level('fan-volts-low')).toBe('watch');
    expect(says(found(good)).codes).not.toContain('fan-volts-low');
  });
  it('a face without a whole shroud is told, a covered one is not', () => {
    const open = says(found({ ...good, 'fans.coverage': '60 %' }));
    expect(open.level('face-open')).toBe('watch');
    expect(open.value('face-velocity-open')).toBe(0);
    expect(says(found(good)).codes).not.toContain('face-open');
    expect(says(found(good)).value('face-velocity-open')).toBeNull();
  });
  it('warm air at the face: from what stands in front, or round again', () => {
    expect(says(found(good)).codes).not.toContain('face-warm');
    expect(says(found({ ...good, 'airPath.stackHeat': '6 kW' })).level('face-warm')).toBe('watch');
    const round = found({ ...good, 'airPath.recirculation': '30 %' });
    const s = settledOf(round)!;
    // The air can only come round warmer than ambient by what the core gave it.
    expect(says(round).value('face-air-rise')!).toBeLessThan(
      s.front.airOut - round.loop.site.ambientTemperature,
    );
    expect(says(round).ids).toContain('recirculation');
  });
  it('a loop that contradicts itself says so and shows no numbers', () => {
    const job = demoJob();
    const asFound = { ...job.asFound, 'fans.diameter': { is: '30 in' } };
    const { findings, results, lines } = content(evaluate({ ...job, asFound }).asFound);
    expect(findings.map((f) => f.code)).toEqual(['unsolved']);
    expect([results.length, lines.length]).toEqual([0, 0]);
  });
  it('a stopped pump does not stop the air', () => {
    const { codes, value } = says(found({ ...good, 'pump.volts': '0 V' }));
    expect(value('face-velocity')!).toBeGreaterThan(0);
    expect(codes).not.toContain('air-limits');
    expect(codes).not.toContain('liquid-limits');
  });
});

describe('lines', () => {
  it('past free delivery the driven law is shown, below it the curve', () => {
    const running = says(found(good));
    const fast = says(found({ ...good, 'duty.pull.speed': '120 mph' }, 'pull'));
    expect(running.ids).not.toContain('swept-disc');
    expect(fast.ids).toContain('swept-disc');
  });
  it('results are those of the lines', () => {
    const side = found({ ...good, 'fans.coverage': '70 %' }, 'cruise');
    const { line, value } = says(side);
    for (const [id, result] of [
      ['mean-face-velocity', 'face-velocity'],
      ['air-mass-flow', 'air-mass-flow'],
      ['air-capacity-rate', 'air-capacity-rate'],
      ['free-air-share', 'free-air-share'],
      ['handover-speed', 'handover-speed'],
      ['ram-pressure', 'ram-pressure'],
      ['fan-pressure', 'fan-pressure'],
    ] as const) {
      const shownLine = line(id);
      const got = shownLine?.kind === 'formula' ? shownLine.value : NaN;
      expect(got / value(result)!, id).toBeCloseTo(1, 9);
    }
  });
});

const finite = ({ curves = [], spots = [] }: Chart) => {
  for (const { points } of curves) expect(points.flat().every(Number.isFinite)).toBe(true);
  for (const { x, y } of spots) expect([x, y].every(Number.isFinite)).toBe(true);
};

describe('plots and bars', () => {
  it.each(Object.keys(JOBS))('hold numbers only: %s', (name) => {
    for (const duty of DUTY_IDS) {
      const { asFound, candidate } = evaluate(shown(JOBS[name]!(), duty, 'US'));
      finite(fanChart(asFound, candidate));
      finite(speedChart(asFound, candidate));
      if (hasOpenFace(asFound, candidate)) finite(zoneChart(asFound, candidate));
      const rows = [
        ...pressureRows(settledOf(asFound)!, settledOf(candidate)),
        ...flowRows(asFound, candidate),
      ];
      for (const row of rows) {
        expect(row.found).toBeGreaterThanOrEqual(0);
        if (row.candidate !== undefined) expect(row.candidate).toBeGreaterThanOrEqual(0);
      }
    }
  });
  it('the operating point lies where fans and stack cross', () => {
    const { curves = [], spots = [] } = fanChart(found(good), null);
    const { x, y } = spots[0]!;
    for (const id of ['found-fans', 'found-asked']) {
      const { points } = curves.find((curve) => curve.id === id)!;
      const after = points.findIndex(([flow]) => flow >= x);
      const [a, b] = [points[after - 1]!, points[after]!];
      const between = a[1] + ((b[1] - a[1]) * (x - a[0])) / (b[0] - a[0]);
      // Straight between samples of a bent curve.
      expect(Math.abs(between / y - 1)).toBeLessThan(0.02);
    }
  });
  it('what takes the pressure is all that drives it', () => {
    for (const duty of DUTY_IDS) {
      const s = settledOf(found(good, duty))!;
      const sum = pressureRows(s, null).reduce((total, row) => total + row.found, 0);
      const { fanPressure } = s.air.zones[0]!;
      expect(sum / (s.air.ramPressure + Math.max(0, fanPressure))).toBeCloseTo(1, 8);
    }
  });
});

describe('other cores over a share of the face', () => {
  const half = { ...good, 'airPath.stackShare': '50 %', 'airPath.stackHeat': '4 kW' };
  it('says how unlike both parts are, and draws them', () => {
    const side = found(half);
    const { codes, line } = says(side);
    expect(codes).toContain('face-partly-covered');
    expect(line('clear-velocity-shrouded')).toBeDefined();
    expect(line('covered-mass-flow')).toBeDefined();
    expect(pathChart(side, null).curves).toHaveLength(2);
    const whole = found(good);
    expect(says(whole).codes).not.toContain('face-partly-covered');
    expect(pathChart(whole, null).curves).toEqual([]);
  });
  it('less of the face covered lets more air through', () => {
    const u = ['100 %', '50 %', '0 %'].map((share) =>
      says(found({ ...half, 'airPath.stackShare': share })).value('face-velocity')!,
    );
    expect(u[1]).toBeGreaterThan(u[0]!);
    expect(u[2]).toBeGreaterThan(u[1]!);
  });
  it('behind, the same air comes cooler, and the finding turns round', () => {
    const front = says(found(half));
    const behind = says(found({ ...half, 'airPath.stackPlace': 'behind' }));
    expect(behind.value('face-velocity')).toBe(front.value('face-velocity'));
    expect(front.value('stack-rise')!).toBeGreaterThan(1);
    expect(behind.value('stack-rise')).toBe(0);
    expect(front.codes).toContain('order-of-cores');
    expect(behind.codes).toContain('order-of-cores');
  });
});
