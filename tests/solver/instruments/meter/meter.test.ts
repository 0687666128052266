import { describe, expect, it } from 'vitest';
import { InvalidInputError, OutOfRangeError } from '$lib/solver/errors';
import { kFactor, kOfRun, type BucketErrors } from '$lib/solver/instruments/meter/kFactor';
import {
  flowStep,
  inputState,
  kBand,
  linearAbove,
  readableRange,
  slipBand,
  slipLine,
} from '$lib/solver/instruments/meter/lowFlow';
import {
  meterInLoop,
  meterK,
  meterLoss,
  straightLength,
} from '$lib/solver/instruments/meter/meterInLoop';
import { gaussianNoise } from './noise';
import { exampleLoop } from '../../loop/example';
import { steady } from '$lib/solver/loop/steady';

const L = 1e-3;
const errors: BucketErrors = { volume: 0.1 * L, time: 0.3, pulses: 2, bucket: 0.01 };

describe('K of one run', () => {
  it('is pulses over volume, its ± the root of the squared shares', () => {
    const { K, share, flow, frequency } = kOfRun(
      { volume: 10 * L, time: 20, pulses: 4500 },
      errors,
      'whole-run',
    );
    expect(K * L).toBeCloseTo(450, 12);
    // By hand: 2/4500 = 0.0444 %, 0.1/10 = 1 %; together 1.00099 %.
    expect(share * 100).toBeCloseTo(1.00099, 4);
    expect(flow / L).toBeCloseTo(0.5, 12);
    expect(frequency).toBe(225);
  });
  it('counts the watch only where the count is by the watch', () => {
    const run = { volume: 10 * L, time: 20, pulses: 4500 };
    // And 0.3/20 = 1.5 %: together 1.80333 %.
    const by = kOfRun(run, errors, 'by-watch');
    expect(by.share * 100).toBeCloseTo(1.80333, 4);
  });
  it('agrees with the spread of simulated runs', () => {
    const noise = gaussianNoise(20250101);
    const truth = { volume: 10 * L, time: 20, pulses: 4500 };
    const { K, share } = kOfRun(truth, errors, 'by-watch');
    const seen = Array.from({ length: 20000 }, () => {
      // A ± is two standard deviations.
      const frequency = (truth.pulses + (noise() * errors.pulses) / 2) / truth.time;
      const time = truth.time + (noise() * errors.time) / 2;
      return (frequency * time) / (truth.volume + (noise() * errors.volume) / 2);
    });
    const sd = Math.sqrt(seen.reduce((s, k) => s + (k - K) ** 2, 0) / seen.length);
    // Standard error of a standard deviation from 20,000 values is 0.5 %.
    expect(Math.abs((2 * sd) / K / share - 1)).toBeLessThan(0.02);
  });
  it('refuses what is no run', () => {
    const run = { volume: 10 * L, time: 20, pulses: 4500 };
    for (const bad of [{ volume: 0 }, { time: NaN }, { pulses: 0 }]) {
      expect(() => kOfRun({ ...run, ...bad }, errors, 'whole-run')).toThrow(OutOfRangeError);
    }
  });
});

