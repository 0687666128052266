import { describe, expect, it } from 'vitest';
import { OutOfRangeError } from '$lib/solver/errors';
import * as lumped from '$lib/solver/loop/lumped';
import reference from '../../reference/values/transient-warmup.json';
import { within } from './within';

type Inputs = Record<string, number>;
const mass = (i: Inputs): lumped.LumpedMass => ({
  C: i.C!,
  G: i.UA!,
  Q: i.Q!,
  T_surroundings: i.T_ambient ?? i.T_ambient_0!,
  T0: i.T0!,
});

/** Each op of the file, by the function that answers it. */
const answer: Record<string, (i: Inputs) => Record<string, number | null>> = {
  'lumped-warmup': (i) => ({
    tau: lumped.timeConstant(mass(i)),
    T_steady: lumped.settleTemperature(mass(i)),
    T: lumped.lumpedTemperature(mass(i), i.t!),
  }),
  'lumped-time-to-reach': (i) => ({ t: lumped.timeToReach(mass(i), i.T_target!) }),
  'lumped-pulse': (i) => ({ ...lumped.lumpedPulse(mass(i), { t_off: i.t_off!, t: i.t! }) }),
  'lumped-ramp-ambient': (i) => ({
    T: lumped.lumpedRamp(mass(i), { rate: i.ambient_rate!, t: i.t! }),
  }),
  'heat-stored': (i) => ({ energy: lumped.heatStored({ C: i.C!, T0: i.T0!, T1: i.T1! }) }),
};

describe(`against ${reference.source.citation}`, () => {
  it.each(reference.cases.map((c) => [c.id, c] as const))('%s', (_id, c) => {
    const got = answer[c.op]!(c.inputs as unknown as Inputs);
    for (const [field, expected] of Object.entries(c.expected)) {
      within(got[field]!, expected, reference.tolerance, field);
    }
  });
});

describe('limits and inverses (from the physics)', () => {
  const m = { C: 40000, G: 150, Q: 4000, T_surroundings: 300, T0: 305 };

  it('time to reach undoes temperature after a time', () => {
    for (const t of [1, 30, 400, 3000]) {
      expect(lumped.timeToReach(m, lumped.lumpedTemperature(m, t))).toBeCloseTo(t, 6);
    }
  });

  it('without conductance the temperature climbs at Q / C', () => {
    expect(lumped.lumpedTemperature({ ...m, G: 0 }, 10)).toBeCloseTo(306, 12);
    expect(lumped.timeToReach({ ...m, G: 0 }, 306)).toBeCloseTo(10, 12);
  });

  it('never reaches what lies past the steady temperature or the other way', () => {
    expect(lumped.timeToReach(m, 300 + 4000 / 150 + 0.1)).toBeNull();
    expect(lumped.timeToReach(m, 304)).toBeNull();
    expect(lumped.timeToReach({ ...m, T0: 300 + 4000 / 150 }, 310)).toBeNull();
  });

  it('the pulse peaks at its end, and at the start when even the pulse cannot hold the mass', () => {
    expect(lumped.lumpedPulse(m, { t_off: 20, t: 5 }).T_peak).toBe(lumped.lumpedTemperature(m, 20));
    expect(lumped.lumpedPulse({ ...m, Q: 0 }, { t_off: 20, t: 100 }).T_peak).toBe(305);
  });

  it('a ramp of rate zero is a warm-up', () => {
    expect(lumped.lumpedRamp(m, { rate: 0, t: 77 })).toBeCloseTo(
      lumped.lumpedTemperature(m, 77),
      9,
    );
  });

  it('refuses what cannot be, NaN included', () => {
    expect(() => lumped.timeConstant({ C: 1, G: 0 })).toThrow(OutOfRangeError);
    expect(() => lumped.settleTemperature({ G: 0, Q: 1, T_surroundings: 300 })).toThrow(
      OutOfRangeError,
    );
    expect(() => lumped.lumpedTemperature({ ...m, Q: NaN }, 1)).toThrow(OutOfRangeError);
    expect(() => lumped.lumpedTemperature(m, -1)).toThrow(OutOfRangeError);
  });
});
