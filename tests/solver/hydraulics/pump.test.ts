import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { pumpModel, speedRatio } from '../../../src/lib/solver/hydraulics/pump';
import { InvalidInputError } from '../../../src/lib/solver/errors';
import type { Pump } from '../../../src/lib/solver/loop/types';

/** Points of H = H0 − a Q² up to where it ends. */
const parabola = (H0: number, a: number, n = 41, end = 1) =>
  Array.from({ length: n }, (_, i) => {
    const flow = ((end * i) / (n - 1)) * Math.sqrt(H0 / a);
    return { flow, head: Math.max(0, H0 - a * flow * flow) };
  });

const pump = (change: Partial<Pump> = {}): Pump => ({
  curve: parabola(9, 3.6e6),
  ratedVolts: 13.5,
  volts: 13.5,
  motor: 'brushed',
  cutoutVolts: 8,
  arrangement: 'one',
  electricPower: 100,
  heatShare: 0.8,
  npshRequired: 1.8,
  ...change,
});

describe('head of one pump', () => {
  it('runs through its points', () => {
    const model = pumpModel(pump());
    for (const p of pump().curve) expect(model.head(p.flow)).toBeCloseTo(p.head, 12);
    expect(model.shutOff).toBe(9);
    expect(model.runOut).toBeCloseTo(Math.sqrt(9 / 3.6e6), 12);
  });

  // Source: similar points of H = H0 − a Q² give H0 r² − a Q² (affinity laws, by hand).
  // The curve goes through 41 points of the parabola; between them the cubics are within 1e-4 of H0.
  it.each([
    [1, 0.001, 5.4],
    [0.85, 0.0008, 4.1985],
  ])('at speed %d', (r, flow, head) => {
    expect(Math.abs(pumpModel(pump({ volts: 13.5 * r })).head(flow) - head)).toBeLessThan(9e-4);
  });

  it('keeps to the affinity laws at any speed', () => {
    const rated = pumpModel(pump());
    fc.assert(
      fc.property(
        fc.double({ min: 0.3, max: 1.4, noNaN: true }),
        fc.double({ min: 0, max: 1.5, noNaN: true }),
        (s, share) => {
          const flow = share * rated.runOut;
          const model = pumpModel(pump({ volts: 13.5 * s }));
          expect(model.head(s * flow)).toBeCloseTo(s * s * rated.head(flow), 9);
          expect(model.runOut).toBeCloseTo(s * rated.runOut, 12);
          expect(model.electricPower).toBeCloseTo(100 * s ** 3, 9);
          expect(model.heatToLiquid).toBeCloseTo(80 * s ** 3, 9);
        },
      ),
    );
  });

  it('never rises with the flow, continued parts included', () => {
    const heads = fc.uniqueArray(fc.double({ min: 0, max: 20, noNaN: true }), {
      minLength: 2,
      maxLength: 8,
    });
    fc.assert(
      fc.property(heads, fc.double({ min: 0, max: 2, noNaN: true }), (list, x) => {
        const falling = [...list].sort((a, b) => b - a);
        const curve = falling.map((head, i) => ({ flow: (i + 1) * 1e-4, head }));
        const model = pumpModel(pump({ curve }));
        const flow = x * model.runOut;
        expect(model.head(flow * 1.01)).toBeLessThanOrEqual(model.head(flow) + 1e-12);
        expect(Math.abs(model.head(model.runOut))).toBeLessThan(1e-9);
        expect(model.slope(flow)).toBeLessThanOrEqual(1e-9);
      }),
    );
  });
});

describe('two pumps', () => {
  const one = pumpModel(pump());
  it('in series add heads at one flow', () => {
    const two = pumpModel(pump({ arrangement: 'two-in-series' }));
    expect(two.head(0.0009)).toBeCloseTo(2 * one.head(0.0009), 12);
    expect(two.runOut).toBeCloseTo(one.runOut, 12);
    expect(two.slope(0.0009)).toBeCloseTo(2 * one.slope(0.0009), 6);
    expect(two.electricPower).toBe(200);
  });
  it('in parallel add flows at one head', () => {
    const two = pumpModel(pump({ arrangement: 'two-in-parallel' }));
    expect(two.head(0.0018)).toBeCloseTo(one.head(0.0009), 12);
    expect(two.runOut).toBeCloseTo(2 * one.runOut, 12);
    expect(two.slope(0.0018)).toBeCloseTo(one.slope(0.0009) / 2, 6);
  });
});

