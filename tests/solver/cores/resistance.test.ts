import { describe, expect, it } from 'vitest';
import { differencesSpent, resistances } from '$lib/solver/cores/resistance';

describe('resistances in series', () => {
  // By hand: 1/200 + 1/600 = 1/150; a fifth fouled away leaves UA 120, and 1/120 - 1/150 = 1/600.
  const core = { UA: 120, hA_air: 200, hA_liquid: 600, heat: -1200 };
  it('part 1/UA', () => {
    const { air, liquid, rest } = resistances(core)!;
    expect(air).toBeCloseTo(1 / 200, 12);
    expect(liquid).toBeCloseTo(1 / 600, 12);
    expect(rest).toBeCloseTo(1 / 600, 12);
  });
  it('take the mean difference between them: 1200 W over 120 W/K are 10 K', () => {
    const { air, liquid, rest } = differencesSpent(core)!;
    expect(air).toBeCloseTo(6, 12);
    expect(liquid).toBeCloseTo(2, 12);
    expect(rest).toBeCloseTo(2, 12);
  });
  it('are none where nothing moves or nothing is carried', () => {
    expect(resistances({ UA: 0, hA_air: 0, hA_liquid: 0 })).toBeNull();
    expect(differencesSpent({ ...core, heat: 0 })).toBeNull();
  });
});
