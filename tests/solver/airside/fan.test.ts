import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { fanModel } from '../../../src/lib/solver/airside/fan';
import { fanLaws } from '../../../src/lib/solver/hydraulics/affinity';
import { InvalidInputError } from '../../../src/lib/solver/errors';
import type { Fans } from '../../../src/lib/solver/loop/types';

const fans = (change: Partial<Fans> = {}): Fans => ({
  count: 1,
  curve: [
    { flow: 0, pressure: 150 },
    { flow: 0.1, pressure: 130 },
    { flow: 0.2, pressure: 90 },
    { flow: 0.3, pressure: 0 },
  ],
  ratedVolts: 13,
  volts: 13,
  diameter: 0.25,
  drivenLoss: 1.5,
  coverage: 1,
  ...change,
});

describe('a running fan', () => {
  const rated = fanModel(fans(), 1.2);
  it('runs through its points and ends at free delivery', () => {
    for (const p of fans().curve) expect(rated.pressure(p.flow)).toBeCloseTo(p.pressure, 10);
    expect(rated.freeDelivery).toBeCloseTo(0.3, 12);
    expect(rated.shutOff).toBe(150);
  });

  it('keeps to the fan laws at any speed and density', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.2, max: 1.3, noNaN: true }),
        fc.double({ min: 0.8, max: 1.3, noNaN: true }),
        fc.double({ min: 0, max: 0.99, noNaN: true }),
        (speedRatio, density, share) => {
          const q = share * rated.freeDelivery;
          const similar = fanLaws(
            { Q: q, dp: rated.pressure(q), P: 0 },
            { speedRatio, densityRatio: density / 1.2 },
          );
          const model = fanModel(fans({ volts: 13 * speedRatio }), density);
          expect(model.pressure(similar.Q)).toBeCloseTo(similar.dp, 8);
        },
      ),
    );
  });

  it('falls from end to end, without a step at free delivery', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 1.3, noNaN: true }),
        fc.double({ min: 0, max: 3, noNaN: true }),
        (s, share) => {
          const model = fanModel(fans({ volts: 13 * s }), 1.1);
          const q = share * model.freeDelivery;
          expect(model.pressure(q * 1.001 + 1e-6)).toBeLessThan(model.pressure(q) + 1e-12);
          const edge = model.freeDelivery;
          const step = model.pressure(edge * (1 - 1e-9)) - model.pressure(edge * (1 + 1e-9));
          expect(Math.abs(step)).toBeLessThan(1e-5);
        },
      ),
    );
  });
});

describe('past free delivery and standing', () => {
  const A = (Math.PI / 4) * 0.25 ** 2;
  it('is a restriction by the stated law', () => {
    const model = fanModel(fans(), 1.2);
    expect(model.pressure(0.5)).toBeCloseTo((-1.5 * 0.6 * (0.25 - 0.09)) / A ** 2, 8);
    expect(model.notesAt(0.5)[0]!.code).toBe('fans.in-the-way');
    expect(model.notesAt(0.2)).toEqual([]);
  });
  it('standing, it is the loss of its blades', () => {
    const model = fanModel(fans({ volts: 0 }), 1.2);
    expect(model.pressure(0.5)).toBeCloseTo(-1.5 * 0.6 * (0.5 / A) ** 2, 8);
    expect(model.pressure(0)).toBeCloseTo(0, 12);
    expect(model.notesAt(0.5)[0]!.code).toBe('fans.standing');
    expect(model.notesAt(0)).toEqual([]);
  });
  it('turning fan or standing fan: the turning one is never more in the way', () => {
    const standing = fanModel(fans({ volts: 0 }), 1.2);
    const turning = fanModel(fans(), 1.2);
    for (const q of [0, 0.1, 0.29, 0.31, 0.6, 2]) {
      expect(turning.pressure(q)).toBeGreaterThan(standing.pressure(q));
    }
  });
});

describe('curves', () => {
  it('one that ends above zero is carried on to zero, and told', () => {
    const curve = [
      { flow: 0, pressure: 100 },
      { flow: 0.2, pressure: 50 },
    ];
    const model = fanModel(fans({ curve }), 1.2);
    expect(model.freeDelivery).toBeCloseTo(0.4, 12);
    expect(model.pressure(0.3)).toBeCloseTo(25, 10);
    expect(model.notesAt(0.1)[0]!.code).toBe('fans.curve-continued');
  });
  it('one that starts late is held before its first point, and told', () => {
    const curve = [
      { flow: 0.1, pressure: 100 },
      { flow: 0.3, pressure: 0 },
    ];
    const model = fanModel(fans({ curve }), 1.2);
    expect(model.pressure(0.05)).toBeCloseTo(100, 10);
    expect(model.notesAt(0.05)[0]!.code).toBe('fans.before-curve');
  });
  const p = (flow: number, pressure: number) => ({ flow, pressure });
  it.each([
    { curve: [p(0, 100)] },
    { curve: [p(0, 100), p(0.1, 110), p(0.2, 0)] },
    { curve: [p(0, 100), p(0.1, -5)] },
    { volts: -1 },
    { volts: NaN },
    { ratedVolts: 0 },
    { diameter: 0 },
    { drivenLoss: -0.1 },
  ])('refuses %j', (change) =>
    expect(() => fanModel(fans(change), 1.2)).toThrow(InvalidInputError),
  );
});
