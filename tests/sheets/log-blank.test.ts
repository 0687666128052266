/** Only a log, and a job in which nobody entered the vehicle: nothing may sound surer than it is. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { setLog } from '$lib/job/edit';
import { evaluate } from '$lib/job/evaluate';
import type { LogRecord } from '$lib/job/log/logRecord';
import { measuredEdits } from '$lib/job/log/logEdits';
import { emptyJob, type Job } from '$lib/job/types';
import { sentence } from '$lib/kit/format';
import { seededRandom } from '$lib/solver/numerics/random';
import { leastUA, leastUAPlusMinus } from '$lib/solver/loop/fromLog/formulas';
import { soakKnob } from '$lib/solver/loop/fromLog/asMeasured';
import { prepareLoop } from '$lib/solver/loop/prepare';
import { demoRecord, SPANS } from '../log/demoRecord';
import { exampleLoop } from '../solver/loop/example';
import { content } from '../../sheets/log/content';
import { demoJob } from './jobs';

const text = readFileSync('static/demo-log.csv', 'utf8');
const sideOf = (job: Job, record: LogRecord) => evaluate(setLog(job, record)).asFound;
const blank = emptyJob();
const record = demoRecord(blank, text);
const told = content(sideOf(blank, record));
const finding = (of: typeof told, code: string) => of.findings.find((f) => f.code === code);
const words = (of: typeof told, code: string) => sentence(finding(of, code)!.sentence, 'US');
const result = (of: typeof told, id: string) => of.results.find((r) => r.id === id);
const line = (of: typeof told, id: string) => {
  const found = of.lines.find((one) => one.id === id);
  return found?.kind === 'formula' ? found.value : NaN;
};
const estimate = (of: LogRecord, name: string) => of.fit!.estimates.find((e) => e.name === name);

describe('a log in a job without a vehicle', () => {
  it('seeks the soak as well, and not where it was entered', () => {
    expect(estimate(record, 'soakHeat')).toBeDefined();
    expect(estimate(demoRecord(demoJob(), text), 'soakHeat')).toBeUndefined();
    expect(finding(told, 'soak-sought')).toBeDefined();
  });
  it('its UA agrees with the least that flow and both temperatures ask for', () => {
    const { low, high } = estimate(record, 'frontUA')!;
    const least = line(told, 'least-ua');
    expect(high!).toBeGreaterThan(least);
    expect(low!).toBeLessThan(1.5 * least);
  });
  it('compares with no description that nobody gave, and says what it rests on', () => {
    expect(words(told, 'front-ua')).toMatch(/No exchanger was entered/);
    expect(words(told, 'front-ua')).not.toMatch(/dirt|description says/);
    expect(words(told, 'front-ua')).toMatch(/counted from ambient/);
    expect(told.lines.map(({ id }) => id)).not.toContain('share-of-entered');
  });
  it('is no good news while the stretch left out comes out worse', () => {
    expect(record.fit!.heldOut[0]!.overSeen).toBeGreaterThan(1.5);
    expect(finding(told, 'front-ua')!.level).toBe('watch');
    expect(words(told, 'front-ua')).toMatch(/Do not build on it yet/);
  });
  it('worked out whole, it is not said to be of other spans', () => {
    const whole = [{ from: 0, to: record.duration, use: 'fit' as const }];
    const of = content(sideOf(blank, demoRecord(blank, text, whole)));
    expect(finding(of, 'outdated')).toBeUndefined();
    expect(finding(told, 'outdated')).toBeDefined();
  });
  it('from a stretch that holds too little, no ± of nonsense and no good news', () => {
    const short = demoRecord(blank, text, [{ from: 300, to: 450, use: 'fit' }]);
    const of = content(sideOf(blank, short));
    expect(finding(of, 'front-ua')!.level).toBe('watch');
    for (const { id, value } of of.results) {
      const own = result(of, id.replace('-plus-minus', ''))!.value;
      if (id.endsWith('-plus-minus') && value !== null && id !== 'soak-heat-plus-minus')
        expect(value).toBeLessThan(3 * Math.abs(own!));
    }
  });
});

describe('the demonstration, described', () => {
  it('keeps its plain answer', () => {
    const of = content(sideOf(demoJob(), demoRecord(demoJob(), text)));
    expect(finding(of, 'front-ua')!.level).toBe('good');
    expect(words(of, 'front-ua')).not.toMatch(/Do not build|counted from ambient/);
    expect(SPANS).toHaveLength(2);
  });
});

describe('a log without what brings the heat', () => {
  const refused = content(
    sideOf(blank, { ...record, fit: null, refused: 'It does not hold what brings the heat.' }),
  );
  it('still tells the front exchanger from below, with its ±', () => {
    expect(result(refused, 'front-ua')!.name).toMatch(/at least/);
    expect(result(refused, 'front-ua')!.value).toBeCloseTo(line(refused, 'least-ua'), 9);
    expect(result(refused, 'front-ua-plus-minus')!.value).toBeCloseTo(
      line(refused, 'least-ua-plus-minus'),
      9,
    );
    expect(words(refused, 'least-ua')).toMatch(/at least/);
  });
});

describe('± of the least UA', () => {
  // GUM supplement 1: the same by drawing the inputs, apart from the formula.
  it('is what drawing flow and temperatures gives', () => {
    const at = { C_l: 900, T_in: 340, T_out: 334, T_a: 308 };
    const UA = leastUA.value(at);
    const [u_T, u_V] = [0.4, 0.03];
    const random = seededRandom(5);
    const drawn = Array.from({ length: 20_000 }, () =>
      leastUA.value({
        C_l: at.C_l * (1 + u_V * random.normal()),
        T_in: at.T_in + u_T * random.normal(),
        T_out: at.T_out + u_T * random.normal(),
        T_a: at.T_a,
      }),
    );
    const mean = drawn.reduce((sum, x) => sum + x, 0) / drawn.length;
    const deviation = Math.sqrt(drawn.reduce((sum, x) => sum + (x - mean) ** 2, 0) / drawn.length);
    const told = leastUAPlusMinus.value({ ...at, UA, u_T, u_V });
    expect(Math.abs(told / deviation - 1)).toBeLessThan(0.03);
  });
});

describe('soak handed on', () => {
  const { soak } = exampleLoop;
  const prepared = prepareLoop(exampleLoop);
  it('is the conductance that brings so much more at that liquid', () => {
    const T = soak.engineTemperature - 40;
    const conductance = soakKnob(prepared, 120, T)!;
    const heat = (G: number) => G * (soak.engineTemperature - T);
    expect(heat(conductance) - heat(soak.engineConductance)).toBeCloseTo(120, 9);
  });
  it('is none where the engine is no hotter than the liquid, or would have to cool it', () => {
    expect(soakKnob(prepared, 120, soak.engineTemperature)).toBeNull();
    const T = soak.engineTemperature - 40;
    expect(soakKnob(prepared, -41 * soak.engineConductance, T)).toBeNull();
  });
  it('stays as it was where it cannot be told, and that is said', () => {
    const side = sideOf(blank, record);
    if (!side.prepared.ok) throw new Error('an empty job has a loop');
    const { edits, left } = measuredEdits(side.prepared.value, record.fit!, 'US', null);
    const handed = edits.some(({ path }) => path === 'soak.engineConductance');
    expect(handed || left.some((why) => /soak/.test(why))).toBe(true);
  });
});
