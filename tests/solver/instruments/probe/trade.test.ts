/**
 * What one shop saw, as common practice with no source: behind 2.94 kΩ a reader showed about 39 °F in ice
 * water and 218 °F in boiling water; 6.8 kΩ and 10 kΩ in series, put in parallel with it (about 2.50 kΩ),
 * brought both to within 1 to 3 °F. Neither the probe, nor the altitude, nor the bias of the reader's table
 * was told. These tests say which of them the two readings need; none is made to fit.
 */
import { describe, expect, it } from 'vitest';
import { biasOf, type BathReading } from '$lib/solver/instruments/probe/bath';
import { boilPoint } from '$lib/solver/instruments/probe/boilPoint';
import { pressureAtAltitude } from '$lib/solver/air/atmosphere';
import { parallel } from '$lib/solver/instruments/probe/divider';
import { probeOf } from '$lib/solver/instruments/probe/probe';
import { shownTemperature, withBias, type ReadSetup } from '$lib/solver/instruments/probe/reader';
import { verdict } from '$lib/solver/instruments/probe/verdict';
import { FACTORY } from './factory';

const fahrenheit = (f: number) => (f + 459.67) / 1.8;
const ICE = 273.15;
const boilAt = (feet: number) => boilPoint(pressureAtAltitude(feet * 0.3048));

/** The shop's probe is not known; a published coolant probe of the same kind (Beta near 3600) stands in. */
const probe = probeOf({ kind: 'table', points: FACTORY });
const setup: ReadSetup = {
  probe,
  divider: { supply: 5, bias: 2940, input: Infinity, bits: 10 },
  reader: { table: probe, bias: 2940 },
  flaw: {},
};
const readings = (boil: number, plusMinus: number): [BathReading, BathReading] => [
  { T: ICE, shown: fahrenheit(39), plusMinus },
  { T: boil, shown: fahrenheit(218), plusMinus },
];
/** Where the calculation says that one bias can explain both readings, ft. */
const ALTITUDES = [2500, 3000, 3500, 4000];
const assumedBy = (reading: BathReading) => 2940 ** 2 / biasOf(setup, reading);

describe('2.94 kΩ, 39 °F in ice, 218 °F at boil', () => {
  it('the network is 2.50 kΩ, by arithmetic', () => {
    expect(parallel(2940, 16800)).toBeCloseTo(2502.1, 1);
  });
  it('the ice reading alone says that the table assumes about 2.45 kΩ', () => {
    const [ice] = readings(boilAt(0), 1);
    expect(assumedBy(ice)).toBeGreaterThan(2350);
    expect(assumedBy(ice)).toBeLessThan(2550);
  });
  it('at sea level the boil reading asks for more: no one bias explains both within 1 °F, but within 3 °F', () => {
    const at = (pm: number) =>
      verdict(setup, readings(boilAt(0), pm / 1.8), false).explaining.map((one) => one.id);
    expect(at(1)).not.toContain('bias');
    expect(at(3)).toContain('bias');
  });
  it('it takes 2,500 to 4,000 ft (a boil of 207 to 205 °F, our own calculation) for one bias within 1 °F', () => {
    for (const feet of ALTITUDES) {
      const ids = verdict(setup, readings(boilAt(feet), 1 / 1.8), false).explaining.map(
        (one) => one.id,
      );
      expect(ids, `${feet} ft`).toContain('bias');
    }
  });
  it('and there the trim brings both to within 3 °F, as the shop saw', () => {
    for (const feet of ALTITUDES) {
      const found = verdict(setup, readings(boilAt(feet), 1 / 1.8), false).explaining.find(
        (one) => one.id === 'bias',
      )!;
      const trimmed = withBias(found.setup, parallel(2940, 16800));
      for (const T of [ICE, boilAt(feet)]) {
        const off = Math.abs(shownTemperature(trimmed, T) - T) * 1.8;
        expect(off, `${feet} ft`).toBeLessThan(3);
      }
    }
  });
  it('at sea level the same trim would leave the boil reading more than 3 °F off', () => {
    const [, boil] = readings(boilAt(0), 1);
    const circuit = { ...setup, reader: { table: probe, bias: assumedBy(boil) } };
    const off = shownTemperature(withBias(circuit, parallel(2940, 16800)), boilAt(0)) - boilAt(0);
    expect(off * 1.8).toBeLessThan(-3);
  });
});
