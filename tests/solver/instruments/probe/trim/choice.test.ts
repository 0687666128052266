import { describe, expect, it } from 'vitest';
import { preferredValues } from '$lib/solver/instruments/preferred';
import { probeOf } from '$lib/solver/instruments/probe/probe';
import type { Flaw } from '$lib/solver/instruments/probe/reader';
import { chosenTrim, GONE_LEAST, LEFT_MOST } from '$lib/solver/instruments/probe/trim/choice';
import { stockOf } from '$lib/solver/instruments/probe/trim/search';
import { recommended, trims } from '$lib/solver/instruments/probe/trim/trims';

const probe = probeOf({ kind: 'beta', R25: 2200, beta: 3600 });
const E12 = preferredValues('E12', 100, 1e5);

/** A table made for 1215 ohm behind a bias of 1500, and a flaw beside it. */
const found = (flaw: Flaw, values: readonly number[] = E12, bias = 1500) =>
  trims({
    setup: {
      probe,
      divider: { supply: 5, bias, input: Infinity, bits: 10 },
      reader: { table: probe, bias: 1215 },
      flaw,
    },
    from: 273.15,
    to: 383.15,
    stock: values.length > 0 ? stockOf(values.map((R) => ({ R }))) : { values },
    stockTolerance: 0.01,
    biasTolerance: 0.01,
    keepBias: true,
    best: 2,
  });
const GOOD = 2 / 1.8;

describe('a trim is chosen where it is of use', () => {
  it('a bias that is off: what reaches good enough', () => {
    const given = found({});
    expect(chosenTrim(given, GOOD).trim).toBe(recommended(given, GOOD));
  });
  it('a circuit that is good enough needs none', () => {
    expect(chosenTrim(found({}, E12, 1215), GOOD).none).toBe('not-needed');
  });
  // Common practice, no source: 5 °F and half of the error.
  it('bounds are those stated', () => {
    expect(LEFT_MOST * 1.8).toBeCloseTo(5, 12);
    expect(GONE_LEAST).toBe(0.5);
  });
  it('a pin of 300 ohm, more than the hot probe has, is beyond any bias', () => {
    const given = found({ series: 300 });
    expect(recommended(given, GOOD)).not.toBeNull();
    expect(given.least).toBeGreaterThan(LEFT_MOST);
    expect(chosenTrim(given, GOOD)).toEqual({ trim: null, none: 'bias-cannot' });
  });
  it('resistors that cannot come near: it is they, not the bias', () => {
    expect(chosenTrim(found({}, [100]), GOOD)).toEqual({ trim: null, none: 'stock-cannot' });
    expect(chosenTrim(found({}, []), GOOD)).toEqual({ trim: null, none: 'stock-cannot' });
    expect(found({}, []).target / 1215).toBeCloseTo(1, 6);
  });
  it('halving the error to a few degrees is of use, a third less is not', () => {
    const given = found({});
    const with_ = (worst: number, present: number) =>
      chosenTrim(
        {
          ...given,
          present,
          least: 0,
          bySize: { ...given.bySize, 1: [{ ...given.bySize[1][0]!, worst }], 2: [], 3: [] },
        },
        GOOD,
      ).none;
    expect(with_(2.5, 5.1)).toBeNull();
    expect(with_(2.5, 3.7)).toBe('stock-cannot');
    expect(with_(2.9, 20)).toBe('stock-cannot');
    expect(with_(1.1, 1.2)).toBeNull();
  });
});
