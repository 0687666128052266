import { describe, expect, it } from 'vitest';
import type { Distribution } from '$lib/solver/uncertainty/distributions';
import { varianceShares, type SharesStudy } from '$lib/solver/uncertainty/shares';

function run(study: SharesStudy, model: (x: Float64Array) => number | null) {
  const work = varianceShares(study, (x) => {
    const y = model(x);
    return y === null ? null : [y];
  });
  for (;;) {
    const step = work.next();
    if (step.done) return step.value[0]!;
  }
}

describe('Ishigami’s function, analytic shares', () => {
  const [a, b] = [7, 0.1];
  const angle: Distribution = { kind: 'interval', low: -Math.PI, high: Math.PI };
  const shares = run(
    { inputs: [angle, angle, angle], outputs: 1, samples: 4096, repetitions: 8, seed: 2 },
    (x) => Math.sin(x[0]!) + a * Math.sin(x[1]!) ** 2 + b * x[2]! ** 4 * Math.sin(x[0]!),
  );
  // Ishigami & Homma 1990; the closed forms as in Saltelli et al., Global Sensitivity Analysis, 2008.
  const p4 = Math.PI ** 4;
  const V1 = 0.5 * (1 + (b * p4) / 5) ** 2;
  const V2 = a ** 2 / 8;
  const V13 = b ** 2 * p4 ** 2 * (1 / 18 - 1 / 50);
  const V = V1 + V2 + V13;
  it.each([
    [0, V1 / V, (V1 + V13) / V], // 0.3139, 0.5576
    [1, V2 / V, V2 / V], // 0.4424, 0.4424
    [2, 0, V13 / V], // 0, 0.2437
  ])('input %i', (i, first, total) => {
    expect(Math.abs(shares!.first[i]! - first)).toBeLessThan(0.01);
    expect(Math.abs(shares!.total[i]! - total)).toBeLessThan(0.01);
    expect(shares!.firstError[i]!).toBeLessThan(0.01);
    expect(Math.abs(shares!.first[i]! - first)).toBeLessThan(5 * shares!.firstError[i]! + 1e-4);
  });
  it('the variance itself', () => expect(shares!.variance / V).toBeCloseTo(1, 2));
});

describe('additive model with one input ten times as wide, JCGM 101:2008, 9.2.4', () => {
  const width = Math.sqrt(3);
  const interval = (a: number): Distribution => ({ kind: 'interval', low: -a, high: a });
  const shares = run(
    {
      inputs: [interval(width), interval(width), interval(width), interval(10 * width)],
      outputs: 1,
      samples: 1024,
      repetitions: 8,
      seed: 4,
    },
    (x) => x[0]! + x[1]! + x[2]! + x[3]!,
  )!;
  it.each([1, 1, 1, 100])('variances add: input %# has %i of 103', (v) => {
    const i = v === 100 ? 3 : 0;
    expect(Math.abs(shares.first[i]! - v / 103)).toBeLessThan(0.01);
    expect(Math.abs(shares.total[i]! - v / 103)).toBeLessThan(0.01);
  });
});

describe('an input that moves nothing', () => {
  it('is left where it is after the first points, and has no share', () => {
    let runs = 0;
    const study: SharesStudy = {
      inputs: Array<Distribution>(3).fill({ kind: 'interval', low: 0, high: 1 }),
      outputs: 1,
      samples: 64,
      repetitions: 2,
      seed: 6,
    };
    const shares = run(study, (x) => {
      runs++;
      return x[0]! + x[2]!;
    })!;
    expect(shares.first[1]).toBe(0);
    expect(shares.total[1]).toBe(0);
    // A, B, two inputs at every point; the third at the first eight.
    expect(runs).toBe(2 * 64 * 4 + 8);
  });
});

describe('a sum', () => {
  it('shares are the inputs’ own variances: 1, 4 and 9 of 14', () => {
    const normal = (sd: number): Distribution => ({ kind: 'normal', mean: 3, sd });
    const shares = run(
      {
        inputs: [normal(1), normal(2), normal(3)],
        outputs: 1,
        samples: 512,
        repetitions: 8,
        seed: 1,
      },
      (x) => x[0]! + x[1]! + x[2]!,
    )!;
    [1, 4, 9].forEach((v, i) => {
      expect(Math.abs(shares.first[i]! - v / 14)).toBeLessThan(0.02);
      expect(Math.abs(shares.total[i]! - v / 14)).toBeLessThan(0.02);
    });
  });
  it('gives nothing where the model has no answer, or nothing varies', () => {
    const study: SharesStudy = {
      inputs: [{ kind: 'interval', low: 0, high: 1 }],
      outputs: 1,
      samples: 16,
      repetitions: 2,
      seed: 1,
    };
    expect(run(study, (x) => (x[0]! > 0.5 ? null : 1))).toBeNull();
    expect(run(study, () => 4)).toBeNull();
  });
});
