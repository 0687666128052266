import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { InvalidInputError } from '$lib/solver/errors';
import { OpenProbeError, ShortedProbeError } from '$lib/solver/instruments/probe/errors';
import { combinedBias, type BathReading } from '$lib/solver/instruments/probe/bath';
import { fitHypotheses, pullUpBehind } from '$lib/solver/instruments/probe/hypotheses';
import { probeOf } from '$lib/solver/instruments/probe/probe';
import { shownTemperature, type Flaw, type ReadSetup } from '$lib/solver/instruments/probe/reader';
import { verdict } from '$lib/solver/instruments/probe/verdict';

const probe = probeOf({ kind: 'beta', R25: 2200, beta: 3600 });
const setup: ReadSetup = {
  probe,
  divider: { supply: 5, bias: 1500, input: Infinity, bits: 10 },
  reader: { table: probe, bias: 1500 },
  flaw: {},
};
const BATHS = [273.15, 372.4] as const;

/** What a circuit with that flaw shows, read without error and stated to ±. */
const read = (flaw: Flaw, plusMinus = 0.6, circuit = setup) =>
  BATHS.map((T): BathReading => ({
    T,
    shown: shownTemperature({ ...circuit, flaw }, T),
    plusMinus,
  })) as [BathReading, BathReading];

describe('a flaw put into the circuit is found, with its number', () => {
  it.each([
    ['pull-up', { pullUp: 4700 }, 4700],
    ['supply', { supplyRatio: 0.9 }, 0.9],
    ['supply', { supplyRatio: 1.06 }, 1.06],
    ['pin', { series: 25 }, 25],
    ['leak', { across: 20e3 }, 20e3],
    ['bias', { biasRatio: 1.4 }, 2100],
    ['bias', { biasRatio: 0.7 }, 1050],
  ] as const)('%s %j', (id, flaw, value) => {
    const { explaining } = verdict(setup, read(flaw), true);
    const found = explaining.find((one) => one.id === id)!;
    expect(found.value! / value).toBeCloseTo(1, 5);
    expect(found.chiSquare).toBeLessThan(1e-8);
    expect(explaining.map((one) => one.id)).not.toContain('as-described');
  });
  it('no flaw: the circuit as described stands first', () => {
    const { explaining, twoThings } = verdict(setup, read({}), true);
    expect(explaining[0]?.id).toBe('as-described');
    expect(twoThings).toBeNull();
  });
  it('each of these is told from a bias when it is large against the ±', () => {
    for (const flaw of [{ supplyRatio: 0.8 }, { series: 60 }, { across: 8000 }]) {
      const ids = verdict(setup, read(flaw), true).explaining.map((one) => one.id);
      expect(ids).toHaveLength(1);
      expect(ids).not.toContain('bias');
    }
  });
  it('a pull-up to the same supply is the same as a low bias: both are named', () => {
    const ids = verdict(setup, read({ pullUp: 4700 }), true).explaining.map((one) => one.id);
    expect(ids).toEqual(expect.arrayContaining(['bias', 'pull-up']));
  });
});

describe('bias from two baths', () => {
  it('is the one assumed by the table, where its maker does not state it', () => {
    const circuit = { ...setup, reader: { table: probe, bias: 1200 } };
    const readings = read({}, 0.6, circuit);
    const [best] = fitHypotheses(setup, readings, false);
    expect(best?.id).toBe('bias');
    expect(best!.value).toBeCloseTo(1200, 6);
    expect(best!.setup.reader.bias).toBeCloseTo(1200, 6);
    expect(best!.setup.divider.bias).toBe(1500);
  });
  it('its ± follows from the readings: a kelvin is some 3 to 5 % of resistance', () => {
    const readings = read({}, 1);
    const { share } = combinedBias(setup, readings);
    const alphas = BATHS.map((T) => 3600 / T ** 2);
    const weights = alphas.reduce((sum, alpha) => sum + 1 / alpha ** 2, 0);
    expect(share).toBeCloseTo(1 / Math.sqrt(weights), 4);
  });
  it('holds the true one within three of its standard errors, whatever the noise', () => {
    const truth = 1850;
    const circuit = { ...setup, divider: { ...setup.divider, bias: truth } };
    fc.assert(
      fc.property(
        fc.double({ min: -0.6, max: 0.6, noNaN: true }),
        fc.double({ min: -0.6, max: 0.6, noNaN: true }),
        (a, b) => {
          const [ice, boil] = read({}, 0.6, circuit);
          const noisy = [
            { ...ice, shown: ice.shown + a },
            { ...boil, shown: boil.shown + b },
          ];
          const { bias, share } = combinedBias(setup, noisy);
          expect(Math.abs(Math.log(bias / truth))).toBeLessThan(1.6 * share);
        },
      ),
    );
  });
  it('a hidden pull-up follows from a bias found too low, and only then', () => {
    expect(pullUpBehind(1500, 1000)).toBeCloseTo(3000, 9);
    expect(1 / (1 / 1500 + 1 / pullUpBehind(1500, 1200)!)).toBeCloseTo(1200, 9);
    expect(pullUpBehind(1500, 1500)).toBeNull();
    expect(pullUpBehind(1500, 1600)).toBeNull();
  });
  it('a probe measured in the bath stands before its curve', () => {
    // The probe is 8 % high everywhere; the circuit is right.
    const off = probeOf({ kind: 'beta', R25: 2200 * 1.08, beta: 3600 });
    const shown = read({}, 0.3, { ...setup, probe: off });
    const blamed = verdict(setup, shown, true).explaining.map((one) => one.id);
    expect(blamed).toContain('bias');
    expect(blamed).not.toContain('as-described');
    const measured = shown.map((r) => ({ ...r, ohms: off.resistance(r.T) })) as typeof shown;
    expect(verdict(setup, measured, true).explaining[0]?.id).toBe('as-described');
  });
});

