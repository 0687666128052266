/** Upgrades compared: what must hold of every job, and what the physics says of the demonstration job's. */
import { describe, expect, it, vi } from 'vitest';
import { dropCandidate } from '$lib/job/edit';
import { evaluate, type Evaluated } from '$lib/job/evaluate';
import { movesOf } from '$lib/job/upgrades/moves';
import { takeUpMoves } from '$lib/job/upgrades/upgradesEdits';
import type { Job } from '$lib/job/types';
import { upgradesKey } from '$lib/job/upgrades/upgrades';
import { choicesOf } from '../../sheets/upgrades/choice';
import { frontChart, panels } from '../../sheets/upgrades/charts';
import { content } from '../../sheets/upgrades/content';
import { stepWords } from '../../sheets/upgrades/steps';
import { movesIn, studyOf } from '../../sheets/upgrades/study';
import { demoJob, edited, JOBS } from './jobs';
import { walkContent } from './walk';

/** A study solves some dozens of loops. */
vi.setConfig({ testTimeout: 60_000 });

const FAHRENHEIT = (K: number) => K * 1.8;
const said = (all: Evaluated) => content(all.asFound, all);
const codes = (all: Evaluated) => said(all).findings.map(({ code }) => code);
const result = (all: Evaluated, side: 'asFound' | 'candidate', id: string) =>
  content(all[side]!, all).results.find((r) => r.id === id)!.value;
const text = (all: Evaluated, code: string) =>
  said(all)
    .findings.find((f) => f.code === code)!
    .sentence.map((part) => (typeof part === 'string' ? part : '#'))
    .join('');

describe('the demonstration job', () => {
  const all = evaluate(demoJob());
  const study = studyOf(all);

  it('answers what to do first: the duct, not the exchanger, and not the pump feed at cruise', () => {
    expect(codes(all)).toContain('first');
    expect(text(all, 'first')).toMatch(/“The new way of the air alone” first/);
    expect(text(all, 'no-help')).toMatch(/“New pump feed”/);
  });
  it('says a tank delays and does not cool: at cruise it takes nothing off', () => {
    const tank = choicesOf(all, study).find(({ name }) => name === '5 gal tank')!;
    expect(tank.is.chargeCruise).toBeCloseTo(study.found.chargeCruise!, 6);
    expect(tank.is.chargePull!).toBeLessThan(study.found.chargePull!);
  });
  it('spends no more than the budget, and ends no hotter than any single move within it', () => {
    for (const { cost } of study.tried) expect(cost).toBeLessThanOrEqual(600);
    const single = study.tried.filter(({ moves }) => moves.length === 1);
    for (const { T } of single) expect(study.best!.T).toBeLessThanOrEqual(T);
  });
  it('goes to the best step by step: money adds up, and the end is the best', () => {
    const { steps, best } = study;
    expect(steps[0]).toMatchObject({ move: null, cost: 0, T: study.found.chargeCruise });
    const moves = movesIn(all.job);
    for (let i = 1; i < steps.length; i++) {
      expect(steps[i]!.cost - steps[i - 1]!.cost).toBeCloseTo(moves[steps[i]!.move!]!.cost!, 9);
    }
    expect(steps.at(-1)).toMatchObject({ cost: best!.cost, T: best!.T });
    expect(stepWords(study, moves)).toHaveLength(steps.length);
  });
  it('limits move on: what was mended does not limit then', () => {
    // As found a third of the face has no shroud and hot air comes round; after the duct it is the opening.
    expect(study.foundLimits!.part).toBe('shroud');
    expect(study.steps[1]!.limits!.part).not.toBe('shroud');
  });
  it('the candidate’s degrees, cost and cost per degree belong together', () => {
    const gain = result(all, 'candidate', 'gain-cruise')!;
    const cost = result(all, 'candidate', 'cost')!;
    const found = result(all, 'asFound', 'charge-cruise')!;
    expect(gain).toBeCloseTo(found - result(all, 'candidate', 'charge-cruise')!, 9);
    expect(result(all, 'candidate', 'per-degree-cruise')).toBeCloseTo(cost / gain, 9);
    expect(FAHRENHEIT(gain)).toBeGreaterThan(50);
    expect(result(all, 'asFound', 'cost')).toBeNull();
  });
  it('taking the best up gives the temperature it promised', () => {
    const moves = movesOf(all.job);
    const next = evaluate(
      takeUpMoves(
        all.job,
        study.best!.moves.map((i) => moves[i]!),
      ),
    );
    expect(result(next, 'candidate', 'charge-cruise')).toBeCloseTo(study.best!.T, 9);
    expect(result(next, 'candidate', 'cost')).toBeCloseTo(study.best!.cost, 9);
  });
  it('draws every choice with a value once a panel, and the front falling', () => {
    const choices = choicesOf(all, study);
    for (const { chart, missing } of panels(choices, all.asFound.limits)) {
      expect(chart.dots!.length + missing.length).toBe(choices.length);
      expect(chart.y.names).toHaveLength(choices.length);
    }
    const [front] = frontChart(choices, study, movesIn(all.job), all.asFound.limits).curves!;
    for (let i = 1; i < front!.points.length; i++) {
      expect(front!.points[i]![0]).toBeGreaterThan(front!.points[i - 1]![0]);
      expect(front!.points[i]![1]).toBeLessThan(front!.points[i - 1]![1]);
    }
  });
});

