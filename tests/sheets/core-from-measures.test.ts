import { describe, expect, it } from 'vitest';
import { applyEdit } from '$lib/job/edit';
import { evaluate } from '$lib/job/evaluate';
import { emptyJob, type Job } from '$lib/job/types';
import { content } from '../../sheets/core-from-measures/content';
import { measuredCores } from '../../sheets/core-from-measures/measured';
import { walkContent } from './walk';
import { content as exchangers } from '../../sheets/exchangers/content';

const edited = (changes: Readonly<Record<string, string>>, job: Job = emptyJob()): Job =>
  Object.entries(changes).reduce((j, [path, text]) => applyEdit(j, 'asFound', path, text).job, job);

const codes = (job: Job) => content(evaluate(job).asFound).findings.map(({ code }) => code);
const result = (job: Job, id: string) =>
  content(evaluate(job).asFound).results.find((r) => r.id === id)!.value!;

describe('core from measures', () => {
  it('shows the front exchanger from its defaults, and says that the rating counts', () => {
    expect(codes(emptyJob())).toContain('front-not-counted');
    expect(codes(emptyJob()).some((code) => code.startsWith('charge'))).toBe(false);
  });

  it('counts in every sheet once its measures are chosen', () => {
    const measured = edited({ 'frontExchanger.by': 'measures' });
    const side = evaluate(measured).asFound;
    const [core] = measuredCores(side).cores;
    expect(side.loop.frontExchanger.rating.heat).toBe(core!.made.rating.heat);
    expect(side.loop.frontExchanger.airLoss.points).toBe(core!.made.airLoss);
    expect(codes(measured)).toContain('front-counts');
    const heat = (job: Job) =>
      exchangers(evaluate(job).asFound).results.find((r) => r.id === 'front-per-degree')!.value!;
    const deeper = edited({ 'frontExchanger.measure.depth': '4 in' }, measured);
    expect(heat(deeper)).toBeGreaterThan(heat(measured));
    // While the rating counts, measures change nothing elsewhere.
    expect(heat(edited({ 'frontExchanger.measure.depth': '4 in' }))).toBe(heat(emptyJob()));
  });

  it('doubts a rating far above what the metal can do, and is content with a near one', () => {
    const near = result(emptyJob(), 'front-heat');
    const watts = (x: number) => `${Math.round(x)} W`;
    const rated = (share: number, more: Readonly<Record<string, string>> = {}) =>
      codes(edited({ 'frontExchanger.rating.heat': watts(near * share), ...more }));
    const ruler = { 'frontExchanger.measure.depth': '2.25 in' };
    expect(rated(0.95, ruler)).toContain('front-agrees');
    expect(rated(1.25, ruler)).toContain('front-disagrees');
    const told = (job: Job) => content(evaluate(job).asFound);
    const both = edited({ 'frontExchanger.rating.heat': watts(near * 0.95), ...ruler });
    const shareOf = (job: Job) =>
      told(job).results.find(({ id }) => id === 'front-against-rating')!;
    expect(told(both).lines.at(-1)!.id).toBe('front.against-rating');
    expect(walkContent(told(both), 'US')).toEqual([]);
    expect(shareOf(both).value!).toBeGreaterThan(1);
    expect(shareOf(edited(ruler))).toMatchObject({ value: null, absent: 'no rating typed in' });
    // Usual measures are no witness against a rating.
    expect(rated(1.25)).toContain('front-assumed');
    expect(rated(1.25)).not.toContain('front-disagrees');
  });

  it('says which measures make no core while the rating counts, and refuses them where they would count', () => {
    const wall = { 'frontExchanger.measure.tubeWall': '0.06 in' };
    const idle = edited(wall);
    expect(codes(idle)).toContain('front-trouble');
    expect(() => exchangers(evaluate(idle).asFound)).not.toThrow();
    expect(evaluate(idle).asFound.problem).toBeUndefined();

    const refused = edited({ 'frontExchanger.by': 'measures', ...wall });
    const value = evaluate(refused).asFound.values['frontExchanger.measure.tubeWall']!;
    expect(value.draft).toBe('0.06 in');
    expect(value.why).toMatch(/two walls fill the tube/);

    // Counting with measures that make no core is refused too; the rating stays.
    const switched = edited({ ...wall, 'frontExchanger.by': 'measures' });
    expect(evaluate(switched).asFound.values['frontExchanger.by']!.choice).toBe('rating');
  });

  it('tells measures outside what its law was fitted to', () => {
    const { findings } = content(
      evaluate(edited({ 'frontExchanger.measure.louverAngle': '55' })).asFound,
    );
    const note = findings.find((f) => f.code === 'front-outside-data-louverAngleDegrees');
    expect(note!.sentence.join('')).toMatch(/louver angle is 55°; .* 8\.4° to 35°/);
  });

  it.each(['louvered', 'offset-strip', 'plain'])('every kind of fin has its lines: %s', (fin) => {
    const { lines } = content(evaluate(edited({ 'frontExchanger.measure.fin': fin })).asFound);
    expect(lines.length).toBeGreaterThan(15);
    expect(lines.some(({ id }) => id === 'front.colburn')).toBe(true);
  });
});
