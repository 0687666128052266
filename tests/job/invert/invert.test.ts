/** A target asked backwards: every value found brings the result to the target when it is put in. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { demoJob } from '$lib/job/demo';
import { applyEdit } from '$lib/job/edit';
import { evaluate } from '$lib/job/evaluate';
import { INPUTS } from '$lib/job/fields/whatItTakes';
import { invert, trialAt } from '$lib/job/invert/invert';
import type { Inversion } from '$lib/job/invert/inversion';
import { roundedInto, takenOver, textOf } from '$lib/job/invert/invertEdits';
import { triedInput } from '$lib/job/invert/invertInputs';
import { questionOf } from '$lib/job/invert/invertQuestion';
import { tried } from '$lib/job/invert/invertResults';
import { whyFlat } from '$lib/job/invert/invertWhy';
import { emptyJob, type Job, type SideId } from '$lib/job/types';
import { checkTyped } from '$lib/job/check';
import { fieldAt } from '$lib/job/fields';

const set = (job: Job, texts: Readonly<Record<string, string>>, side: SideId = 'asFound'): Job =>
  Object.entries(texts).reduce((current, [path, text]) => {
    const edited = applyEdit(current, side, path, text);
    if (edited.problem !== undefined) throw new Error(`${path}: ${edited.problem}`);
    return edited.job;
  }, job);

const ask = (job: Job, texts: Readonly<Record<string, string>>): Job =>
  set(
    job,
    Object.fromEntries(Object.entries(texts).map(([key, text]) => [`whatItTakes.${key}`, text])),
  );

const answer = (job: Job, side: SideId = 'asFound') => invert(evaluate(job)[side]!);

/** The result with the input at `x`, solved by itself. */
function resultAt(job: Job, x: number): number | null {
  const { values } = evaluate(job).asFound;
  const question = questionOf(values);
  return tried(trialAt(values, question, triedInput(question.input, values), x), question).y;
}

const kelvin = (K: number) => `${K} K`;
const plain = emptyJob('SI');

describe('round trip: the value found, put in, gives the target', () => {
  const cases: readonly [string, Record<string, string>, (() => Job)?][] = [
    ['rated heat, charge', { input: 'frontExchanger.rating.heat', temperature: '45 °C' }],
    ['same build, charge', { input: 'part.frontSameBuild', temperature: '60 °C' }, demoJob],
    ['pump volts, flow', { input: 'pump.volts', result: 'flow', flow: '15 L/min' }],
    ['ambient, tank', { input: 'site.ambient', result: 'reservoir', temperature: '55 °C' }],
    ['power, tank', { input: 'duty.cruise.power', result: 'reservoir', temperature: '50 °C' }],
    ['hoses, suction', { input: 'part.hoses', result: 'suction', head: '12 m' }],
    ['fans, air', { input: 'fans.volts', result: 'air', duty: 'traffic', air: '0.25 m³/s' }],
    ['tank, pulls', { input: 'part.reservoir', result: 'pull-end', temperature: '66.5 °C' }],
    ['pump volts, recovery', { input: 'pump.volts', result: 'recovery', time: '120 s' }],
  ];
  it.each(cases)(
    '%s',
    (_name, texts, base = () => plain) => {
      const job = ask(base(), { kind: 'exactly', ...texts });
      const { verdict, value, level, crossings } = answer(job);
      expect(verdict).toBe('found');
      for (const { x } of crossings) {
        const back = resultAt(job, x)!;
        expect(Math.abs(back - level!)).toBeLessThanOrEqual(1e-6 * Math.abs(level!));
      }
      expect(crossings.map(({ x }) => x)).toContain(value);
    },
    60_000,
  );

  it('any pump voltage: its own flow, asked backwards, leads back to it', () => {
    fc.assert(
      fc.property(fc.double({ min: 6, max: 16, noNaN: true }), (volts) => {
        const job = ask(plain, { input: 'pump.volts', result: 'flow', kind: 'exactly' });
        const flow = resultAt(job, volts)!;
        const { value } = answer(ask(job, { flow: `${flow * 6e4} L/min` }));
        expect(Math.abs(value! / volts - 1)).toBeLessThan(1e-6);
      }),
      { numRuns: 5 },
    );
  }, 60_000);

  it('any ambient: a hotter target allows a hotter day', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 300, max: 320, noNaN: true }),
        fc.double({ min: 1, max: 10, noNaN: true }),
        (T, more) => {
          const of = (target: number) =>
            answer(
              ask(plain, {
                input: 'site.ambient',
                result: 'reservoir',
                temperature: kelvin(target),
              }),
            ).value!;
          const rise = of(T + more) - of(T);
          expect(rise).toBeGreaterThan(0);
          // About a degree for a degree (the idea of the air-to-boil test, from memory SAE J819); engine
          // and charge are hotter than the liquid and so give a cooler loop more.
          expect(rise / more).toBeGreaterThan(0.9);
          expect(rise / more).toBeLessThan(1.3);
        },
      ),
      { numRuns: 4 },
    );
  }, 60_000);
});

