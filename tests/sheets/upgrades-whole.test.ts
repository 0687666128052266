/** What the answer of sheet 17 must not hide. */
import { describe, expect, it } from 'vitest';
import { evaluate } from '$lib/job/evaluate';
import { assess } from '$lib/job/upgrades/assess';
import type { Job } from '$lib/job/types';
import { sentence } from '$lib/kit/format';
import { bestChoice, choicesOf } from '../../sheets/upgrades/choice';
import { content } from '../../sheets/upgrades/content';
import { answerAtOnce } from '../../sheets/gathering/answer';
import { drawnSentence } from '../../sheets/upgrades/drawn';
import { NO_DRAWS, type DrawsOf } from '../../sheets/upgrades/draws';
import { firstOf } from '../../sheets/upgrades/firstFindings';
import { optionsOf } from '../../sheets/upgrades/options';
import { sidesIn, studyOf } from '../../sheets/upgrades/study';
import { enoughSentence, exactSentence, otherwise } from '../../sheets/upgrades/whole';
import { demoJob, edited } from './jobs';

const words = (of: readonly unknown[]) => sentence(of as Parameters<typeof sentence>[0], 'US');
const demo = evaluate(demoJob());
const study = studyOf(demo);
const { charge: limit } = demo.asFound.limits;

describe('the other way to judge', () => {
  it('is told of the best within the budget: cool at cruise, hot at the end of the pull', () => {
    const best = assess(sidesIn(demo.job)(study.best!.moves));
    expect(best.chargeCruise!).toBeLessThan(limit);
    expect(best.chargePull!).toBeGreaterThan(limit);
    const other = otherwise(demo, study, limit, NO_DRAWS)!;
    expect(other.past).toBe(true);
    expect(words(other.sentence)).toMatch(/last pull ends is then still at .* past the limit/);
    const found = content(demo.asFound, demo).findings.find(({ code }) => code === 'otherwise')!;
    expect(found.level).toBe('watch');
  });
});

describe('how much was drawn', () => {
  it('is told by what is there: 0.951/√N of a ± for N normal draws, and that few are few', () => {
    const drawn = (settled: number, drives: number): DrawsOf => {
      const draws = {
        chargeCruise: new Float64Array(settled),
        chargePull: new Float64Array(drives),
      };
      return () => draws;
    };
    // 0.951/√2048 = 2.1 %, 0.951/√256 = 5.9 %, 0.951/√32 = 16.8 %.
    const full = words(drawnSentence(demo, drawn(2048, 256)));
    expect(full).toMatch(/2,048 settled loops, .* about 2\.1\s% .*, 256 drives, .* about 5\.9\s%/);
    expect(full).toContain('last digit is not sure');
    expect(full).not.toContain('few');
    expect(words(drawnSentence(demo, drawn(256, 32)))).toMatch(
      /32 drives, .* about 17\s% .*few, .* draws 2,048 and 256\./,
    );
    expect(drawnSentence(demo, NO_DRAWS)).toEqual([]);
  });
  it('stands on the sheet and in the answer, which the cover takes', () => {
    const found = content(demo.asFound, demo).findings.find(({ code }) => code === 'drawn')!;
    const answer = answerAtOnce(demo)!.paragraphs.at(-1)!;
    expect(words(answer)).toBe(words(found.sentence));
    expect(words(answer)).toContain('32 drives');
  });
});

describe('a loop that keeps its limit', () => {
  const cool = evaluate(edited(demoJob(), { 'limits.charge': '300 °F' }));
  it('is told so before anything is sold', () => {
    expect(words(enoughSentence(studyOf(cool), cool.asFound.limits.charge, null))).toMatch(
      /within the limit of .* nothing has to be bought/,
    );
    expect(enoughSentence(study, limit, null)).toEqual([]);
  });
});

describe('what nobody would feel', () => {
  it('is never done first, however cheap', () => {
    const job: Job = {
      ...demoJob(),
      candidate: {
        name: 'A little',
        changes: { 'soak.hoseConductance': { is: '4.9 W/K' } },
        parts: [{ what: 'sleeve', count: '1', price: '$1', mass: '0 kg' }],
      },
      aside: [],
    };
    const all = evaluate(job);
    const options = optionsOf(all, studyOf(all), choicesOf(all, studyOf(all), NO_DRAWS), NO_DRAWS);
    expect(options[0]!.gain).toBeLessThan(0.5);
    expect(firstOf(options)).toBeNull();
    const codes = content(all.asFound, all).findings.map(({ code }) => code);
    expect(codes).not.toContain('first');
  });
});

describe('figures taken as exact', () => {
  it('are named where a candidate has no ± of its own, and none of the demonstration’s', () => {
    expect(exactSentence(demo)).toEqual([]);
    const bare = {
      ...demoJob(),
      candidate: { name: 'Bigger core', changes: { 'frontExchanger.rating.heat': { is: '9 kW' } } },
    };
    expect(words(exactSentence(evaluate(bare)))).toMatch(
      /“Bigger core”: nothing it changes has a ±/,
    );
  });
  it('and a loop without any ± says so', () => {
    const entries = Object.entries(demoJob().asFound).map(([path, { pm: _, ...rest }]) => [
      path,
      rest,
    ]);
    const all = evaluate({ ...demoJob(), asFound: Object.fromEntries(entries) });
    const codes = content(all.asFound, all).findings.map(({ code }) => code);
    expect(codes).toContain('no-spread');
    expect(content(demo.asFound, demo).findings.map(({ code }) => code)).not.toContain('no-spread');
  });
});

describe('the best within the budget', () => {
  it('has a column of its own, with what it costs and what it does to the tank', () => {
    const best = bestChoice(demo, study, NO_DRAWS)!;
    expect(best.parts!.cost).toBe(study.best!.cost);
    expect(best.is.chargeCruise).toBeCloseTo(study.best!.T, 6);
    expect(best.is.tankCruise).not.toBeNull();
  });
  it('has none where it is a candidate as it stands', () => {
    const job: Job = { ...demoJob(), candidate: null, aside: demoJob().aside.slice(0, 1) };
    const all = evaluate(job);
    expect(studyOf(all).best!.moves).toHaveLength(1);
    expect(bestChoice(all, studyOf(all), NO_DRAWS)).toBeNull();
  });
});