describe('two points that no single thing explains', () => {
  it('bias and pin at once: both are found', () => {
    const circuit = { ...setup, divider: { ...setup.divider, bias: 1150 } };
    const { explaining, twoThings } = verdict(setup, read({ series: 40 }, 0.4, circuit), true);
    expect(explaining).toEqual([]);
    expect(twoThings!.bias).toBeCloseTo(1150, 6);
    expect(twoThings!.series).toBeCloseTo(40, 6);
    expect(twoThings!.plausible).toBe(true);
  });
  it('a reader with the table of another probe: no two resistors do it, and its Beta is told', () => {
    const table = probeOf({ kind: 'beta', R25: 2600, beta: 3100 });
    const readings = BATHS.map((T) => ({
      T,
      shown: table.temperature(probe.resistance(T)),
      plusMinus: 0.5,
    })) as [BathReading, BathReading];
    const { explaining, twoThings, otherTableBeta } = verdict(setup, readings, true);
    expect(explaining).toEqual([]);
    expect(twoThings?.plausible ?? false).toBe(false);
    expect(otherTableBeta).toBeCloseTo(3100, 6);
  });
  it('a reading that falls from ice to boil has no Beta and no bias', () => {
    const [ice, boil] = read({});
    const swapped = verdict(
      setup,
      [
        { ...ice, shown: boil.shown },
        { ...boil, shown: ice.shown },
      ],
      true,
    );
    expect(swapped.explaining).toEqual([]);
    expect(swapped.twoThings).toBeNull();
    expect(swapped.otherTableBeta).toBeNull();
  });
});

describe('an input without its probe', () => {
  const [ice, boil] = read({});
  const ends = (a: number, b: number) =>
    verdict(
      setup,
      [
        { ...ice, shown: a + 273.15 },
        { ...boil, shown: b + 273.15 },
      ],
      true,
    ).ends;
  // Common practice, no source: readers show -40 °F, or the hottest of their table, for an open or a
  // shorted input. By the factory table this probe has 5,975 ohm at 0 and 575.8 at 60 °C: ten times less
  // makes it a short. A bias twice or half of the right one moves a reading by some 20 K and is none.
  it('is told from a bias that does not match', () => {
    expect(ends(-40, 100)).toEqual(['open', null]);
    expect(ends(60, 100)).toEqual(['short', null]);
    expect(ends(0, 20)).toEqual([null, 'open']);
    expect(ends(18, 120)).toEqual([null, null]);
    expect(ends(-13, 80)).toEqual([null, null]);
  });
});

describe('readings that no divider gives', () => {
  const [ice, boil] = read({});
  const judge = (a: number, b: number, circuit = setup) =>
    verdict(
      circuit,
      [
        { ...ice, shown: a + 273.15 },
        { ...boil, shown: b + 273.15 },
      ],
      true,
    );
  // Common practice, no source: -40 (the same in °C and °F) for an open input, 140 or 150 °C for a short.
  it.each([
    ['open', -40, -40],
    ['open', -54.9, -54],
    ['short', 140, 140],
    ['short', 149, 150],
    ['short', 199.9, 200],
    // A room, a cold day, a warm hand: nothing of an input's end.
    ['stuck', 32.2, 32.8],
    ['stuck', 0, 0],
    ['stuck', 100, 99],
  ])('%s: %d and %d °C', (alike, a, b) => {
    const said = judge(a, b);
    expect(said.alike).toBe(alike);
    expect(said.explaining).toEqual([]);
    expect(said.twoThings).toBeNull();
  });
  it('readings a few degrees wrong are not alike, nor are swapped ones', () => {
    expect(judge(4, 108).alike).toBeNull();
    expect(judge(100, 0).alike).toBeNull();
    expect(judge(20, 30).alike).toBeNull();
  });
  it('a hypothesis that leaves its law drops out and leaves the others', () => {
    // A bias that suits -40 °C in both would put the ice far below -55 °C.
    const ids = judge(-40, -40).fitted.map(({ id }) => id);
    expect(ids).not.toContain('bias');
    expect(ids).toEqual(expect.arrayContaining(['as-described', 'supply', 'pin', 'leak']));
  });
  it('knows the ends of the reader’s table, those of its points before those of its law', () => {
    expect(judge(-54.9, 100).tableEnds).toEqual(['open', null]);
    expect(judge(0, 200).tableEnds).toEqual([null, 'short']);
    const points = [-40, 0, 60, 150].map((t) => ({
      T: t + 273.15,
      R: probe.resistance(t + 273.15),
    }));
    const table = {
      ...setup,
      reader: { ...setup.reader, table: probeOf({ kind: 'table', points }) },
    };
    expect(judge(-40, 150, table).tableEnds).toEqual(['open', 'short']);
    expect(judge(-40, 150).tableEnds).toEqual([null, null]);
  });
});

describe('what cannot be judged is refused', () => {
  const [ice, boil] = read({});
  it('one bath, no ±, a reading of an open or a shorted input', () => {
    expect(() => fitHypotheses(setup, [ice], true)).toThrow(InvalidInputError);
    expect(() => fitHypotheses(setup, [ice, { ...boil, plusMinus: 0 }], true)).toThrow(
      InvalidInputError,
    );
    expect(() => fitHypotheses(setup, [{ ...ice, shown: 200 }, boil], true)).toThrow(
      OpenProbeError,
    );
    expect(() => fitHypotheses(setup, [ice, { ...boil, shown: 600 }], true)).toThrow(
      ShortedProbeError,
    );
  });
});
