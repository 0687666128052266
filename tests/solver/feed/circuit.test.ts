import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { InvalidInputError, OutOfRangeError } from '$lib/solver/errors';
import {
  feedParts,
  feedResistance,
  relayResistance,
  relaySharing,
  type FeedCircuit,
} from '$lib/solver/feed/circuit';
import { dropsAboveAdvice } from '$lib/solver/feed/dropAdvice';
import { jointResistance, walk } from '$lib/solver/feed/walk';
import { workedFeed } from './example';

const withGauge = (awg: number): FeedCircuit => ({
  ...workedFeed,
  wire: { ...workedFeed.wire, size: { by: 'awg', awg } },
});

const ohms = fc.double({ min: 0, max: 0.2, noNaN: true });
const circuits = fc
  .record({
    running: fc.boolean(),
    protection: ohms,
    awg: fc.integer({ min: -3, max: 22 }),
    lengthOneWay: fc.double({ min: 0, max: 10, noNaN: true }),
    temperature: fc.double({ min: 250, max: 400, noNaN: true }),
    shareBeforeRelay: fc.double({ min: 0, max: 1, noNaN: true }),
    relays: fc.array(ohms, { maxLength: 2 }),
    feed: fc.array(ohms, { maxLength: 3 }),
    ground: fc.array(ohms, { maxLength: 3 }),
  })
  .map((c): FeedCircuit => ({
    source: { engineRunning: 13.8, engineOff: 12.4, running: c.running },
    protection: { kind: 'fuse', resistance: c.protection, rating: 30 },
    wire: {
      size: { by: 'awg', awg: c.awg },
      lengthOneWay: c.lengthOneWay,
      temperature: c.temperature,
      shareBeforeRelay: c.shareBeforeRelay,
    },
    relays: c.relays.map((resistance, i) => ({ name: `relay ${i}`, resistance, rating: 30 })),
    connectors: [
      ...c.feed.map((resistance) => ({ name: 'plug', resistance, side: 'feed' as const })),
      ...c.ground.map((resistance) => ({ name: 'ring', resistance, side: 'ground' as const })),
    ],
  }));

describe('walking the feed', () => {
  // Source: worked question of the trade, computed independently; stated tolerance of a closed form 0.5 %.
  it('agrees with the worked question', () => {
    const { drops, pumpVolts } = walk(workedFeed, 18);
    const wire = drops.filter((d) => d.kind === 'wire');
    const sum = (pick: (d: (typeof wire)[number]) => number) =>
      wire.reduce((s, d) => s + pick(d), 0);
    expect(Math.abs(sum((d) => d.resistance) / 0.0818 - 1)).toBeLessThan(0.005);
    expect(Math.abs(sum((d) => d.drop) / 1.47 - 1)).toBeLessThan(0.005);
    expect(Math.abs(pumpVolts / 11.78 - 1)).toBeLessThan(0.005);
  });
  it.each([
    [12, 0.93],
    [10, 0.58],
  ])('loses in %d gauge wire %f V', (awg, drop) => {
    const wire = walk(withGauge(awg), 18).drops.filter((d) => d.kind === 'wire');
    expect(Math.abs(wire.reduce((s, d) => s + d.drop, 0) / drop - 1)).toBeLessThan(0.005);
  });

  it('shows each point against battery negative, in order', () => {
    const { points } = walk(workedFeed, 18);
    expect(points.map((p) => p.place)).toEqual([
      'battery-positive',
      'after-protection',
      'after-relay',
      'pump-positive',
      'pump-negative',
      'battery-negative',
    ]);
    // By hand: 81.83 mohm out and back, a quarter of the way out before the relay.
    const outward = (0.08183 / 2) * 18;
    const expected = [
      13.8,
      13.7,
      13.7 - outward / 4 - 0.2,
      13.5 - outward - 0.15,
      outward + 0.1,
      0,
    ];
    points.forEach((p, i) => expect(p.volts).toBeCloseTo(expected[i]!, 3));
  });

  it('has no point after a relay that is not there', () => {
    const { points } = walk({ ...workedFeed, relays: [] }, 18);
    expect(points.map((p) => p.place)).not.toContain('after-relay');
  });

  it('closes: source = drops + pump, and volts fall along the feed', () => {
    fc.assert(
      fc.property(circuits, fc.double({ min: 0, max: 40, noNaN: true }), (circuit, current) => {
        const w = walk(circuit, current);
        const source = w.points[0]!.volts;
        const scale = Math.max(source, w.drop);
        expect(Math.abs(w.drop + w.pumpVolts - source)).toBeLessThanOrEqual(1e-12 * scale);
        expect(Math.abs(w.drop - current * feedResistance(circuit))).toBeLessThanOrEqual(
          1e-12 * scale,
        );
        const onFeed = w.points.filter((p) => !p.place.endsWith('negative'));
        onFeed.slice(1).forEach((p, i) => expect(p.volts).toBeLessThanOrEqual(onFeed[i]!.volts));
      }),
    );
  });

  it('thicker wire never has more resistance', () => {
    fc.assert(
      fc.property(circuits, (circuit) => {
        const { size } = circuit.wire;
        if (size.by !== 'awg' || size.awg === -3) return;
        const thicker = { ...circuit.wire, size: { by: 'awg', awg: size.awg - 1 } } as const;
        expect(feedResistance({ ...circuit, wire: thicker })).toBeLessThanOrEqual(
          feedResistance(circuit),
        );
      }),
    );
  });

  it('uses the volts of the engine as it is', () => {
    const off = { ...workedFeed, source: { ...workedFeed.source, running: false } };
    expect(walk(off, 0).pumpVolts).toBe(12.6);
  });

  it('refuses milliohms typed as ohms', () => {
    const wrong = { ...workedFeed, protection: { ...workedFeed.protection, resistance: 15 } };
    expect(() => feedParts(wrong)).toThrow(OutOfRangeError);
    expect(() => walk(workedFeed, NaN)).toThrow(OutOfRangeError);
  });
});