describe('K of several runs', () => {
  const run = (pulses: number) => ({ volume: 10 * L, time: 20, pulses });
  it('the bucket’s own error stays, however many runs', () => {
    const many = kFactor(
      Array.from({ length: 400 }, () => run(4500)),
      errors,
      'whole-run',
    );
    expect(many.fromRuns / many.K).toBeCloseTo(0.0100099 / 20, 6);
    expect(many.plusMinus / many.K).toBeGreaterThan(0.01);
    expect(many.plusMinus / many.K).toBeLessThan(0.0101);
  });
  it('is the weighted mean worked by hand', () => {
    // By hand, ± as shares: run 1, 4500 pulses in 10 L: s² = (2/4500)² + (0.1/10)² = 1.00197531e-4,
    // weight 9980.286; run 2, 9060 in 20 L: s² = (2/9060)² + (0.1/20)² = 2.50487308e-5, weight 39922.182.
    // K = (450 · 9980.286 + 453 · 39922.182) / 49902.468 = 452.40001 /L.
    // χ² = (2 (450/K − 1))² · 9980.286 + (2 (453/K − 1))² · 39922.182 = 1.12352 + 0.28088 = 1.40440;
    // Birge's ratio for one degree of freedom √1.40440 = 1.18507; u_r = 452.40001 · 1.18507 / √49902.468
    // = 2.39998; with the bucket's 1 %, 4.52400: √(2.39998² + 4.52400²) = 5.12118.
    const runs = [
      { volume: 10 * L, time: 20, pulses: 4500 },
      { volume: 20 * L, time: 40, pulses: 9060 },
    ];
    const k = kFactor(runs, errors, 'whole-run');
    expect(k.K * L).toBeCloseTo(452.40001, 4);
    expect(k.chiSquare).toBeCloseTo(1.4044, 4);
    expect(k.widened).toBeCloseTo(1.18507, 4);
    expect(k.fromRuns * L).toBeCloseTo(2.39998, 4);
    expect(k.plusMinus * L).toBeCloseTo(5.12118, 4);
    // χ² of one degree of freedom is the square of a standard normal: 2 (1 − Φ(1.18507)) = 0.2360
    // (Φ(1.18) = 0.88100, Φ(1.19) = 0.88298: tables, from memory).
    expect(k.chance!).toBeCloseTo(0.236, 3);
  });
  it('equal runs weigh alike; a long run weighs more', () => {
    const { K } = kFactor([run(4400), run(4600)], errors, 'whole-run');
    // The count's own share differs a little between them: 2 pulses of 4400 and of 4600.
    expect(Math.abs(K * L - 450)).toBeLessThan(0.01);
    const long = { volume: 40 * L, time: 80, pulses: 17600 };
    const { K: mixed } = kFactor([run(4600), long], errors, 'whole-run');
    expect(mixed * L).toBeLessThan(445);
  });
  it('runs within their ± agree; a wild one does not, and widens the ±', () => {
    const good = kFactor([run(4480), run(4500), run(4520)], errors, 'whole-run');
    expect(good).toMatchObject({ agree: true, widened: 1, freedom: 2 });
    const bad = kFactor([run(4500), run(4500), run(4900)], errors, 'whole-run');
    expect(bad.agree).toBe(false);
    expect(bad.chance!).toBeLessThan(1e-6);
    expect(bad.fromRuns).toBeGreaterThan(5 * good.fromRuns);
  });
  it('judges as often wrongly as it says: 1 in 20 of honest tests', () => {
    const noise = gaussianNoise(7);
    let refused = 0;
    const tests = 4000;
    for (let i = 0; i < tests; i++) {
      const runs = [1, 2, 3, 4].map(() => ({
        volume: 10 * L + (noise() * errors.volume) / 2,
        time: 20,
        pulses: 4500 + (noise() * errors.pulses) / 2,
      }));
      if (!kFactor(runs, errors, 'whole-run').agree) refused++;
    }
    // Binomial: 200 expected, standard deviation 13.8.
    expect(Math.abs(refused - tests / 20)).toBeLessThan(3.5 * 13.8);
  });
  it('one run says nothing of consistency; none, or without any ±, is refused', () => {
    expect(kFactor([run(4500)], errors, 'whole-run')).toMatchObject({ chance: null, freedom: 0 });
    expect(() => kFactor([], errors, 'whole-run')).toThrow(InvalidInputError);
    const none = { volume: 0, time: 0, pulses: 0, bucket: 0 };
    expect(() => kFactor([run(4500)], none, 'whole-run')).toThrow(InvalidInputError);
  });
});

