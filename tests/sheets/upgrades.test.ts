/** Upgrades compared: what must hold of every job, and what the physics says of the demonstration job's. */
import { describe, expect, it, vi } from 'vitest';
import { dropCandidate } from '$lib/job/edit';
import { evaluate, evaluateAside, type Evaluated } from '$lib/job/evaluate';
import { movesOf } from '$lib/job/upgrades/moves';
import { takeUpMoves } from '$lib/job/upgrades/upgradesEdits';
import type { Job } from '$lib/job/types';
import { upgradesKey } from '$lib/job/upgrades/upgrades';
import { choicesOf } from '../../sheets/upgrades/choice';
import { frontChart, panels } from '../../sheets/upgrades/charts';
import { content } from '../../sheets/upgrades/content';
import { drawsFor, NO_DRAWS } from '../../sheets/upgrades/draws';
import { optionsOf } from '../../sheets/upgrades/options';
import { resultsOf } from '../../sheets/upgrades/results';
import { frontFindings, frontRows } from '../../sheets/upgrades/front';
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
    expect(text(all, 'first')).toMatch(/“Ducts and seals alone” \(Duct sheet/);
    expect(text(all, 'no-help')).toMatch(/“New pump feed”/);
  });
  it('says a tank delays and does not cool: at cruise it takes nothing off', () => {
    const tank = choicesOf(all, study, NO_DRAWS).find(({ name }) => name === '5 gal tank')!;
    expect(tank.is.chargeCruise).toBeCloseTo(study.found.chargeCruise!, 6);
    expect(tank.is.chargePull!).toBeLessThan(study.found.chargePull!);
  });
  it('a candidate with nothing to recover from is told in words, not as a feat of 0 s', () => {
    const [one] = choicesOf(all, study, NO_DRAWS);
    const recovered = (recovery: number) =>
      resultsOf({ ...one!, is: { ...one!.is, recovery } }, all.asFound.limits).find(
        ({ id }) => id === 'recovery-time',
      )!;
    expect(recovered(0).said).toMatch(/within the band/);
    expect(recovered(30).said).toBeUndefined();
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
  it('has every result a choice is made by, in the table and drawn small', () => {
    const asked = [
      ...['charge-cruise', 'charge-pull', 'charge-after', 'tank-peak', 'suction-margin'],
      ...['boiling-margin', 'feed-margin', 'freezing-margin', 'current', 'mass-added', 'cost'],
      ...['per-degree-cruise', 'per-degree-pull'],
    ];
    const choices = choicesOf(all, study, NO_DRAWS);
    const drawn = panels(choices, all.asFound.limits).map(({ id }) => id);
    for (const choice of choices) {
      const ids = resultsOf(choice, all.asFound.limits).map(({ id }) => id);
      expect(ids).toEqual(expect.arrayContaining(['tank-cruise', ...asked]));
    }
    expect(drawn).toEqual(expect.arrayContaining(asked));
  });
  it('draws every choice with a value once a panel, and the front falling', () => {
    const choices = choicesOf(all, study, NO_DRAWS);
    for (const { chart, missing } of panels(choices, all.asFound.limits)) {
      expect(chart.dots!.length + missing.length).toBe(choices.length);
      expect(chart.y.names).toHaveLength(choices.length);
    }
    const [front] = frontChart(
      choices,
      study,
      frontRows(all, study, NO_DRAWS),
      all.asFound.limits,
    ).curves!;
    for (let i = 1; i < front!.points.length; i++) {
      expect(front!.points[i]![0]).toBeGreaterThan(front!.points[i - 1]![0]);
      expect(front!.points[i]![1]).toBeLessThan(front!.points[i - 1]![1]);
    }
  });
});

