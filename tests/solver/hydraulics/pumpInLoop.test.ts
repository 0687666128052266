import { describe, expect, it } from 'vitest';
import { coolantProperties } from '$lib/solver/fluids/coolant';
import type { PumpSupply } from '$lib/solver/feed/supply';
import { feedInLoop, flowRatioOf, wireCurve } from '$lib/solver/hydraulics/feedInLoop';
import { hydraulicModel } from '$lib/solver/hydraulics/operatingPoint';
import { modelIn } from '$lib/solver/hydraulics/pumpInLoop';
import { prepareLoop } from '$lib/solver/loop/prepare';
import { steady } from '$lib/solver/loop/steady';
import type { Loop } from '$lib/solver/loop/types';
import { settledState, warmUp } from '$lib/solver/loop/warmUp';
import { workedFeed } from '../feed/example';
import { exampleLoop as car } from '../loop/example';
import { exampleLoop, fahrenheit } from './exampleLoop';

const liquid = coolantProperties(exampleLoop.coolant, fahrenheit(120));
const cold = coolantProperties(exampleLoop.coolant, fahrenheit(10));
const supply: PumpSupply = {
  circuit: { ...workedFeed, wire: { ...workedFeed.wire, size: { by: 'awg', awg: 20 } } },
  draw: { kind: 'pump-law' },
  shutOffShare: 1,
  armatureResistance: 0.3,
  breaker: null,
};
const byFlow: PumpSupply = { ...supply, shutOffShare: 0.5 };
const loop: Loop = {
  ...exampleLoop,
  pump: { ...exampleLoop.pump, motor: 'brushed', ratedVolts: 13.5, electricPower: 120 },
};

describe('a pump on its feed in a loop', () => {
  it('no feed, and none said, are the volts stated, to the last bit', () => {
    const plain = hydraulicModel(loop);
    const none = hydraulicModel({ ...loop, feed: null });
    expect(none.flowAt(liquid)).toBe(plain.flowAt(liquid));
    expect(none.pump.volts).toBe(loop.pump.volts);
    expect(none.settled(liquid).supplied).toBeNull();
  });

  it.each([
    ['one load', supply],
    ['load by flow', byFlow],
  ])('flows as with the volts it finds typed in: %s', (_, feed) => {
    const on = hydraulicModel({ ...loop, feed });
    const { pump, flow, supplied } = on.settled(liquid);
    if (supplied?.status !== 'runs') throw new Error('stands');
    const typed = hydraulicModel({ ...loop, pump: { ...loop.pump, volts: supplied.volts } });
    expect(flow).toBe(typed.flowAt(liquid));
    expect(pump.speedRatio).toBe(typed.pump.speedRatio);
    expect(pump.electricPower).toBe(supplied.power);
    // Volts, load and flow agree with each other.
    const share = flow / pump.runOut;
    const load = feed.shutOffShare + (1 - feed.shutOffShare) * share;
    expect(supplied.loadShare).toBeCloseTo(load, 9);
    expect(supplied.power).toBeCloseTo(120 * load * pump.speedRatio ** 3, 7);
  });

  it('thick cold liquid flows less and leaves the pump more volts, only where the load follows', () => {
    const volts = (feed: PumpSupply, at: typeof liquid) =>
      hydraulicModel({ ...loop, feed }).settled(at).pump.volts;
    expect(volts(byFlow, cold)).toBeGreaterThan(volts(byFlow, liquid) + 1e-3);
    expect(volts(supply, cold)).toBe(volts(supply, liquid));
    expect(hydraulicModel({ ...loop, feed: byFlow }).fixedPump).toBeNull();
  });

  it('a feed that starts nothing moves nothing, and says why', () => {
    const thin: PumpSupply = {
      ...supply,
      draw: { kind: 'constant-torque' },
      circuit: {
        ...workedFeed,
        wire: { ...workedFeed.wire, size: { by: 'awg', awg: 36 } },
      },
    };
    const op = hydraulicModel({ ...loop, feed: thin }).operatingPoint(liquid, fahrenheit(120));
    expect(op.flow).toBe(0);
    expect(op.notes.find(({ code }) => code === 'pump.stopped')?.message).toMatch(/start/);
  });

  it('tells of a breaker that opens', () => {
    const breaker: PumpSupply['breaker'] = {
      ambient: 350,
      thermal: {
        rating: 5,
        referenceTemperature: 298.15,
        lossPerKelvin: 0.005,
        timeConstant: 50,
        reset: 'automatic',
        resetState: 0.5,
      },
    };
    const notes = (feed: PumpSupply) =>
      hydraulicModel({ ...loop, feed })
        .operatingPoint(liquid, fahrenheit(120))
        .notes.map(({ code }) => code);
    expect(notes({ ...supply, breaker })).toContain('feed.breaker-opens');
    const large = { ...breaker, thermal: { ...breaker.thermal, rating: 30 } };
    expect(notes({ ...supply, breaker: large })).not.toContain('feed.breaker-opens');
  });

  it('holds any volts on the plug, whatever the feed', () => {
    const held = hydraulicModel({ ...loop, feed: byFlow }).heldAt(liquid);
    const typed = hydraulicModel({ ...loop, pump: { ...loop.pump, volts: 11 } });
    expect(held(11).flow).toBe(typed.flowAt(liquid));
    expect(held(0).flow).toBe(0);
  });

  it('counts what the wiring costs', () => {
    const on = feedInLoop(loop, byFlow, liquid);
    expect(on.flow).toBeLessThan(on.flowAtSource);
    expect(flowRatioOf(on)!).toBeLessThan(1);
    const { volts, flow } = wireCurve(loop.pump, byFlow, on, [5e-7, 2e-6, 8e-6]);
    expect(volts.map(([, v]) => v)).toEqual([...volts.map(([, v]) => v)].sort((a, b) => a - b));
    expect(flow.at(-1)![1]).toBeLessThan(on.flowAtSource);
  });
});

describe('the whole loop on a feed whose load follows the flow', () => {
  const fed: Loop = { ...car, feed: byFlow };
  const prepared = prepareLoop(fed);

  it('closes its heats, and gives the liquid the heat of the pump it found', () => {
    const s = steady(prepared, 'cruise');
    expect(s.status).toBe('balanced');
    expect(s.relativeResidual).toBeLessThan(1e-9);
    const { pump } = modelIn(prepared.hydraulics, s.liquid);
    expect(s.operating.speedRatio).toBe(pump.speedRatio);
    expect(s.ledger.pump).toBeCloseTo(pump.heatToLiquid, 9);
  });

  it('stays where it has settled when followed in time', () => {
    const start = settledState(prepared, 'cruise');
    const { end } = warmUp(prepared, {
      schedule: [{ duty: 'cruise', duration: 600 }],
      start,
      chargeLimit: 400,
      recoveryBand: 1,
    });
    for (const key of Object.keys(start) as (keyof typeof start)[]) {
      expect(Math.abs(end[key] - start[key])).toBeLessThan(1e-3);
    }
  });
});
