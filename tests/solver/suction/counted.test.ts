/** Cavitation counted: the pump loses head to its suction side, the loop feels it. */
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { coolantProperties } from '$lib/solver/fluids/coolant';
import { hydraulicModel } from '$lib/solver/hydraulics/operatingPoint';
import { prepareLoop } from '$lib/solver/loop/prepare';
import { steady } from '$lib/solver/loop/steady';
import type { Loop } from '$lib/solver/loop/types';
import { arbitraryDuty, arbitraryLoop } from '../loop/arbitrary';
import { exampleLoop } from '../hydraulics/exampleLoop';

type Counting = NonNullable<Loop['pump']['cavitation']>;
const counting = (loop: Loop, cavitation: Counting = 'counted'): Loop => ({
  ...loop,
  pump: { ...loop.pump, cavitation },
});
const counted = counting(exampleLoop);
const at = (loop: Loop, T: number) =>
  hydraulicModel(loop).operatingPoint(coolantProperties(loop.coolant, T), T);

describe('the operating point', () => {
  it('healthy: nothing changes', () => {
    const [a, b] = [at(exampleLoop, 300), at(counted, 300)];
    expect(b.headLeft).toBeGreaterThan(1 - 1e-12);
    expect(b.flow).toBeCloseTo(a.flow, 12);
  });
  it('short: the head is the curve times what is left, and the loop asks just that', () => {
    for (const T of [373, 375, 377, 378]) {
      const op = at(counted, T);
      const model = hydraulicModel(counted);
      expect(op.headLeft).toBeLessThan(1);
      expect(op.head / (model.pump.head(op.flow) * op.headLeft)).toBeCloseTo(1, 12);
      const asked = model.systemHead(op.flow, coolantProperties(counted.coolant, T));
      expect(op.head / asked).toBeCloseTo(1, 9);
      expect(op.flow).toBeLessThan(at(exampleLoop, T).flow);
    }
  });
  it('the hotter, the less flow, once it runs short', () => {
    const flows = [373, 375, 376, 377, 378].map((T) => at(counted, T).flow);
    for (let i = 1; i < flows.length; i++) expect(flows[i]).toBeLessThan(flows[i - 1]!);
  });
  it('where it runs short the note speaks of the flow shown', () => {
    const words = (loop: Loop) =>
      at(loop, 376).notes.find(({ code }) => code === 'suction.short')!.message;
    expect(words(exampleLoop)).toContain('lower than shown');
    expect(words(counted)).not.toContain('lower than shown');
    expect(at(counted, 376).notes.map(({ code }) => code)).toContain('suction.head-lost');
  });
  it('a tank far too low for hot liquid: nothing moves', () => {
    const low = { ...counted, reservoir: { ...counted.reservoir, levelAbovePump: -3 } };
    expect(at(low, 375).flow).toBe(0);
    expect(at(low, 300).flow).toBeGreaterThan(0);
  });
  // A need that falls with flow lets pump and loop meet more than once: the largest flow is told.
  it('of several crossings it takes the one of the largest flow', () => {
    const npshCurve = [
      { flow: 0, head: 30 },
      { flow: 1e-4, head: 30 },
      { flow: 2e-4, head: 3 },
      { flow: 7e-4, head: 3.5 },
    ];
    const hooked = { ...counted, pump: { ...counted.pump, npshCurve } };
    const liquid = coolantProperties(hooked.coolant, 350);
    const model = hydraulicModel(hooked);
    const surplus = (Q: number) =>
      model.pump.head(Q) * model.suctionAt(Q, liquid, 350).headLeft - model.systemHead(Q, liquid);
    const op = model.operatingPoint(liquid, 350);
    const flows = Array.from({ length: 400 }, (_, i) => (op.flow * (i + 1)) / 400);
    const signs = flows.slice(0, -1).map((Q) => surplus(Q) > 0);
    expect(signs.filter((s, i) => i > 0 && s !== signs[i - 1]).length).toBeGreaterThan(0);
    expect(Math.abs(surplus(op.flow))).toBeLessThan(1e-9);
    for (let k = 1; k <= 50; k++) expect(surplus(op.flow * (1 + k / 50))).toBeLessThan(0);
  });
});