describe('low flow', () => {
  /** f = 450/L (Q - 0.02 L/s), without error. */
  const runs = [0.1, 0.25, 0.5].map((q) => ({
    volume: 10 * L,
    time: 10 / q,
    pulses: 450 * (q - 0.02) * (10 / q),
  }));
  it('the slip is found from runs at different flows', () => {
    const line = slipLine(kFactor(runs, errors, 'whole-run'))!;
    expect(line.K * L).toBeCloseTo(450, 8);
    expect(line.slip / L).toBeCloseTo(0.02, 10);
    expect(line.slipSigma).toBeGreaterThan(0);
  });
  // Frequencies with one standard deviation of 2 Hz at 1, 2 and 4 L/s. By hand, u^2 = s^2 (1/n +
  // (Q - 7/3)^2 / (14/3)) (JCGM 100:2008, H.3.5): at 2 L/s 4 (1/3 + 1/42) = 1.42857 Hz^2.
  it('the line is as sure as its runs allow', () => {
    const sharp = [1, 2, 4].map((q) => ({
      volume: 10 * L,
      time: 10 / q,
      pulses: 1000,
      share: 0.04 / q,
    }));
    const factor = kFactor(sharp, errors, 'whole-run');
    const of = { ...factor, runs: factor.runs.map((r, i) => ({ ...r, share: sharp[i]!.share })) };
    const line = slipLine(of)!;
    expect(line.sigmaAt(2 * L)).toBeCloseTo(Math.sqrt(1.42857), 5);
    // K = f / Q: two standard deviations of 0.59761 Hz/(L/s), and the bucket's share of K.
    const band = slipBand({ ...of, fromRuns: 0, plusMinus: 3 / L }, line);
    const [, low, high] = band.reduce((a, b) =>
      Math.abs(b[0] - 2 * L) < Math.abs(a[0] - 2 * L) ? b : a,
    );
    expect(((high - low) / 2) * L).toBeCloseTo(Math.hypot(1.195, 3), 1);
    const [one] = kBand({ ...of, plusMinus: 3 / L });
    expect([one![1] * L, one![2] * L].map((K) => Math.round(K))).toEqual([97, 103]);
  });
  it('and from it the flow above which K is within a share', () => {
    expect(linearAbove(0.02 * L, 0.05) / L).toBeCloseTo(0.4, 12);
    // There the meter counts 5 % fewer pulses for its volume.
    expect((450 * (0.4 - 0.02)) / 0.4 / 450).toBeCloseTo(0.95, 12);
    expect(linearAbove(-0.01 * L, 0.05)).toBe(0);
  });
  it('is believed where meter, input and slip all allow it', () => {
    const made = { lowest: 0.05 * L, highest: 0.5 * L };
    // At 450 pulses/L: 9 Hz are 0.02 L/s, 180 Hz are 0.4 L/s.
    const range = (above: number | null, lowest: number, highest: number) =>
      readableRange(above, made, { lowest, highest }, 450 / L);
    expect(range(null, 9, 180)).toEqual({
      from: { flow: 0.05 * L, by: 'maker' },
      to: { flow: 0.4 * L, by: 'input' },
    });
    expect(range(0.1 * L, 9, 300)).toEqual({
      from: { flow: 0.1 * L, by: 'slip' },
      to: { flow: 0.5 * L, by: 'maker' },
    });
    expect(range(0.1 * L, 90, 300).from.by).toBe('input');
  });
  it('nothing is said from runs at one flow', () => {
    expect(slipLine(kFactor([runs[1]!, runs[1]!, runs[1]!], errors, 'whole-run'))).toBeNull();
    expect(slipLine(kFactor(runs.slice(0, 2), errors, 'whole-run'))).toBeNull();
  });
  it('the input counts, is too slow, or too fast', () => {
    const input = { highest: 200, lowest: 2 };
    expect([1.9, 2, 200, 201].map((f) => inputState(f, input))).toEqual([
      'too-slow',
      'counts',
      'counts',
      'too-fast',
    ]);
    expect(flowStep(450e3, 1) / L).toBeCloseTo(1 / 450, 12);
  });
});

describe('the meter in its loop', () => {
  const loss = { ratedFlow: 5e-4, ratedLoss: 2e4 };
  it('loses by the square of the flow', () => {
    expect(meterLoss(loss, 5e-4, 998.2)).toBeCloseTo(2e4, 8);
    expect(meterLoss(loss, 2.5e-4, 998.2)).toBeCloseTo(5e3, 8);
    expect(() => meterLoss({ ratedFlow: 0, ratedLoss: 1 }, 1e-4, 998)).toThrow(OutOfRangeError);
  });
  it('as a coefficient on a bore it loses the same: K ρ v² / 2', () => {
    const bore = 0.019;
    const v = 5e-4 / ((Math.PI / 4) * bore ** 2);
    expect((meterK(loss, bore) * 998.2 * v * v) / 2).toBeCloseTo(2e4, 6);
  });
  it('takes flow from the loop, by as much as the pump’s curve says', () => {
    const { operating, liquid: held } = steady(exampleLoop, 'cruise');
    const liquid = { rho: held.density, mu: held.viscosity };
    const put = (run: 'delivery' | 'back', rating: typeof loss, among = false) =>
      meterInLoop(exampleLoop, run, rating, liquid, among);
    const placed = put('delivery', loss);
    expect(placed.without / operating.flow).toBeCloseTo(1, 6);
    expect(placed.with).toBeLessThan(placed.without);
    expect(placed.loss).toBeCloseTo(meterLoss(loss, placed.with, liquid.rho), 9);
    expect(put('delivery', { ...loss, ratedLoss: 0 }).with).toBeCloseTo(placed.without, 12);
    // In the return it loses the same.
    expect(put('back', loss).with / placed.with).toBeCloseTo(1, 9);
    expect(put('back', loss, true).with).toBe(placed.without);
  });
  it('ten bores of three quarters of an inch are seven and a half inches', () => {
    expect(straightLength(10, 0.01905)).toBeCloseTo(7.5 * 0.0254, 12);
  });
});
