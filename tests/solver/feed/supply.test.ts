import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { InvalidInputError, OutOfRangeError } from '$lib/solver/errors';
import { feedResistance } from '$lib/solver/feed/circuit';
import {
  currentAsked,
  drawLaw,
  dropAsked,
  loadShareFormula,
} from '$lib/solver/feed/circuitFormulas';
import { operatingVoltage } from '$lib/solver/feed/motor';
import { drawnPower, suppliedPump, type PumpDraw, type PumpSupply } from '$lib/solver/feed/supply';
import { wireArea } from '$lib/solver/feed/gauge';
import { areasToDraw, alongWire, SOLD_GAUGES, wireFor, withWire } from '$lib/solver/feed/wireFor';
import type { Pump } from '$lib/solver/loop/types';
import { exampleLoop } from '../hydraulics/exampleLoop';
import { workedFeed } from './example';

const pump: Pump = {
  ...exampleLoop.pump,
  motor: 'brushed',
  arrangement: 'one',
  ratedVolts: 13.5,
  cutoutVolts: 8.5,
  electricPower: 243, // 18 A at 13.5 V
};
const supply: PumpSupply = {
  circuit: workedFeed,
  draw: { kind: 'pump-law' },
  shutOffShare: 1,
  armatureResistance: 0,
  breaker: null,
};
const drawing = (kind: 'pump-law' | 'constant-torque' | 'constant-power'): PumpSupply => ({
  ...supply,
  draw: { kind },
});
const full = () => 1;
function runs(p: Pump, s: PumpSupply, share: (v: number) => number = full) {
  const found = suppliedPump(p, s, share);
  if (found.status !== 'runs') throw new Error(found.reason);
  return found;
}

describe('pump on its feed', () => {
  // Source: the trade's worked question, computed apart in Python; printed to 0.01 V.
  it('one torque: 11.78 V of 13.8 V, the worked question', () => {
    const at = runs(pump, drawing('constant-torque'));
    expect(Math.abs(at.volts - 11.78)).toBeLessThan(0.005);
    expect(at.current).toBeCloseTo(18, 12);
  });

  it('closes Kirchhoff for every law, load and motor', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('pump-law', 'constant-torque', 'constant-power'),
        fc.constantFrom('brushed', 'held-speed'),
        fc.double({ min: 0.2, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.integer({ min: 2, max: 24 }),
        (kind, motor, shutOffShare, flow, awg) => {
          const p = { ...pump, motor } as Pump;
          const s = withWire({ ...drawing(kind as 'pump-law'), shutOffShare }, { by: 'awg', awg });
          const at = suppliedPump(p, s, () => flow);
          if (at.status === 'stopped') return;
          const R = feedResistance(s.circuit);
          expect(Math.abs(at.volts + R * at.current - 13.8)).toBeLessThan(1e-8);
          expect(at.power).toBeCloseTo(drawnPower(p, s.draw, at.volts, at.loadShare), 9);
          expect(at.loadShare).toBeCloseTo(
            loadShareFormula.value({ k: shutOffShare, Q: flow, Q_0: 1 }),
            12,
          );
          // What the sheet prints is what was solved.
          const law = drawLaw(s.draw, p.motor);
          const x = { R, n: 1, f: at.loadShare, P_r: 243, V_r: 13.5, V_p: at.volts };
          expect(currentAsked(s.draw, law).value(x)).toBeCloseTo(at.current, 9);
          expect(dropAsked(s.draw, law).value(x)).toBeCloseTo(at.drop, 9);
        },
      ),
    );
  });

  it('one power is the closed form', () => {
    const closed = operatingVoltage(13.8, feedResistance(workedFeed), {
      kind: 'constant-power',
      power: 243,
      cutoutVolts: 8.5,
    });
    if (closed.status !== 'runs') throw new Error(closed.reason);
    const electronic = { ...pump, motor: 'held-speed' } as Pump;
    expect(runs(electronic, drawing('pump-law')).volts).toBeCloseTo(closed.volts, 9);
  });

  it('a table through the points of a law gives its crossing', () => {
    const points = [8, 11, 13.5, 15].map((volts) => ({ volts, current: 18 }));
    const table: PumpDraw = { kind: 'table', points };
    expect(runs(pump, { ...supply, draw: table }).volts).toBeCloseTo(
      runs(pump, drawing('constant-torque')).volts,
      9,
    );
    const short: PumpDraw = { kind: 'table', points: points.slice(0, 2) };
    const thick = withWire({ ...supply, draw: short }, { by: 'awg', awg: 0 });
    expect(() => suppliedPump(pump, thick, full)).toThrow(OutOfRangeError);
  });

  it('two pumps draw twice the current', () => {
    const two = { ...pump, arrangement: 'two-in-parallel' } as Pump;
    expect(runs(two, drawing('constant-torque')).current).toBeCloseTo(36, 12);
  });

  it('a wire too thin starts nothing', () => {
    const thin = withWire(
      { ...drawing('constant-torque'), armatureResistance: 0.1 },
      { by: 'awg', awg: 30 },
    );
    expect(suppliedPump(pump, thin, full)).toMatchObject({
      status: 'stopped',
      reason: 'cannot-turn',
    });
    // By hand: 18 A over 0.1 ohm asks 1.8 V; a feed of (13.8 - 1.8) / 18 = 0.6667 ohm is the last that starts.
    const of = (
      ohms: number,
      kind: 'constant-torque' | 'constant-power' = 'constant-torque',
    ): PumpSupply => ({
      ...drawing(kind),
      armatureResistance: 0.1,
      circuit: {
        ...workedFeed,
        wire: { ...workedFeed.wire, lengthOneWay: 0 },
        relays: [],
        connectors: [],
        protection: { ...workedFeed.protection, resistance: ohms },
      },
    });
    expect(suppliedPump(pump, of(0.6666), full).status).toBe('runs');
    expect(suppliedPump(pump, of(0.6667), full).status).toBe('stopped');
    // An electronic pump of 243 W: 13.8² / (4 · 243) = 0.196 ohm is the most that passes it;
    // at 0.19 ohm it would settle at (13.8 + 2.4) / 2 = 8.1 V, but it lets go at 8.5 V.
    const electronic = { ...pump, motor: 'held-speed' } as Pump;
    expect(suppliedPump(electronic, of(0.19, 'constant-power'), full)).toMatchObject({
      reason: 'cuts-in-and-out',
    });
    expect(
      suppliedPump({ ...electronic, cutoutVolts: 0 }, of(0.2, 'constant-power'), full),
    ).toMatchObject({
      reason: 'power-not-passed',
    });
  });

  it('a pump that draws nothing gets the battery’s volts', () => {
    expect(runs({ ...pump, electricPower: 0 }, supply)).toMatchObject({ volts: 13.8, current: 0 });
  });

  it('asks for the number of a joint nobody measured', () => {
    const open: PumpSupply = {
      ...supply,
      circuit: {
        ...workedFeed,
        connectors: [{ name: 'switch', resistance: NaN, side: 'feed' }],
      },
    };
    expect(() => suppliedPump(pump, open, full)).toThrow(InvalidInputError);
    expect(() => suppliedPump(pump, { ...supply, shutOffShare: 0 }, full)).toThrow(OutOfRangeError);
  });
});