describe('a target met is told with how far the input may go', () => {
  it('both kinds of side, and the end of the range where any value does', () => {
    const up = answer(
      ask(plain, { input: 'pump.volts', result: 'flow', kind: 'at-least', flow: '10 L/min' }),
    );
    expect(up.verdict).toBe('already');
    expect(up.wanted).toBe('above');
    expect(up.value!).toBeLessThan(up.present.x);
    const hot = answer(
      ask(plain, { input: 'site.ambient', result: 'reservoir', temperature: '110 °C' }),
    );
    expect(hot.verdict).toBe('any');
    expect(hot.value).toBeNull();
  });

  it('within a little of the best: just that much is given away', () => {
    const job = ask(plain, {
      input: 'part.hoses',
      result: 'charge',
      duty: 'pull',
      kind: 'within',
      withinDegrees: '3 K',
    });
    const { value, best, level } = answer(job);
    expect(level! - best!.y).toBeCloseTo(3, 9);
    expect(resultAt(job, value!)! - best!.y).toBeCloseTo(3, 6);
    // Smallest: a little less hose costs more.
    expect(resultAt(job, 0.98 * value!)!).toBeGreaterThan(level!);
  });

  it('sizes: the smallest that meets, and none between', () => {
    const fed = set(plain, { 'pump.voltsFrom': 'feed' });
    const { sold, only } = (({ sold }) => ({
      sold,
      only: triedInput('part.gauge', evaluate(fed).asFound.values).only!,
    }))(
      answer(
        ask(plain, { input: 'part.hoses', result: 'flow', kind: 'at-least', flow: '25 L/min' }),
      ),
    );
    expect(sold.map(({ meets }) => meets)).toEqual([...sold.map(({ meets }) => meets)].sort());
    const wire = answer(ask(fed, { input: 'part.gauge', result: 'drop', drop: '0.6 V' }));
    const at = only.findIndex(({ x }) => x === wire.value);
    expect(at).toBeGreaterThan(0);
    const job = ask(fed, { input: 'part.gauge', result: 'drop' });
    expect(resultAt(job, only[at]!.x)!).toBeLessThanOrEqual(0.6);
    expect(resultAt(job, only[at - 1]!.x)!).toBeGreaterThan(0.6);
  });
});