describe('voltage and speed', () => {
  const motor = { ratedVolts: 12, cutoutVolts: 9 };
  it('brushed follows the volts', () =>
    expect(speedRatio({ motor: 'brushed', volts: 9.6, ...motor })).toBeCloseTo(0.8, 12));
  it('held speed holds it, then cuts out', () => {
    expect(speedRatio({ motor: 'held-speed', volts: 14, ...motor })).toBe(1);
    expect(speedRatio({ motor: 'held-speed', volts: 9, ...motor })).toBe(1);
    expect(speedRatio({ motor: 'held-speed', volts: 8.99, ...motor })).toBe(0);
    expect(speedRatio({ motor: 'held-speed', volts: 0, ratedVolts: 12, cutoutVolts: 0 })).toBe(0);
  });
  it('a stopped pump lifts nothing, and says why', () => {
    const model = pumpModel(pump({ motor: 'held-speed', volts: 5 }));
    expect([model.head(0), model.slope(0), model.runOut, model.heatToLiquid]).toEqual([0, 0, 0, 0]);
    expect(model.notesAt(0)[0]!.code).toBe('pump.stopped');
  });
});

describe('what lies beyond the points is told', () => {
  const curve = [
    { flow: 1e-4, head: 8 },
    { flow: 5e-4, head: 6 },
    { flow: 9e-4, head: 2 },
  ];
  const model = pumpModel(pump({ curve }));
  const codes = (flow: number) => model.notesAt(flow).map((n) => n.code);
  it('straight on with the end slope after the last point', () => {
    const slope = model.slope(9e-4);
    expect(model.head(10e-4)).toBeCloseTo(2 + slope * 1e-4, 12);
    expect(codes(10e-4)).toEqual(['pump.beyond-curve']);
  });
  it('held before the first point', () => {
    expect(model.head(0)).toBe(8);
    expect(codes(0.5e-4)).toEqual(['pump.before-curve']);
  });
  it('nothing to tell inside', () => expect(codes(5e-4)).toEqual([]));
  it('far from rated speed', () =>
    expect(
      pumpModel(pump({ volts: 5 }))
        .notesAt(1e-4)
        .map((n) => n.code),
    ).toEqual(['pump.far-from-rated']));
  it('a curve whose fit ends flat still comes down', () => {
    const flatEnd = pumpModel(
      pump({
        curve: [
          { flow: 0, head: 10 },
          { flow: 1e-4, head: 2 },
          { flow: 2e-4, head: 1.9 },
        ],
      }),
    );
    expect(flatEnd.runOut).toBeLessThan(3e-3);
    expect(flatEnd.head(flatEnd.runOut)).toBeCloseTo(0, 10);
  });
});

describe('curves and motors that cannot be', () => {
  const p = (flow: number, head: number) => ({ flow, head });
  it.each([
    ['no point', []],
    ['one point', [p(0, 5)]],
    ['rising', [p(0, 5), p(1e-4, 6), p(2e-4, 1)]],
    ['doubled', [p(0, 5), p(1e-4, 4), p(1e-4, 3)]],
    ['out of order', [p(0, 5), p(2e-4, 3), p(1e-4, 2)]],
    ['flat at its end', [p(0, 5), p(1e-4, 3), p(2e-4, 3)]],
    ['negative head', [p(0, 5), p(1e-4, -1)]],
    ['negative flow', [p(-1e-4, 5), p(1e-4, 1)]],
    ['not a number', [p(0, NaN), p(1e-4, 1)]],
  ])('%s', (_, curve) => {
    try {
      pumpModel(pump({ curve }));
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(InvalidInputError);
      expect((error as InvalidInputError).facts.quantity).toBe('pump.curve');
    }
  });
  it.each([
    { ratedVolts: 0 },
    { volts: -1 },
    { volts: NaN },
    { heatShare: 1.1 },
    { electricPower: -1 },
    { cutoutVolts: NaN },
  ])('%j', (change) => expect(() => pumpModel(pump(change))).toThrow(InvalidInputError));
});
