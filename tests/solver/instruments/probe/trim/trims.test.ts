import { describe, expect, it } from 'vitest';
import { InvalidInputError } from '$lib/solver/errors';
import { preferredValues } from '$lib/solver/instruments/preferred';
import { calibrationPoints } from '$lib/solver/instruments/probe/calibration';
import { probeOf } from '$lib/solver/instruments/probe/probe';
import { shownTemperature, withBias, type ReadSetup } from '$lib/solver/instruments/probe/reader';
import { bestBias, rangeError } from '$lib/solver/instruments/probe/trim/error';
import { stockOf } from '$lib/solver/instruments/probe/trim/search';
import { recommended, trims, type TrimRequest } from '$lib/solver/instruments/probe/trim/trims';

const probe = probeOf({ kind: 'beta', R25: 2200, beta: 3600 });
const setup: ReadSetup = {
  probe,
  divider: { supply: 5, bias: 1500, input: Infinity, bits: 10 },
  reader: { table: probe, bias: 1215 },
  flaw: {},
};
const request: TrimRequest = {
  setup,
  from: 273.15,
  to: 394,
  stock: stockOf(preferredValues('E12', 100, 1e5).map((R) => ({ R }))),
  stockTolerance: 0.05,
  biasTolerance: 0,
  keepBias: true,
  best: 4,
};
const small = stockOf([1000, 2200, 4700, 6800, 10000].map((R) => ({ R })));

describe('the best bias', () => {
  it('is that of the table where nothing else is wrong, and leaves no error', () => {
    const error = rangeError(setup, 273.15, 394);
    const best = bestBias(error, 1500);
    expect(best / 1215).toBeCloseTo(1, 6);
    expect(error.worst(best)).toBeLessThan(1e-3);
  });
  it.each([
    ['a pin', { series: 30 }],
    ['a wrong supply', { supplyRatio: 0.93 }],
    ['a leak', { across: 15e3 }],
  ])('with %s beside it no bias on a fine grid does better', (_, flaw) => {
    const error = rangeError({ ...setup, flaw }, 273.15, 380);
    const least = error.worst(bestBias(error, 1500));
    for (let bias = 300; bias < 6000; bias *= 1.002) {
      expect(error.worst(bias)).toBeGreaterThanOrEqual(least - 1e-6);
    }
  });
  it('an empty range is refused', () => {
    expect(() => rangeError(setup, 300, 300)).toThrow(InvalidInputError);
  });
});

describe('trims', () => {
  const found = trims(request);
  it('go across a bias that is too large, in series with one that is too small', () => {
    expect(found.bySize[1][0]!.placement).toBe('across');
    const low = trims({ ...request, setup: withBias(setup, 1000) });
    expect(low.bySize[2][0]!.placement).toBe('in-series');
    const instead = trims({ ...request, keepBias: false });
    expect(instead.bySize[2][0]!.placement).toBe('instead');
    expect(instead.bySize[2][0]!.bias).toBe(instead.bySize[2][0]!.R);
  });
  it('rank by the error itself: none of a small stock does better, by brute force', () => {
    const pin = { ...request, setup: { ...setup, flaw: { series: 12 } }, stock: small };
    const { bySize, error } = trims(pin);
    const across = (R: number) => error.worst((1500 * R) / (1500 + R));
    const all: number[] = [];
    for (const a of small.values) {
      for (const b of small.values) {
        if (b < a) continue;
        all.push(across(a + b), across((a * b) / (a + b)));
      }
    }
    all.sort((a, b) => a - b);
    bySize[2].forEach((trim, i) => expect(trim.worst).toBeCloseTo(all[i]!, 9));
  });
  it('what is said of a trim is what the trimmed circuit shows', () => {
    for (const trim of found.bySize[3]) {
      const circuit = withBias(setup, trim.bias);
      for (const T of [273.15, 320, 394]) {
        expect(Math.abs(shownTemperature(circuit, T) - T)).toBeLessThanOrEqual(trim.worst + 1e-9);
      }
      expect(trim.worstWithTolerance).toBeGreaterThanOrEqual(trim.worst);
      expect(trim.biasBand[0]).toBeLessThan(trim.bias);
      expect(trim.biasBand[1]).toBeGreaterThan(trim.bias);
    }
  });
  it('more resistors never do worse than fewer over many decades', () => {
    const [one, two, three] = [1, 2, 3].map((n) => found.bySize[n as 1 | 2 | 3][0]!.worst);
    expect(two!).toBeLessThan(one!);
    expect(three!).toBeLessThan(two!);
    expect(found.least).toBeLessThanOrEqual(three!);
    expect(found.present).toBeGreaterThan(one!);
  });
  it('the simplest that is good enough is recommended, none where none is needed', () => {
    expect(recommended(found, 1)!.network.parts).toHaveLength(1);
    expect(recommended(found, 0.01)!.network.parts.length).toBeGreaterThan(1);
    expect(recommended(found, 100)).toBeNull();
  });
});

it('corrected points: a reader with that table shows the truth', () => {
  const flawed = { ...setup, flaw: { series: 20, supplyRatio: 0.95 } };
  const points = calibrationPoints(flawed, 273.15, 393.15, 9);
  expect(points).toHaveLength(9);
  const edited = probeOf({
    kind: 'table',
    points: points.map(({ T, believed }) => ({ T, R: believed })),
  });
  const corrected = { ...flawed, reader: { ...flawed.reader, table: edited } };
  for (const { T, counts, volts } of points) {
    expect(shownTemperature(corrected, T)).toBeCloseTo(T, 9);
    expect(volts / 5).toBeCloseTo(counts / 1023, 12);
  }
  // Between the points it is as good as the interpolation.
  for (let T = 275; T < 393; T += 3.7) {
    expect(Math.abs(shownTemperature(corrected, T) - T)).toBeLessThan(0.1);
  }
});
