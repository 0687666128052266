/** What the draws of several sides say together: worked by hand, and by Monte Carlo of known sums. */
import { describe, expect, it } from 'vitest';
import { demoJob } from '$lib/job/demo';
import { evaluate } from '$lib/job/evaluate';
import { finished, sureness } from '$lib/job/sure/sureness';
import { assess, currentOf, pumpCurrentOf } from '$lib/job/upgrades/assess';
import { driven, drivenKey } from '$lib/job/upgrades/driven';
import {
  cheapest,
  coolerThan,
  costsPerDegree,
  countOf,
  gains,
  rangeOf,
} from '$lib/job/upgrades/spreads';
import { candidateSides, setSides, toldSets, upgradeStudy } from '$lib/job/upgrades/upgrades';
import { movesOf } from '$lib/job/upgrades/moves';

const of = (...values: number[]) => Float64Array.from(values);

describe('draws set beside one another', () => {
  it('give degrees draw by draw, and none where one has no answer', () => {
    expect([...gains(of(360, 350, NaN), of(340, 345, 330))!]).toEqual([20, 5, NaN]);
    expect(gains(of(1, 2), of(1))).toBeNull();
    expect(gains(null, of(1))).toBeNull();
  });
  it('price a degree only where one is taken off', () => {
    // $100 over 20 K and over 5 K; nothing and less than nothing have no price.
    expect([...costsPerDegree(100, of(20, 5, 0, -3))]).toEqual([5, 20, NaN, NaN]);
  });
  it('count which offer is the cheapest in each', () => {
    // Prices per degree: 5, 10, 2 against 4, none, 3.
    const wins = cheapest([
      { cost: 10, taken: of(2, 1, 5) },
      { cost: 12, taken: of(3, 0, 4) },
    ]);
    expect(wins).toEqual([
      { n: 2, N: 3 },
      { n: 1, N: 3 },
    ]);
    expect(cheapest([])).toBeNull();
    expect(
      cheapest([
        { cost: 1, taken: of(1) },
        { cost: 1, taken: of(1, 2) },
      ]),
    ).toBeNull();
  });
  it('count what is cooler, and even is not cooler', () => {
    expect(coolerThan(of(300, 300, 310), of(310, 300, 300))).toEqual({ n: 1, N: 3 });
    expect(countOf(of(NaN, NaN), () => true)).toBeNull();
  });
  it('are cheaper than another as often as normal distributions say', () => {
    // Two gains, 10 ± and 11 ±, sd 1 each, apart: P(difference > 0) = Φ(1/√2) = 0.7602 (tables of Φ).
    const n = 4001;
    const z = Array.from({ length: n }, (_, i) => inverseNormal((i + 0.5) / n));
    const a = Float64Array.from(z, (v) => 10 + v);
    // The same quantiles in an order that has nothing to do with the first: step by a prime.
    const b = Float64Array.from(z, (_, i) => 11 + z[(i * 1597) % n]!);
    const [one, other] = cheapest([
      { cost: 1, taken: a },
      { cost: 1, taken: b },
    ])!;
    expect(one!.n + other!.n).toBe(n);
    expect(other!.n / n).toBeCloseTo(0.7602, 2);
  });
  it('tell no range where too many draws have no answer, or where nothing varies', () => {
    const wide = Float64Array.from({ length: 100 }, (_, i) => i);
    expect(rangeOf(wide)!.high - rangeOf(wide)!.low).toBeCloseTo(0.95 * 99, 9);
    expect(rangeOf(wide.map((v, i) => (i < 3 ? NaN : v)))).toBeNull();
    expect(rangeOf(of(5, 5, 5))).toBeNull();
    expect(rangeOf(null)).toBeNull();
  });
});

