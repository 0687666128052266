/** The sheet on runaway: told by what the physics must give, on the demonstration job and its edges. */
import { describe, expect, it } from 'vitest';
import { applyEdit } from '$lib/job/edit';
import { evaluate } from '$lib/job/evaluate';
import type { Job } from '$lib/job/types';
import { branchChart, heatChart } from '../../sheets/runaway/charts';
import { content, whileDragged } from '../../sheets/runaway/content';
import { slid, spans, typedKnob } from '../../sheets/runaway/slider';
import { studyOf } from '../../sheets/runaway/study';
import { walkOf } from '../../sheets/runaway/walk';
import { KNOBS, KNOB_RANGE, NEUTRAL } from '$lib/solver/loop/runaway/types';
import { KNOB_PATH } from '../../sheets/runaway/inputs';
import { demoJob, DUTY_IDS, edited, JOBS, shown } from './jobs';
import { walkContent } from './walk';

const sideOf = (job: Job, duty = 'traffic') => evaluate(shown(job, duty, 'US')).asFound;
const study = (changes: Record<string, string>, duty = 'traffic') => {
  const outcome = studyOf(sideOf(edited(demoJob(), changes), duty));
  if (!outcome.ok) throw new Error(outcome.problem.message);
  return outcome.value;
};
const codes = (changes: Record<string, string>, duty = 'traffic') =>
  content(sideOf(edited(demoJob(), changes), duty)).findings.map(({ code }) => code);

const EDGE = {
  'runaway.capHeld': 'open',
  'runaway.underhoodFeedback': 'on',
  'runaway.suctionFeedback': 'on',
} as const;

it('while a knob is dragged results follow it, lines and findings wait', () => {
  const before = content(sideOf(demoJob()));
  const moved = sideOf(edited(demoJob(), { 'runaway.ambientShift': '18 °F' }));
  const during = whileDragged(moved, before);
  expect(during.results).toEqual(content(moved).results);
  expect(during.results).not.toEqual(before.results);
  expect(during.lines).toBe(before.lines);
  expect(during.findings).toBe(before.findings);
  expect(whileDragged(moved, undefined).lines.length).toBeGreaterThan(5);
});

describe('as described', () => {
  it('settles where sheet 1 has it', () => {
    for (const duty of ['traffic', 'cruise']) {
      const side = sideOf(demoJob(), duty);
      const s = side.steady[duty as 'traffic'];
      const result = content(side).results.find(({ id }) => id === 'settles')!.value!;
      expect(s.ok && Math.abs(s.value.temperatures.pumpIn - result)).toBeLessThan(1e-6);
    }
  });

  it('a pull held for good has no balance, and says so', () => {
    expect(codes({}, 'pull')).toContain('runs-away');
    const walk = walkOf(sideOf(demoJob(), 'pull'));
    expect(walk.ok && walk.value).toBeNull();
  });
});

describe('tried', () => {
  it('half the flow widens the drop; a weak fan does not', () => {
    const { neutral, now } = study({ 'runaway.flowShare': '50 %' });
    expect(now.found.fromCold!.drop).toBeGreaterThan(1.5 * neutral.found.fromCold!.drop);
    const weak = study({ 'runaway.fanShare': '70 %' });
    expect(weak.now.found.fromCold!.T).toBeGreaterThan(neutral.found.fromCold!.T);
    expect(weak.now.found.fromCold!.drop).toBeLessThan(1.1 * neutral.found.fromCold!.drop);
  });

  it('finds the fold with the cap open and the bay joining in, and a lost balance beyond it', () => {
    const { edge, now } = study(EDGE);
    expect(edge?.why).toBe('fold');
    expect(now.found.all.map(({ stable }) => stable)).toEqual([true, false]);
    expect(codes(EDGE)).toEqual(expect.arrayContaining(['edge-fold', 'second-crossing']));
    const past = { ...EDGE, 'runaway.ambientShift': `${(edge!.knob + 0.5) * 1.8} °F` };
    expect(codes(past)).toContain('runs-away');
    const before = { ...EDGE, 'runaway.ambientShift': `${(edge!.knob - 0.5) * 1.8} °F` };
    expect(codes(before)).toContain('settles');
  });

  it('draws every crossing, the loop as described behind, and the folds', () => {
    const side = sideOf(edited(demoJob(), { ...EDGE, 'runaway.ambientShift': '10 °F' }));
    const heat = heatChart(side, null);
    expect(heat.spots!.map(({ label }) => label)).toEqual(['stable', 'unstable']);
    expect(heat.curves!.map(({ id }) => id)).toEqual([
      'ghost-in',
      'ghost-out',
      'found-in',
      'found-out',
    ]);
    const branch = branchChart(side, null);
    expect(branch.spots!.map(({ label }) => label)).toContain('fold');
    expect(branch.spots!.map(({ label }) => label)).toContain('now');
  });

  it('slides without following the branches anew', () => {
    const at = (shift: string) => study({ ...EDGE, 'runaway.ambientShift': shift }).branches;
    expect(at('5 °F')).toBe(at('6 °F'));
  });
});