describe('an unknown price', () => {
  const job = demoJob();
  const unpriced: Job = {
    ...job,
    candidate: {
      ...job.candidate!,
      parts: job.candidate!.parts!.map((part, i) => (i === 0 ? { ...part, price: '' } : part)),
    },
  };
  it('is an unknown cost, said so, and never compared', () => {
    const all = evaluate(unpriced);
    expect(result(all, 'candidate', 'cost')).toBeNull();
    expect(result(all, 'candidate', 'per-degree-cruise')).toBeNull();
    expect(content(all.candidate!, all).findings.map(({ code }) => code)).toContain('cost-unknown');
    expect(codes(all)).toContain('unpriced');
    const chart = frontChart(
      choicesOf(all, studyOf(all)),
      studyOf(all),
      movesIn(unpriced),
      all.asFound.limits,
    );
    expect(chart.spots!.map(({ label }) => label).join()).not.toMatch(/Exchanger in the grille/);
  });
});

describe('edge states', () => {
  const nothing: Job = { ...dropCandidate(demoJob()), aside: [] };
  it('without a candidate says how to begin, and still what limits', () => {
    const all = evaluate(nothing);
    expect(codes(all)).toEqual(expect.arrayContaining(['no-candidates', 'limits']));
    expect(walkContent(said(all), 'US')).toEqual([]);
  });
  it('a budget of nothing allows nothing', () => {
    const all = evaluate(edited(demoJob(), { 'plan.budget': '$0' }));
    expect(studyOf(all).tried.map(({ moves }) => moves)).toEqual([[]]);
    expect(codes(all)).toContain('none-within');
  });
  it('a stopped pump limits by its feed, and is told', () => {
    const all = evaluate(JOBS['pump without volts']!());
    expect(codes(all)).toContain('no-flow');
    expect(studyOf(all).foundLimits!.part).toBe('feed');
  });
  it('heat stated outright: no charge air, so no degrees and nothing to judge by', () => {
    const all = evaluate(JOBS['heat stated outright']!());
    expect(result(all, 'asFound', 'charge-cruise')).toBeNull();
    expect(studyOf(all).best).toBeNull();
  });
  it('judged by the pull the charge cooler or what feeds it limits, and a pump feed helps', () => {
    const all = evaluate(
      edited({ ...nothing, aside: demoJob().aside.slice(2, 3) }, { 'plan.judge': 'pull' }),
    );
    const [, feed] = choicesOf(all, studyOf(all));
    expect(feed!.name).toBe('New pump feed');
    expect(feed!.is.chargePull!).toBeLessThan(studyOf(all).found.chargePull!);
    expect(codes(all)).toContain('first');
    expect(walkContent(said(all), 'SI')).toEqual([]);
  });
  it('what moves nothing here asks for no new study', () => {
    const job = demoJob();
    expect(upgradesKey(edited(job, { 'view.duty': 'pull', 'probe.bias': '2 kohm' }))).toBe(
      upgradesKey(job),
    );
    expect(upgradesKey(edited(job, { 'plan.budget': '$601' }))).not.toBe(upgradesKey(job));
  });
});