/** Standard normal quantile by bisection of its integral: for the check alone. */
function inverseNormal(p: number): number {
  let [low, high] = [-6, 6];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (normal(middle) < p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
/** Φ by its power series. @source Abramowitz & Stegun 26.2.10 */
function normal(x: number): number {
  let sum = 0;
  let term = x;
  for (let n = 0; n < 120; n++) {
    sum += term / (2 * n + 1);
    term *= -(x * x) / (2 * (n + 1));
  }
  return 0.5 + sum / Math.sqrt(2 * Math.PI);
}

describe('a side with its drive drawn', () => {
  const job = demoJob();
  const { asFound, candidate } = evaluate(job);
  const SIZE = { draws: 32, samples: 16, repetitions: 2 };

  it('lies round what it is without any ±', { timeout: 60_000 }, () => {
    const is = assess(candidate!);
    const draws = finished(driven(candidate!, 32))!;
    for (const [id, value] of [
      ['chargePull', is.chargePull],
      ['chargeAfter', is.chargeAfter],
      ['tankPeak', is.tankPeak],
      ['boiling', is.boiling],
      ['suction', is.suction],
    ] as const) {
      expect(Math.min(...draws[id]), id).toBeLessThan(value!);
      expect(Math.max(...draws[id]), id).toBeGreaterThan(value!);
    }
    for (const [read, value] of [
      [draws.current, currentOf(is)!],
      [draws.pumpCurrent, pumpCurrentOf(is)!],
    ] as const) {
      expect(Math.min(...read)).toBeLessThan(value);
      expect(Math.max(...read)).toBeGreaterThan(value);
    }
  });
  it('without a ± on the pump’s volts its current has none', { timeout: 60_000 }, () => {
    const { 'pump.volts': volts, ...changes } = job.candidate!.changes;
    const exact = { ...changes, 'pump.volts': { is: volts!.is! } };
    const side = evaluate({ ...job, candidate: { ...job.candidate!, changes: exact } }).candidate!;
    const draws = finished(driven(side, 32))!;
    const is = assess(side);
    expect(rangeOf(draws.current)).toBeNull();
    expect(draws.current[0]).toBeCloseTo(currentOf(is)!, 9);
    expect(draws.pumpCurrent[0]).toBeCloseTo(pumpCurrentOf(is)!, 9);
  });
  it('draws the points that the settled study draws', { timeout: 60_000 }, () => {
    // Long after a change of duty the charge air of the drive follows the settled one: nearly one line.
    const sure = finished(sureness(asFound, SIZE))!.draws['charge-cruise'];
    const after = finished(driven(asFound, 32))!.chargeAfter;
    const mean = (d: Float64Array) => d.reduce((a, b) => a + b, 0) / d.length;
    const [mx, my] = [mean(sure), mean(after)];
    let [xy, xx, yy] = [0, 0, 0];
    sure.forEach((x, i) => {
      xy += (x - mx) * (after[i]! - my);
      xx += (x - mx) ** 2;
      yy += (after[i]! - my) ** 2;
    });
    expect((xy * xy) / (xx * yy)).toBeGreaterThan(0.9);
  });
  it('depends on the drive and on what margins ask for', () => {
    expect(drivenKey(asFound)).not.toBe(drivenKey(candidate!));
    const next = evaluate({
      ...job,
      asFound: { ...job.asFound, 'fans.current': { is: '7 A', pm: '1 A' } },
    }).asFound;
    expect(drivenKey(next)).not.toBe(drivenKey(asFound));
  });
  it('tells of every single move, the front and the steps, each once', () => {
    const work = upgradeStudy(job);
    let step = work.next();
    while (!step.done) step = work.next();
    const study = step.value;
    const sets = toldSets(study);
    expect(new Set(sets.map(String)).size).toBe(sets.length);
    expect(sets.map(String)).toContain(String(study.best!.moves));
    for (const { moves } of study.tried.filter((one) => one.moves.length === 1))
      expect(sets).toContainEqual(moves);
    // A whole candidate as a move is that candidate.
    const first = setSides(job, movesOf(job), asFound)([1]);
    expect(first.loop).toEqual(candidateSides(job)[1]!.loop);
  });
});