describe('no value can', () => {
  const steps = ({ rungs }: Inversion) => rungs.map(({ id }) => id);

  it('below the day’s air no exchanger brings it, and the steps from ambient add up to the best', () => {
    const job = ask(plain, {
      input: 'frontExchanger.rating.heat',
      temperature: '20 °C',
      ambient: '30 °C',
    });
    const found = answer(job);
    expect(found.verdict).toBe('none');
    expect(found.value).toBeNull();
    expect(steps(found)).toEqual(['face', 'front', 'between', 'cooler']);
    const top = found.rungs.reduce((sum, { by }) => sum + by, 303.15);
    expect(top).toBeCloseTo(found.at!.y, 6);
    expect(found.best!.y).toBeGreaterThan(303.15);
  });

  it('with the charge cooler last its rise is a step of the way up to the reservoir', () => {
    const job = ask(set(plain, { 'loop.liquidOrder': 'front-first' }), {
      input: 'frontExchanger.rating.heat',
      result: 'reservoir',
      temperature: '20 °C',
      ambient: '30 °C',
    });
    const found = answer(job);
    expect(steps(found)).toEqual(['face', 'front', 'taken', 'tank']);
    const top = found.rungs.reduce((sum, { by }) => sum + by, 303.15);
    expect(top).toBeCloseTo(found.at!.y, 6);
    expect(found.rungs[2]!.by).toBeGreaterThan(0);
  });

  it('demonstration: hot air at the face stands in the way of any core behind it', () => {
    const job = ask(demoJob(), {
      input: 'frontExchanger.rating.heat',
      temperature: '60 °C',
      ambient: '38 °C',
    });
    const found = answer(job);
    expect(found.verdict).toBe('none');
    const top = found.rungs.toSorted((a, b) => b.by - a.by)[0]!;
    expect(top.id).toBe('face');
    // The air helps more than anything: what stands in front, and how much air the fan draws.
    expect(found.rivals[0]!.id).toMatch(/^(fans|airPath)\./);
    expect(found.gaps.map(({ gone }) => gone.path)).toEqual(['frontExchanger.rating.heat']);
  });

  it('volume never moves where the loop settles', () => {
    const job = ask(plain, { input: 'part.reservoir', result: 'reservoir', temperature: '40 °C' });
    const found = answer(job);
    expect(found.verdict).toBe('flat');
    const { values } = evaluate(job).asFound;
    expect(whyFlat(values, found.question)).toMatch(/never where it settles/);
  });

  it('an input that does not count says why', () => {
    const why = (texts: Record<string, string>, job = plain) => {
      const asked = ask(job, texts);
      const found = answer(asked);
      expect(found.verdict).toBe('flat');
      return whyFlat(evaluate(asked).asFound.values, found.question);
    };
    expect(why({ input: 'duty.pull.speed' })).toMatch(/another duty/);
    expect(why({ input: 'duty.cruise.heat' })).toMatch(/another way/);
    expect(why({ input: 'fans.volts' }, set(plain, { 'fans.count': '0' }))).toMatch(/no fan/);
    expect(why({ input: 'reservoir.cap' }, set(plain, { 'reservoir.vent': 'vented' }))).toMatch(
      /open/,
    );
  });

  it('a hole between two looks is found and kept out', () => {
    // No fitting at all lets the liquid through, a pinhole does not: nothing shows it but a look in between.
    const job = ask(plain, {
      input: 'hose.back.fittingBore',
      result: 'flow',
      kind: 'within',
      withinShare: '5 %',
    });
    const found = answer(job);
    expect(found.gaps).toHaveLength(1);
    expect(found.gaps[0]!.gone.code).toBe('no-flow');
    expect(found.gaps[0]!.from).toBeLessThan(1e-5);
    expect(resultAt(job, 0)).not.toBeNull();
    for (const { x, jump } of found.crossings)
      if (!jump) expect(Math.abs(resultAt(job, x)! / found.level! - 1)).toBeLessThan(1e-6);
  });

  it('a loop that stands still is no answer', () => {
    const still = set(plain, { 'pump.volts': '0 V' });
    const found = answer(ask(still, { input: 'fans.volts', result: 'reservoir' }));
    expect(found.verdict).toBe('unsolved');
    expect(found.present.tried.gone!.code).toBe('no-flow');
  });

  it('boiling ends the range and is not extrapolated', () => {
    const job = ask(plain, {
      input: 'duty.pull.power',
      duty: 'pull',
      result: 'boiling',
      kind: 'at-least',
      difference: '10 K',
    });
    const found = answer(job);
    const gap = found.gaps.at(-1)!;
    expect(gap.gone.code).toBe('boils');
    // No margin below zero is ever told.
    expect(found.looks.every(({ y }) => Number.isNaN(y) || y >= 0)).toBe(true);
    expect(found.verdict).toBe('already');
    expect(found.value!).toBeLessThan(gap.from);
  });
}, 120_000);

