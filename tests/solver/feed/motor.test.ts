import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { InvalidInputError, OutOfRangeError } from '$lib/solver/errors';
import {
  operatingVoltage,
  stallingResistance,
  type ElectricalPoint,
  type MotorLoad,
} from '$lib/solver/feed/motor';

const volts = fc.double({ min: 8, max: 16, noNaN: true });
const ohms = fc.double({ min: 0, max: 0.4, noNaN: true });
const motors = fc.oneof(
  fc.record({
    kind: fc.constant('constant-torque' as const),
    current: fc.double({ min: 1, max: 40, noNaN: true }),
    armatureResistance: fc.double({ min: 0, max: 0.5, noNaN: true }),
  }),
  fc.record({
    kind: fc.constant('constant-power' as const),
    power: fc.double({ min: 5, max: 600, noNaN: true }),
    cutoutVolts: fc.constantFrom(0, 8.5),
  }),
  fc.record({
    kind: fc.constant('constant-resistance' as const),
    resistance: fc.double({ min: 0.2, max: 20, noNaN: true }),
  }),
  fc.constantFrom<MotorLoad>({
    kind: 'table',
    points: [
      { volts: 5, current: 3 },
      { volts: 9, current: 7 },
      { volts: 12, current: 11 },
      { volts: 17, current: 19 },
    ],
  }),
);

function runs(source: number, R: number, motor: MotorLoad): ElectricalPoint {
  const point = operatingVoltage(source, R, motor);
  if (point.status !== 'runs') throw new Error(point.reason);
  return point;
}

describe('motor on a resistance', () => {
  it('closes Kirchhoff to 1e-12 and lies between nothing and the source', () => {
    fc.assert(
      fc.property(volts, ohms, motors, (source, R, motor) => {
        const p = operatingVoltage(source, R, motor);
        if (p.status !== 'runs') return;
        expect(Math.abs(p.volts + p.drop - source)).toBeLessThanOrEqual(1e-12 * source);
        expect(p.volts).toBeGreaterThan(0);
        expect(p.volts).toBeLessThanOrEqual(source);
        const given = source * p.current;
        expect(Math.abs(p.power + p.loss - given)).toBeLessThanOrEqual(1e-11 * given);
      }),
    );
  });

  it('stops exactly where the most resistance it bears is passed', () => {
    fc.assert(
      fc.property(volts, motors, (source, motor) => {
        const most = stallingResistance(source, motor);
        if (most === null || most === 0) return;
        expect(operatingVoltage(source, most * (1 - 1e-9), motor).status).toBe('runs');
        expect(operatingVoltage(source, most * (1 + 1e-9), motor).status).toBe('stopped');
      }),
    );
  });

  it('more resistance: less volts for every kind, but current goes three ways', () => {
    const current = (motor: MotorLoad) => [0.02, 0.1].map((R) => runs(13.8, R, motor).current);
    const [t0, t1] = current({ kind: 'constant-torque', current: 12, armatureResistance: 0.1 });
    const [p0, p1] = current({ kind: 'constant-power', power: 160, cutoutVolts: 8 });
    const [r0, r1] = current({ kind: 'constant-resistance', resistance: 1.1 });
    expect(t1).toBe(t0);
    expect(p1).toBeGreaterThan(p0!);
    expect(r1).toBeLessThan(r0!);
  });

  // By hand: V² - 12 V + 0.1 * 350 = 0 is (12 ± sqrt(144 - 140)) / 2 = 7 and 5: the upper one.
  it('takes the stable root of constant power', () => {
    const motor = { kind: 'constant-power', power: 350, cutoutVolts: 0 } as const;
    expect(runs(12, 0.1, motor).volts).toBeCloseTo(7, 12);
    expect(operatingVoltage(12, 0.1, { ...motor, cutoutVolts: 8 })).toEqual({
      status: 'stopped',
      reason: 'below-cutout',
    });
    expect(operatingVoltage(12, 0.11, motor)).toEqual({
      status: 'stopped',
      reason: 'power-not-passed',
    });
  });

  // By hand: standing still, 12 V through 0.5 + 0.3 ohm passes 15 A; a torque that needs 16 A never turns.
  it('does not start a brushed pump on a wire too thin', () => {
    const motor = (current: number) =>
      ({ kind: 'constant-torque', current, armatureResistance: 0.3 }) as const;
    expect(operatingVoltage(12, 0.5, motor(14.9)).status).toBe('runs');
    expect(operatingVoltage(12, 0.5, motor(16))).toEqual({
      status: 'stopped',
      reason: 'cannot-turn',
    });
  });

  it('a measured straight line through zero is a resistance', () => {
    const points = [0, 6, 15].map((v) => ({ volts: v, current: v / 1.5 }));
    const table = runs(13.8, 0.2, { kind: 'table', points });
    const plain = runs(13.8, 0.2, { kind: 'constant-resistance', resistance: 1.5 });
    expect(table.volts).toBeCloseTo(plain.volts, 12);
  });

  it('a measured falling current gives the upper crossing, or says that the table ends', () => {
    const points = [
      { volts: 4, current: 4 },
      { volts: 8, current: 20 },
      { volts: 14, current: 10 },
    ];
    // By hand, R 0.4: V + 0.4 I is 16, 18 at 8 and 14 V; 5.6 at 4 V: crosses 13.8 once, at 4 + 4 * 8.2/10.4.
    expect(runs(13.8, 0.4, { kind: 'table', points }).volts).toBeCloseTo(4 + (4 * 8.2) / 10.4, 12);
    expect(operatingVoltage(5, 0.4, { kind: 'table', points })).toEqual({
      status: 'stopped',
      reason: 'off-table',
    });
    expect(() => operatingVoltage(20, 0.4, { kind: 'table', points })).toThrow(OutOfRangeError);
  });

  it('refuses a table that does not rise, and NaN', () => {
    const points = [
      { volts: 12, current: 4 },
      { volts: 12, current: 5 },
    ];
    expect(() => operatingVoltage(13, 0.1, { kind: 'table', points })).toThrow(InvalidInputError);
    const motor = { kind: 'constant-power', power: NaN, cutoutVolts: 0 } as const;
    expect(() => operatingVoltage(13, 0.1, motor)).toThrow(OutOfRangeError);
  });
});
