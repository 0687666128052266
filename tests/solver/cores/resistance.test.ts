import { describe, expect, it } from 'vitest';
import { coolantProperties } from '$lib/solver/fluids/coolant';
import { hALiquid, prandtl } from '$lib/solver/cores/formulas';
import { hALiquidByRatios, prandtlRatio, warmedOutlet } from '$lib/solver/cores/ratioFormulas';
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

describe('lines by ratios', () => {
  const here = coolantProperties({ kind: 'ethylene-glycol', massFraction: 0.5 }, 330);
  const rated = coolantProperties({ kind: 'water', massFraction: 0 }, 310);
  it('give what the line by numbers gives', () => {
    const Pr = prandtl.value({ c_p: here.cp, mu: here.mu, k: here.k });
    const Pr_r = prandtl.value({ c_p: rated.cp, mu: rated.mu, k: rated.k });
    const x_Pr = prandtlRatio.value({
      c_p: here.cp,
      mu: here.mu,
      k: here.k,
      c_pr: rated.cp,
      mu_r: rated.mu,
      k_r: rated.k,
    });
    expect(x_Pr).toBeCloseTo(Pr / Pr_r, 12);
    const common = { hA_r: 900, k: here.k, k_r: rated.k, x_Re: 0.4, n: 0.5 };
    expect(hALiquidByRatios.value({ ...common, x_Pr })).toBeCloseTo(
      hALiquid.value({ ...common, Pr, Pr_r }),
      8,
    );
  });
  it('warms a stream: 1.2 kW into 400 W/K are 3 K', () => {
    expect(warmedOutlet.value({ T_in: 310, Q: 1200, C: 400 })).toBe(313);
  });
});
