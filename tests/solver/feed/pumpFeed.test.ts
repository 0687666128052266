import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { OutOfRangeError } from '$lib/solver/errors';
import { operatingVoltage } from '$lib/solver/feed/motor';
import { pumpHydraulic, speedRatio, type Hydraulic } from '$lib/solver/feed/pumpDraw';
import { pumpFeed, solvePumpFeed, type PumpOnFeed } from '$lib/solver/feed/pumpFeed';
import { brent } from '$lib/solver/numerics/root';
import { workedFeed } from './example';

const GPM = 6.30902e-5;

/** Invented "large" pump of the trade's pump question: 28 ft at no flow, 26 gpm at no head, at 13.5 V. */
function atSpeed(s: number): { flow: number; head: number } {
  const pump = (flow: number) => 8.5344 * (s * s - (flow / (26 * GPM)) ** 2);
  // System through its stated crossing of 9.37 gpm at full speed, exponent 1.8.
  const k = (8.5344 * (1 - (9.37 / 26) ** 2)) / (9.37 * GPM) ** 1.8;
  const flow = brent((q) => pump(q) - k * q ** 1.8, 0, 26 * GPM * s).x;
  return { flow, head: pump(flow) };
}

const base = { ratedVolts: 13.5, cutoutVolts: 8.5, electricPower: 210 } as const;
const brushed = pumpHydraulic({ ...base, motor: 'brushed' }, atSpeed);
const heldSpeed = pumpHydraulic({ ...base, motor: 'held-speed' }, atSpeed);

function runs(source: number, R: number, pump: Hydraulic): PumpOnFeed {
  const p = solvePumpFeed(source, R, pump);
  if (p.status !== 'runs') throw new Error(p.reason);
  return p;
}

describe('pump and feed together', () => {
  it('closes Kirchhoff to 1e-12 and keeps the bracket', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 15, noNaN: true }),
        fc.double({ min: 0, max: 0.3, noNaN: true }),
        fc.constantFrom(brushed, heldSpeed),
        (source, R, pump) => {
          const p = solvePumpFeed(source, R, pump);
          if (p.status !== 'runs') return;
          expect(Math.abs(p.volts + p.drop - source)).toBeLessThanOrEqual(1e-12 * source);
          expect(p.volts).toBeGreaterThan(0);
          expect(p.volts).toBeLessThanOrEqual(source);
          expect(p.flowLost).toBeGreaterThanOrEqual(0);
        },
      ),
    );
  });

  it('brushed and held-speed answer oppositely to the same loss', () => {
    const [b0, b1] = [runs(13.8, 0.01, brushed), runs(13.8, 0.15, brushed)];
    const [h0, h1] = [runs(13.8, 0.01, heldSpeed), runs(13.8, 0.15, heldSpeed)];
    expect(b1.current).toBeLessThan(b0.current); // draws less ...
    expect(b1.flow).toBeLessThan(b0.flow); // ... and moves less
    expect(h1.current).toBeGreaterThan(h0.current); // draws more ...
    expect(h1.flow).toBe(h0.flow); // ... and moves the same
    expect(h1.drop).toBeGreaterThan(b1.drop); // so the same bad joint costs it more volts
  });

  it('a held-speed pump is the constant power of the closed form', () => {
    const motor = { kind: 'constant-power', power: 210, cutoutVolts: 8.5 } as const;
    const closed = operatingVoltage(13.8, 0.12, motor);
    if (closed.status !== 'runs') throw new Error(closed.reason);
    expect(runs(13.8, 0.12, heldSpeed).volts).toBeCloseTo(closed.volts, 10);
  });

  // By hand: current of a brushed pump goes with the square of volts, I = P V² / Vr³;
  // V + R P V² / Vr³ = source is a quadratic.
  it('a brushed pump is the positive root of its quadratic', () => {
    const a = (0.12 * 210) / 13.5 ** 3;
    const root = (-1 + Math.sqrt(1 + 4 * a * 13.8)) / (2 * a);
    expect(runs(13.8, 0.12, brushed).volts).toBeCloseTo(root, 10);
  });

  // Source: worked question of the trade, computed independently: 11.78 V at the pump gives 0.865 of the flow
  // at 13.5 V; iteration-based tolerance 2 %. The rule "flow follows volts" gives 0.872 for a brushed motor.
  it('flow ratio of the worked question', () => {
    const ratio = brushed(11.78).flow / brushed(13.5).flow;
    expect(Math.abs(ratio / 0.865 - 1)).toBeLessThan(0.02);
    const pump = { motor: 'brushed', ratedVolts: 13.5, cutoutVolts: 0 } as const;
    expect(Math.abs(speedRatio(pump, 11.78) / 0.865 - 1)).toBeLessThan(0.02);
  });

  it('no resistance, no loss', () => {
    const p = runs(13.8, 0, brushed);
    expect([p.volts, p.drop, p.flowLost]).toEqual([13.8, 0, 0]);
  });

  it('takes a described circuit', () => {
    const p = pumpFeed(workedFeed, brushed);
    if (p.status !== 'runs') throw new Error(p.reason);
    expect(p.source).toBe(13.8);
    expect(p.resistance).toBeCloseTo(0.08183 + 0.55 / 18, 4); // the worked drops at 18 A, and the wire
  });

  it('says when the feed cannot pass the power', () => {
    const anyVolts: Hydraulic = () => ({ flow: 1e-3, head: 3, electricPower: 210 });
    // By hand: at most 13.8² / 4R passes: 0.2267 ohm is the limit at 210 W.
    const limit = 13.8 ** 2 / 4 / 210;
    expect(runs(13.8, limit * (1 - 1e-6), anyVolts).volts).toBeCloseTo(6.9, 1);
    expect(solvePumpFeed(13.8, limit * (1 + 1e-6), anyVolts)).toMatchObject({
      status: 'stopped',
      reason: 'power-not-passed',
      flowWithoutDrop: 1e-3,
    });
  });

  it('says when a controller would cut in and out', () => {
    // By hand: at 8.5 V it asks 24.7 A; 0.22 ohm then leaves 13.8 - 5.4 = 8.4 V, below its limit.
    expect(solvePumpFeed(13.8, 0.22, heldSpeed)).toMatchObject({ reason: 'cuts-in-and-out' });
    expect(solvePumpFeed(8.4, 0.01, heldSpeed)).toMatchObject({ reason: 'below-cutout' });
  });

  it('refuses volts out of all bounds', () => {
    expect(() => solvePumpFeed(NaN, 0.1, brushed)).toThrow(OutOfRangeError);
    expect(() => solvePumpFeed(13.8, -0.1, brushed)).toThrow(OutOfRangeError);
  });
});