describe('any valid loop', () => {
  const loops = fc.record({
    loop: arbitraryLoop,
    share: fc.double({ min: 0, max: 1, noNaN: true }),
  });
  it('flows no more than in health, never back, and closes', () => {
    fc.assert(
      fc.property(loops, ({ loop, share }) => {
        const { coldest, hottest } = prepareLoop(loop);
        const T = coldest + share * (hottest - coldest);
        const liquid = coolantProperties(loop.coolant, T);
        const healthy = hydraulicModel(loop).flowAt(liquid, T);
        const model = hydraulicModel(counting(loop));
        const flow = model.flowAt(liquid, T);
        expect(flow).toBeGreaterThanOrEqual(0);
        expect(flow).toBeLessThanOrEqual(healthy);
        if (flow === 0) return;
        const head = model.pump.head(flow) * model.suctionAt(flow, liquid, T).headLeft;
        const asked = model.systemHead(flow, liquid);
        expect(Math.abs(head - asked)).toBeLessThan(1e-6 * Math.max(asked, 1e-3));
      }),
      { numRuns: 150 },
    );
  });
  it('settles to one of the four outcomes, with finite numbers and a closed ledger', () => {
    fc.assert(
      fc.property(arbitraryLoop, arbitraryDuty, (loop, duty) => {
        const s = steady(counting(loop), duty);
        for (const T of Object.values(s.temperatures)) expect(Number.isFinite(T)).toBe(true);
        expect(Number.isFinite(s.operating.flow)).toBe(true);
        expect(Number.isFinite(s.residual)).toBe(true);
        const loose = s.notes.some(({ code }) => code === 'balance-loose');
        if (s.status === 'balanced' && !loose) expect(s.relativeResidual).toBeLessThan(1e-9);
      }),
      { numRuns: 150 },
    );
  });
  it('settles with no more flow than in health', () => {
    fc.assert(
      fc.property(arbitraryLoop, arbitraryDuty, (loop, duty) => {
        const healthy = steady(loop, duty);
        const starved = steady(counting(loop), duty);
        if (healthy.status !== 'balanced' || starved.status !== 'balanced') return;
        expect(starved.operating.flow).toBeLessThanOrEqual(healthy.operating.flow * 1.0001);
      }),
      { numRuns: 100 },
    );
  });
});

describe('the steady loop feels it', () => {
  /** Vented, high up, a hot day, a pump that needs much. */
  const hot: Loop = {
    ...exampleLoop,
    site: { ...exampleLoop.site, altitude: 2000, ambientTemperature: 318 },
    pump: { ...exampleLoop.pump, npshRequired: 6.5 },
  };
  const heated = (heat: number): Loop => ({
    ...hot,
    duties: { ...hot.duties, cruise: { ...hot.duties.cruise, air: { by: 'heat', heat } } },
  });
  it('ignored by default: the field absent is the field saying ignored', () => {
    expect(steady(heated(12e3), 'cruise')).toEqual(
      steady(counting(heated(12e3), 'ignored'), 'cruise'),
    );
  });
  it('short of suction head it settles hotter, with less flow', () => {
    const heats = [10e3, 12e3, 14e3, 16e3, 18e3, 20e3, 22e3, 24e3];
    const both = heats.map((heat) => ({
      healthy: steady(heated(heat), 'cruise'),
      starved: steady(counting(heated(heat)), 'cruise'),
    }));
    const felt = both.filter(({ starved }) => starved.operating.headLeft < 0.97);
    expect(felt.length).toBeGreaterThan(0);
    for (const { healthy, starved } of felt) {
      if (starved.status !== 'balanced') continue;
      expect(starved.operating.flow).toBeLessThan(healthy.operating.flow);
      expect(starved.temperatures.chargeCoolerOut).toBeGreaterThan(
        healthy.temperatures.chargeCoolerOut,
      );
    }
  });
  // Nothing leaves at the front and the bay is hotter than the liquid can get: only the end is left.
  it('with no way out it ends where the pump moves nothing any more, and says so', () => {
    const closed = counting({
      ...heated(5e3),
      frontExchanger: { ...hot.frontExchanger, cleanliness: 0 },
      reservoir: { ...hot.reservoir, levelAbovePump: -1.5 },
    });
    const { cruise } = closed.duties;
    const s = steady(
      { ...closed, duties: { ...closed.duties, cruise: { ...cruise, bayRise: 90 } } },
      'cruise',
    );
    expect(s.status).toBe('boils');
    expect(s.notes.map(({ code }) => code)).toContain('loop.pump-starved');
    expect(s.liquid.temperature).toBeLessThan(s.margins.boilingPoint);
  });
});