describe('joints', () => {
  // Source: the worked question: a plug that loses 0.25 V at 18 A makes 4.5 W.
  it('heat of a bad plug', () => {
    const plug = { name: 'plug', resistance: jointResistance({ U: 0.25, I: 18 }), side: 'feed' };
    const circuit = { ...workedFeed, connectors: [plug] } as FeedCircuit;
    const drop = walk(circuit, 18).drops.find((d) => d.name === 'plug');
    expect(drop?.heat).toBeCloseTo(4.5, 10);
  });

  it('without current a drop tells nothing', () => {
    expect(() => jointResistance({ U: 0, I: 0 })).toThrow(OutOfRangeError);
  });

  // By hand from the worked feed: outward wire 0.18 + 0.55 V, back 0.74 V; relay 0.2; plugs 0.15 and 0.1.
  it('lists what loses more than advised, worst first', () => {
    const names = dropsAboveAdvice(walk(workedFeed, 18)).map((e) => e.part.name);
    expect(names).toEqual(['ground wire', 'wire to the pump', 'pump plug']);
  });
});

describe('relays in parallel', () => {
  const relay = (resistance: number, rating = 30) => ({
    name: `${resistance}`,
    resistance,
    rating,
  });

  it('two alike have half the resistance and half the current each', () => {
    expect(relayResistance([relay(0.01), relay(0.01)])).toBeCloseTo(0.005, 15);
    expect(relaySharing([relay(0.01), relay(0.01)], 18).map((s) => s.current)).toEqual([9, 9]);
  });

  it('a worn contact leaves the load to the other', () => {
    const [good, worn] = relaySharing([relay(0.005, 15), relay(0.045, 15)], 20);
    expect(good!.current).toBeCloseTo(18, 12);
    expect(good!.overloaded).toBe(true);
    expect(worn!.current).toBeCloseTo(2, 12);
    expect(worn!.overloaded).toBe(false);
  });

  it('sums to the current, same drop across each', () => {
    const each = fc.double({ min: 1e-4, max: 0.5, noNaN: true });
    fc.assert(
      fc.property(each, each, (a, b) => {
        const shares = relaySharing([relay(a), relay(b)], 20);
        expect(shares[0]!.current + shares[1]!.current).toBeCloseTo(20, 10);
        expect(shares[0]!.current * a).toBeCloseTo(shares[1]!.current * b, 10);
      }),
    );
  });

  it('a perfect contact takes all; two perfect ones are refused', () => {
    expect(relaySharing([relay(0), relay(0.01)], 20).map((s) => s.current)).toEqual([20, 0]);
    expect(relayResistance([])).toBe(0);
    expect(() => relaySharing([relay(0), relay(0)], 20)).toThrow(InvalidInputError);
  });
});