describe('the walk', () => {
  it('has seven steps whose settings go in, and do what the answer says', () => {
    const job = demoJob();
    const walk = walkOf(sideOf(job));
    if (!walk.ok || !walk.value) throw new Error('no walk');
    expect(walk.value).toHaveLength(7);
    for (const { set, choices, right, see } of walk.value) {
      expect(choices[right].length).toBeGreaterThan(0);
      for (const part of see) if (typeof part !== 'string') expect(part.value).not.toBeNaN();
      for (const knob of KNOBS) {
        const to = set.knobs[knob];
        if (to === undefined) continue;
        expect(
          applyEdit(job, 'asFound', KNOB_PATH[knob], typedKnob(knob, to, 'US')).problem,
        ).toBeUndefined();
      }
    }
    expect(walk.value[0]!.right).toBe('b');
    // The last step leaves the knobs where the demonstration loop has lost its balance.
    const last = walk.value[6]!;
    expect(last.right).toBe('b');
    expect(
      codes({
        ...EDGE,
        'runaway.ambientShift': typedKnob('ambientShift', last.set.knobs.ambientShift!, 'US'),
      }),
    ).toContain('runs-away');
  });
});

describe('sliders', () => {
  it('reach neutral and both ends, in both systems', () => {
    for (const system of ['US', 'SI'] as const) {
      for (const knob of KNOBS) {
        const { low, high, step, typed } = spans(knob, system);
        for (const si of [NEUTRAL[knob], ...KNOB_RANGE[knob]]) {
          const at = slid(knob, si, system);
          expect(at).toBeGreaterThanOrEqual(low);
          expect(at).toBeLessThanOrEqual(high);
          expect(((at - low) / step) % 1).toBeCloseTo(0, 9);
          const { job, problem } = applyEdit(demoJob(), 'asFound', KNOB_PATH[knob], typed(at));
          expect(problem).toBeUndefined();
          expect(evaluate(job).asFound.values[KNOB_PATH[knob]]!.si).toBeCloseTo(si, 9);
        }
      }
    }
  });
});

describe('on any job', () => {
  it.each(Object.keys(JOBS))(
    '%s, knobs at both ends: every line holds',
    (name) => {
      for (const duty of DUTY_IDS) {
        const ends: Record<string, string>[] = [
          { 'runaway.ambientShift': '40 °F', 'runaway.loadShare': '300 %', ...EDGE },
          {
            'runaway.flowShare': '5 %',
            'runaway.fanShare': '10 %',
            'runaway.ambientShift': '-45 °F',
          },
        ];
        for (const changes of ends) {
          const side = sideOf(edited(JOBS[name]!(), changes), duty);
          const said = content(side);
          expect(walkContent(said, 'US')).toEqual([]);
          // A day beyond what the laws of air cover is refused in words.
          if (!studyOf(side).ok)
            expect(said.findings.map(({ code }) => code)).toEqual(['unsolved']);
          expect(walkOf(side)).toBeDefined();
          const numbers = (heatChart(side, side).curves ?? []).flatMap(({ points }) =>
            points.flat(),
          );
          expect(numbers.every(Number.isFinite)).toBe(true);
        }
      }
    },
    120_000,
  );
});