describe('the wire that keeps a drop', () => {
  it('the least area loses just that, the gauge no more, the one below it more', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('pump-law', 'constant-torque', 'constant-power'),
        fc.double({ min: 0.6, max: 3, noNaN: true }),
        (kind, limit) => {
          const s = drawing(kind as 'pump-law');
          const wire = wireFor(pump, s, limit, full);
          if (!wire?.leastArea || !wire.gauge) return;
          const area = wire.leastArea;
          expect(runs(pump, withWire(s, { by: 'area', area })).drop).toBeCloseTo(limit, 7);
          expect(runs(pump, withWire(s, wire.gauge)).drop).toBeLessThanOrEqual(limit + 1e-9);
          const thinner = SOLD_GAUGES[SOLD_GAUGES.indexOf(wire.gauge.awg as 22) - 1];
          if (thinner === undefined) return;
          const below = suppliedPump(pump, withWire(s, { by: 'awg', awg: thinner }), full);
          if (below.status === 'runs') expect(below.drop).toBeGreaterThan(limit);
        },
      ),
    );
  });
  // By hand: 18 A in protection, relay and plugs of the worked question lose 0.1 + 0.2 + 0.25 = 0.55 V.
  it('joints that lose more than the limit leave no wire', () => {
    expect(wireFor(pump, drawing('constant-torque'), 0.54, full)).toMatchObject({
      leastArea: null,
      gauge: null,
    });
    // The question's own drops: 12 AWG loses 0.93 V in the wire, 14 AWG 1.47 V, beside the 0.55 V.
    expect(wireFor(pump, drawing('constant-torque'), 1.5, full)?.gauge?.awg).toBe(12);
    expect(wireFor(pump, drawing('constant-torque'), 1.47, full)?.gauge?.awg).toBe(10);
    expect(wireFor(pump, drawing('constant-torque'), 2.03, full)?.gauge?.awg).toBe(14);
  });
  it('no answer where the pump would not run with that drop', () => {
    const electronic = { ...pump, motor: 'held-speed' } as Pump;
    expect(wireFor(electronic, supply, 6, full)).toBeNull();
    expect(wireFor(pump, supply, 13, full)).toBeNull();
  });
  it('volts rise with copper', () => {
    const samples = alongWire(pump, supply, areasToDraw([wireArea({ awg: 4 })]), full);
    const volts = samples.flatMap(({ supplied }) =>
      supplied.status === 'runs' ? [supplied.volts] : [],
    );
    expect(volts.length).toBe(samples.length);
    volts.slice(1).forEach((v, i) => expect(v).toBeGreaterThan(volts[i]!));
    expect(samples.at(-1)!.area).toBeCloseTo(wireArea({ awg: 4 }), 12);
  });
});