describe('how sure the demonstration job’s answer is', () => {
  const all = evaluate(demoJob());
  const study = studyOf(all);
  const drawsOf = drawsFor(all, study, true);
  const choices = choicesOf(all, study, drawsOf);
  const options = optionsOf(all, study, choices, drawsOf);
  const rows = frontRows(all, study, drawsOf);

  it('every temperature, margin and degree of the candidate has a ±, its cost and mass none', () => {
    const { results } = content(all.candidate!, all);
    const has = (id: string) => results.find((r) => r.id === id)!.plusMinus !== undefined;
    for (const id of [
      'charge-cruise',
      'charge-pull',
      'charge-after',
      'recovery-time',
      'tank-cruise',
      'tank-peak',
      'suction-margin',
      'boiling-margin',
      'freezing-margin',
      'gain-cruise',
      'gain-pull',
      'per-degree-cruise',
      'per-degree-pull',
    ])
      expect(has(id), id).toBe(true);
    expect(has('cost')).toBe(false);
    expect(has('mass-added')).toBe(false);
  });
  it('a gain is surer than the two temperatures it is between: they are drawn alike', () => {
    const [found, hand] = choices;
    const of = (id: string, choice: typeof hand) =>
      resultsOf(choice!, all.asFound.limits).find((r) => r.id === id)!.plusMinus!;
    const apart = Math.hypot(of('charge-cruise', found), of('charge-cruise', hand));
    expect(of('gain-cruise', hand)).toBeLessThan(0.9 * apart);
  });
  it('the chances of having the cheapest degrees add up to no more than one', () => {
    const shares = options.map(({ cheapest }) => (cheapest ? cheapest.n / cheapest.N : 0));
    expect(shares.reduce((a, b) => a + b, 0)).toBeLessThanOrEqual(1);
    expect(shares[0]).toBeGreaterThan(0.95);
  });
  it('no chance is told while one of those with a price is not drawn', () => {
    const some: typeof drawsOf = (side) =>
      side === evaluateAside(all.job)[2] ? {} : drawsOf(side);
    const part = choicesOf(all, study, some);
    expect(optionsOf(all, study, part, some).every(({ cheapest }) => cheapest === null)).toBe(true);
    expect(frontFindings([rows[0]!, rows[1]!, { ...rows[2]!, cooler: null }])).toEqual([]);
  });
  it('says so in the first finding, and that the front’s neighbours are told apart', () => {
    expect(text(all, 'first')).toMatch(/the cheapest degrees in .* loops drawn within the ±/);
    expect(codes(all)).toContain('front-apart');
    for (const row of rows.slice(1)) {
      expect(row.plusMinus).toBeGreaterThan(0);
      expect(row.perDegreePlusMinus).toBeGreaterThan(0);
    }
  });
  it('two alike on the front are said to be: an offer that a wide ± may turn round', () => {
    const [, first] = rows;
    const alike = frontFindings([rows[0]!, { ...first!, cooler: { n: 130, N: 256 } }]);
    expect(alike.map(({ level }) => level)).toEqual(['watch']);
    expect(alike[0]!.sentence.join('')).toMatch(/cannot be told apart by their ±/);
  });
  it('without any ± says nothing of chances', () => {
    const bare: Job = {
      ...demoJob(),
      asFound: Object.fromEntries(
        Object.entries(demoJob().asFound).map(([path, { pm: _pm, ...entry }]) => [path, entry]),
      ),
    };
    const sure = evaluate(bare);
    expect(text(sure, 'first')).not.toMatch(/±/);
    expect(codes(sure)).not.toContain('front-apart');
    expect(walkContent(said(sure), 'US')).toEqual([]);
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
      choicesOf(all, studyOf(all), NO_DRAWS),
      studyOf(all),
      frontRows(all, studyOf(all), NO_DRAWS),
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
    const [, feed] = choicesOf(all, studyOf(all), NO_DRAWS);
    expect(feed!.name).toBe('New pump feed');
    expect(feed!.is.chargePull!).toBeLessThan(studyOf(all).found.chargePull!);
    expect(codes(all)).toContain('first');
    expect(walkContent(said(all), 'SI')).toEqual([]);
  });
  it('the other order of the cores, once allowed, is tried with all others and told what limits then', () => {
    const ordered = evaluate(edited(demoJob(), { 'plan.order': 'try', 'plan.orderCost': '$40' }));
    const moves = movesIn(ordered.job);
    const i = moves.findIndex(({ id }) => id === 'order');
    const { tried, steps } = studyOf(ordered);
    expect(tried.filter((one) => one.moves.includes(i)).length).toBeGreaterThan(1);
    expect(tried.find((one) => one.moves.join() === `${i}`)!.cost).toBe(40);
    for (const { limits } of steps) expect(limits!.part).not.toBeNull();
    const taken = takeUpMoves(ordered.job, [moves[i]!]).candidate!;
    expect(taken.changes).toEqual({ 'airPath.stackPlace': { is: 'behind' } });
    expect(taken.parts).toMatchObject([{ price: '$40', kind: 'order' }]);
    expect(walkContent(said(ordered), 'SI')).toEqual([]);
  });
  it('so is the other order in the liquid', () => {
    const ordered = evaluate(
      edited(demoJob(), { 'plan.liquidOrder': 'try', 'plan.liquidOrderCost': '$65' }),
    );
    const moves = movesIn(ordered.job);
    const i = moves.findIndex(({ id }) => id === 'plumbing');
    const { tried } = studyOf(ordered);
    expect(tried.filter((one) => one.moves.includes(i)).length).toBeGreaterThan(1);
    expect(tried.find((one) => one.moves.join() === `${i}`)!.cost).toBe(65);
    const taken = takeUpMoves(ordered.job, [moves[i]!]).candidate!;
    expect(taken.changes).toEqual({ 'loop.liquidOrder': { is: 'front-first' } });
    expect(taken.parts).toMatchObject([{ price: '$65', kind: 'plumbing' }]);
    expect(walkContent(said(ordered), 'SI')).toEqual([]);
  });
  it('ice in a mixture is no plan: refused, and why is told', () => {
    const job = demoJob();
    const all = evaluate({
      ...job,
      candidate: { name: 'Ice', changes: { 'events.ice': { is: '2 lb' } } },
    });
    const { findings, results } = content(all.candidate!, all);
    expect(findings.map(({ code }) => code)).toContain('drive-refused');
    expect(results.find(({ id }) => id === 'charge-pull')!.absent).toMatch(/plain water only/);
  });
  it('what comes off is subtracted from what is added, by a line', () => {
    const job = demoJob();
    const [first, ...rest] = job.candidate!.parts!;
    const off = evaluate({
      ...job,
      candidate: { ...job.candidate!, parts: [{ ...first!, off: '9 lb' }, ...rest] },
    });
    const before = result(evaluate(job), 'candidate', 'mass-added')!;
    // 9 lb at 0.45359237 kg, exact by definition.
    expect(before - result(off, 'candidate', 'mass-added')!).toBeCloseTo(9 * 0.45359237, 9);
    const { lines } = content(off.candidate!, off);
    expect(lines.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['mass-off-rows-1', 'mass-added']),
    );
    expect(walkContent(content(off.candidate!, off), 'US')).toEqual([]);
  });
  it('what moves nothing here asks for no new study', () => {
    const job = demoJob();
    expect(upgradesKey(edited(job, { 'view.duty': 'pull', 'probe.bias': '2 kohm' }))).toBe(
      upgradesKey(job),
    );
    expect(upgradesKey(edited(job, { 'plan.budget': '$601' }))).not.toBe(upgradesKey(job));
  });
});