describe('two values', () => {
  it('pump volts: too slow leaves the liquid hot, too fast heats it', () => {
    const of = (target: string) =>
      answer(ask(plain, { input: 'pump.volts', kind: 'exactly', temperature: target }));
    const { best, shape, overdone, present } = of('0 °C');
    expect(shape).toBe('turns');
    expect(overdone).toBe(true);
    const between = (best!.y + present.tried.y!) / 2;
    const { verdict, value, crossings } = of(kelvin(between));
    expect(verdict).toBe('found');
    expect(crossings).toHaveLength(2);
    const [slow, fast] = crossings.map(({ x }) => x);
    expect(slow!).toBeLessThan(best!.x);
    expect(fast!).toBeGreaterThan(best!.x);
    // The one nearer to the present pump is told.
    expect(value).toBe(fast);
    const job = ask(plain, { input: 'pump.volts', kind: 'exactly' });
    for (const x of [slow!, fast!])
      expect(Math.abs(resultAt(job, x)! - between)).toBeLessThan(1e-6 * between);
    // And the slowest pump that keeps it is part of the stretch that meets it.
    const { meets } = answer(
      ask(plain, { input: 'pump.volts', kind: 'at-most', temperature: kelvin(between) }),
    );
    expect(meets).toHaveLength(1);
    expect(meets[0]!.from).toBeCloseTo(slow!, 9);
    expect(meets[0]!.to).toBeCloseTo(fast!, 9);
  }, 60_000);
});

describe('taking over', () => {
  it('each input offered can be written into its fields and read back', () => {
    for (const units of ['US', 'SI'] as const) {
      const { values } = evaluate(emptyJob(units)).asFound;
      for (const { value: id } of INPUTS) {
        const input = triedInput(id, values);
        const [low, high] = input.range;
        const x = input.only ? input.only[1]!.x : input.present || low + 0.3 * (high - low);
        for (const setting of input.settings(x)) {
          const typed = textOf(setting, values, units, 7);
          const checked = checkTyped(fieldAt(setting.path), typed, { units, dash: 'hose-bore' });
          if (!checked.ok) throw new Error(`${id}, ${setting.path}: ${checked.message}`);
          if (setting.si === undefined) continue;
          const off = Math.abs(checked.meaning.si! - setting.si);
          expect(off, `${id} ${setting.path} ${String(typed)}`).toBeLessThanOrEqual(
            1e-5 * Math.abs(setting.si) + 1e-12,
          );
        }
      }
    }
  });

  it('the candidate then meets the target, rounded to the safe side', () => {
    const questions: readonly [Job, Record<string, string>][] = [
      [
        { ...demoJob(), candidate: null },
        { input: 'part.frontSameBuild', temperature: '60 °C' },
      ],
      [plain, { input: 'part.hoses', result: 'flow', kind: 'at-least', flow: '24 L/min' }],
      [plain, { input: 'part.reservoir', result: 'pull-end', temperature: '66 °C' }],
    ];
    for (const [base, texts] of questions) {
      const job = ask(base, texts);
      const found = answer(job);
      expect(found.verdict).toBe('found');
      const candidate = answer(takenOver(job, 'asFound', found), 'candidate');
      expect(candidate.verdict).toBe('already');
      const off = Math.abs(candidate.present.tried.y! - found.level!);
      expect(off).toBeLessThan(0.002 * Math.abs(found.level!));
    }
  }, 60_000);

  it('rounds inwards', () => {
    const stretch = { from: 1.00004, to: 2, fromEnd: 'crossing', toEnd: 'range' } as const;
    expect(roundedInto(1.00004, 'head', 'SI', [stretch])).toBe(1.001);
    expect(roundedInto(1.00004, 'head', 'SI', [{ ...stretch, from: 0.5, to: 1.00004 }])).toBe(1);
  });

  it('a wrong dimension is refused beside its field and kept', () => {
    const edited = applyEdit(plain, 'asFound', 'whatItTakes.temperature', '8 gpm');
    expect(edited.problem).toMatch(/does not measure a temperature/);
    const value = evaluate(edited.job).asFound.values['whatItTakes.temperature']!;
    expect(value.draft).toBe('8 gpm');
    expect(value.text).toBe('140 °F');
  });
});
