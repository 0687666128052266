import { describe, expect, it } from 'vitest';
import { effectiveness } from '$lib/solver/cores/effectiveness';
import { zoneToFreshAir } from '$lib/solver/loop/frontFormulas';
import {
  airLosses,
  frontAtSameHeat,
  frontChanged,
  frontCleaned,
  frontEven,
  frontGains,
  frontUnsure,
  leadingSide,
} from '$lib/solver/loop/frontWhatIf';
import { prepareLoop } from '$lib/solver/loop/prepare';
import { steady } from '$lib/solver/loop/steady';
import type { Loop } from '$lib/solver/loop/types';
import { exampleLoop } from './example';

const solved = (loop: Loop, duty: 'traffic' | 'cruise' | 'pull' = 'cruise') => {
  const prepared = prepareLoop(loop);
  return { prepared, s: steady(prepared, duty) };
};
const change = (front: Partial<Loop['frontExchanger']>, rest: Partial<Loop> = {}): Loop => ({
  ...exampleLoop,
  ...rest,
  frontExchanger: { ...exampleLoop.frontExchanger, ...front },
});
const relative = (got: number, expected: number) => Math.abs(got / expected - 1);
const SAME = 1e-9; // the balance is solved to that

describe('a changed front exchanger', () => {
  it.each(['traffic', 'cruise', 'pull'] as const)('unchanged, is that of the solution: %s', (d) => {
    const { prepared, s } = solved(exampleLoop, d);
    const { conductance, freshAir } = frontChanged(prepared, s);
    expect(relative(conductance * (s.front.liquidIn - freshAir), s.front.heat)).toBeLessThan(SAME);
    const same = frontAtSameHeat(prepared, s, {});
    expect(same.liquidIn).toBeCloseTo(s.temperatures.frontIn, 7);
    expect(same.drop).toBeCloseTo(s.temperatures.frontIn - s.temperatures.frontOut, 7);
  });

  // One zone, nothing coming round: G = eps(NTU, Cr) C_min, put together here from the relation itself.
  const plain = change(
    { cleanliness: 1 },
    {
      fans: { ...exampleLoop.fans, coverage: 1 },
      airPath: { ...exampleLoop.airPath, recirculation: 0 },
    },
  );
  it.each([0.5, 1, 2])('a core of %d times its size', (k) => {
    const { prepared, s } = solved(plain);
    const { UA, C_air, C_liquid } = s.front;
    const C_min = Math.min(C_air, C_liquid);
    const eps = effectiveness({
      arrangement: 'crossflow-both-unmixed',
      NTU: (k * UA) / C_min,
      Cr: C_min / Math.max(C_air, C_liquid),
    });
    expect(prepared.loop.frontExchanger.arrangement).toBe('crossflow-both-unmixed');
    expect(relative(frontChanged(prepared, s, { core: k }).conductance, eps * C_min)).toBeLessThan(
      1e-12,
    );
  });

  it('a core made k times larger is a core whose rated conductance is that much larger', () => {
    // Fouling takes a share off: half of a clean core is a core half fouled.
    const clean = solved(change({ cleanliness: 1 }));
    const half = frontChanged(clean.prepared, clean.s, { core: 0.5 }).conductance;
    const fouled = solved(change({ cleanliness: 0.5 }));
    expect(relative(half, frontChanged(fouled.prepared, clean.s).conductance)).toBeLessThan(1e-12);
    const back = frontCleaned(fouled.prepared, clean.s);
    expect(
      relative(back.conductance, frontChanged(clean.prepared, clean.s).conductance),
    ).toBeLessThan(1e-12);
  });

  it('half the flow doubles the drop, half the core leaves it; both run hotter', () => {
    const { prepared, s } = solved(exampleLoop);
    const now = frontAtSameHeat(prepared, s, {});
    const halfFlow = frontAtSameHeat(prepared, s, { flow: 0.5 });
    const halfCore = frontAtSameHeat(prepared, s, { core: 0.5 });
    expect(halfFlow.drop / now.drop).toBeCloseTo(2, 12);
    expect(halfCore.drop / now.drop).toBeCloseTo(1, 12);
    expect(halfFlow.liquidIn).toBeGreaterThan(now.liquidIn);
    expect(halfCore.liquidIn).toBeGreaterThan(now.liquidIn);
  });

  it('a weaker core runs hotter than a stronger one, and the stated one lies between', () => {
    const { prepared, s } = solved(exampleLoop);
    const { weak, strong } = frontUnsure(prepared, s);
    expect(weak.liquidIn).toBeGreaterThan(s.front.liquidIn);
    expect(strong.liquidIn).toBeLessThan(s.front.liquidIn);
  });
});

describe('hot air that comes round again', () => {
  it('the line closes the heat of the air, found here by repetition', () => {
    const g = 180; // eps C_min, W/K
    const [r, C_a, fresh, T_l] = [0.3, 260, 305, 340];
    let T_in = fresh;
    for (let i = 0; i < 400; i++) {
      const Q = g * (T_l - T_in);
      T_in = (1 - r) * fresh + r * (T_in + Q / C_a);
    }
    const air = zoneToFreshAir('air').value({ eps: g / C_a, C_a, r });
    const liquid = zoneToFreshAir('liquid').value({ eps: 0.9, x: 0.5, C_l: g / 0.45, C_a, r });
    for (const G of [air, liquid]) {
      expect(relative(G * (T_l - fresh), g * (T_l - T_in))).toBeLessThan(1e-12);
    }
  });
  it('and uneven air cost something, never gain', () => {
    const { prepared, s } = solved(exampleLoop, 'traffic');
    expect(s.air.zones.length).toBe(2);
    expect(s.air.recirculation).toBeGreaterThan(0);
    const { now, even, fresh, lost } = airLosses(prepared, s);
    expect(now).toBeLessThan(even);
    expect(even).toBeLessThan(fresh);
    expect(lost).toBeCloseTo(1 - now / frontEven(prepared, s).conductance, 12);
  });
});

describe('which side holds it back', () => {
  it('more of anything carries more; a tenth more of all carries a tenth more', () => {
    const { prepared, s } = solved(exampleLoop);
    const gains = frontGains(prepared, s);
    for (const gain of Object.values(gains)) {
      expect(gain).toBeGreaterThan(0);
      expect(gain).toBeLessThan(0.1);
    }
    // Streams and surface each a tenth larger is a tenth more of the same exchanger, but for the films,
    // which grow with the flows as well: so never less than a tenth.
    const all = frontChanged(prepared, s, { flow: 1.1, air: 1.1, core: 1.1 }).conductance;
    expect(all / frontChanged(prepared, s).conductance).toBeGreaterThanOrEqual(1.1);
  });
  it('little air points to the air, little liquid to the liquid', () => {
    const { prepared, s } = solved(exampleLoop);
    const little = (flow: number, air: number) =>
      leadingSide(
        frontGains(prepared, {
          ...s,
          operating: { ...s.operating, flow: flow * s.operating.flow },
          air: {
            ...s.air,
            zones: s.air.zones.map((z) => ({ ...z, airMassFlow: air * z.airMassFlow })),
          },
        }),
      );
    expect(little(1, 0.05)).toBe('air');
    expect(little(0.05, 1)).toBe('liquid');
  });
});
