import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coreModel } from '$lib/solver/cores/conductance';
import { coreState, type CoreInlets } from '$lib/solver/cores/coreState';
import { OutOfRangeError } from '$lib/solver/errors';
import { coolantProperties } from '$lib/solver/fluids/coolant';
import type { Arrangement } from '$lib/solver/loop/types';
import { chargeCore, frontCore } from './fixture';

const relative = (got: number, expected: number) => Math.abs(got / expected - 1);
const glycol = { kind: 'ethylene-glycol', massFraction: 0.5 } as const;
const ARRANGEMENTS: readonly Arrangement[] = [
  'counterflow',
  'parallel',
  'crossflow-both-unmixed',
  'crossflow-air-mixed',
  'crossflow-liquid-mixed',
];

const ratedInlets = (core: typeof chargeCore, positive: CoreInlets['positive']): CoreInlets => ({
  airMassFlow: core.rating.airMassFlow,
  airIn: core.rating.airInlet,
  liquidFlow: core.rating.liquidFlow,
  liquidIn: core.rating.liquidInlet,
  liquid: coolantProperties(core.rating.coolant, core.rating.liquidInlet),
  positive,
});

describe('a core at its own rating gives back the rated heat', () => {
  it.each(ARRANGEMENTS)('%s', (arrangement) => {
    for (const [core, positive] of [
      [chargeCore, 'into-liquid'],
      [frontCore, 'out-of-liquid'],
    ] as const) {
      const heat = 0.6 * core.rating.heat; // within reach of parallel flow too
      const model = coreModel({ ...core, arrangement, rating: { ...core.rating, heat } });
      const state = coreState(model, ratedInlets(core, positive));
      expect(relative(state.heat, heat)).toBeLessThan(1e-9);
      expect(state.notes).toEqual([]);
    }
  });
});

describe('any state', () => {
  const model = coreModel(chargeCore);
  const anyInlets = fc.record({
    airMassFlow: fc.double({ min: 1e-6, max: 1, noNaN: true }),
    airIn: fc.double({ min: 260, max: 480, noNaN: true }),
    liquidFlow: fc.double({ min: 1e-9, max: 2e-3, noNaN: true }),
    liquidIn: fc.double({ min: 260, max: 370, noNaN: true }),
  });

  it('closes its energy balance and lets no outlet pass the other inlet', () => {
    fc.assert(
      fc.property(anyInlets, (flows) => {
        const liquid = coolantProperties(glycol, flows.liquidIn);
        const s = coreState(model, { ...flows, liquid, positive: 'into-liquid' });
        // A temperature near 400 K is rounded to 6e-14 K; what the flows carry cannot agree more closely.
        const rounding = 2e-13 * (s.C_air + s.C_liquid) + 1e-13 * Math.abs(s.heat);
        const fromAir = s.C_air * (s.airIn - s.airOut);
        const intoLiquid = s.C_liquid * (s.liquidOut - s.liquidIn);
        expect(Math.abs(fromAir - intoLiquid)).toBeLessThanOrEqual(rounding);
        expect(Math.abs(fromAir - s.heat)).toBeLessThanOrEqual(rounding);
        const low = Math.min(s.airIn, s.liquidIn) - 1e-9;
        const high = Math.max(s.airIn, s.liquidIn) + 1e-9;
        for (const T of [s.airOut, s.liquidOut]) {
          expect(T).toBeGreaterThanOrEqual(low);
          expect(T).toBeLessThanOrEqual(high);
        }
        // Entropy: the heat runs from hot to cold.
        expect(Math.sign(s.heat) * Math.sign(s.airIn - s.liquidIn)).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it('carries more when either flow grows', () => {
    fc.assert(
      fc.property(anyInlets, (flows) => {
        fc.pre(Math.abs(flows.airIn - flows.liquidIn) > 1);
        const liquid = coolantProperties(glycol, flows.liquidIn);
        const heat = (more: Partial<typeof flows>) =>
          Math.abs(coreState(model, { ...flows, ...more, liquid, positive: 'into-liquid' }).heat);
        const now = heat({}) * (1 - 1e-12);
        expect(heat({ airMassFlow: 1.2 * flows.airMassFlow })).toBeGreaterThan(now);
        expect(heat({ liquidFlow: 1.2 * flows.liquidFlow })).toBeGreaterThan(now);
      }),
    );
  });

  it('shares of a core with their shares of the flows add up to the core', () => {
    fc.assert(
      fc.property(anyInlets, fc.double({ min: 0.05, max: 0.95, noNaN: true }), (flows, share) => {
        const liquid = coolantProperties(glycol, flows.liquidIn);
        const part = (s: number) =>
          coreState(model, {
            ...flows,
            airMassFlow: s * flows.airMassFlow,
            liquidFlow: s * flows.liquidFlow,
            liquid,
            positive: 'out-of-liquid',
            share: s,
          });
        const whole = coreState(model, { ...flows, liquid, positive: 'out-of-liquid' });
        const sum = part(share).heat + part(1 - share).heat;
        expect(Math.abs(sum - whole.heat)).toBeLessThanOrEqual(1e-9 * Math.abs(whole.heat));
        expect(part(share).NTU).toBeCloseTo(whole.NTU, 6);
      }),
    );
  });
});

describe('a stream that stands still', () => {
  const model = coreModel(frontCore);
  it.each([
    ['air', { airMassFlow: 0 }],
    ['liquid', { liquidFlow: 0 }],
    ['both', { airMassFlow: 0, liquidFlow: 0 }],
  ] as const)('%s: no heat, outlets are inlets, a number everywhere', (_, still) => {
    const s = coreState(model, { ...ratedInlets(frontCore, 'out-of-liquid'), ...still });
    expect(s).toMatchObject({ UA: 0, NTU: 0, Cr: 0, effectiveness: 0, heat: 0 });
    expect([s.airOut, s.liquidOut]).toEqual([s.airIn, s.liquidIn]);
    expect(Object.is(s.heat, 0)).toBe(true);
    expect(s.notes.length).toBeGreaterThan(0);
  });

  it('backwards or no number is refused', () => {
    for (const bad of [{ airMassFlow: -0.1 }, { liquidFlow: NaN }, { airIn: NaN }]) {
      expect(() =>
        coreState(model, { ...ratedInlets(frontCore, 'out-of-liquid'), ...bad }),
      ).toThrow(OutOfRangeError);
    }
  });
});
