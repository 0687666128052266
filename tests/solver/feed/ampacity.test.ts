import { describe, expect, it } from 'vitest';
import { OutOfRangeError } from '$lib/solver/errors';
import { ampacity, ampacityFactor, fuseProtectsWire } from '$lib/solver/feed/ampacity';
import { wireTemperature, STILL_AIR_LOSS } from '$lib/solver/feed/conductorHeat';

const awg = (n: number) => ({ by: 'awg', awg: n }) as const;

describe('ampacity', () => {
  // Source: ABYC E-11 as reprinted by a seller of cable: 105 °C wire, column "inside engine spaces" (50 °C).
  // That column is the 30 °C one times 0.85, in whole amperes; the law has 0.856: 2 % covers both roundings.
  it.each([
    [18, 17],
    [16, 21],
    [14, 30],
    [12, 38],
    [10, 51],
    [8, 68],
    [6, 102],
    [4, 136],
    [2, 178],
    [0, 242],
    [-3, 378],
  ])('%d gauge in a hot engine space carries %d A', (n, amps) => {
    expect(ampacity(awg(n), 323.15) / amps).toBeGreaterThan(0.98);
    expect(ampacity(awg(n), 323.15) / amps).toBeLessThan(1.02);
  });

  it('is never above the table in the cold', () => {
    expect(ampacityFactor({ ambient: 260 })).toBe(1);
  });

  it('gives a metric wire the current of the gauge below it', () => {
    expect(ampacity({ by: 'area', area: 2.5e-6 }, 303.15)).toBe(35); // 14 gauge is 2.08, 12 is 3.31
    expect(() => ampacity({ by: 'area', area: 0.5e-6 }, 303.15)).toThrow(OutOfRangeError);
  });

  it('judges a fuse by the wire where it lies', () => {
    expect(fuseProtectsWire(30, awg(14), 303.15)).toEqual({
      protects: true,
      ampacity: 35,
      margin: 5,
    });
    // 85 °C: sqrt(20/75) of 35 A is 18.07 A, so a 20 A fuse no longer protects it.
    const hot = fuseProtectsWire(20, awg(14), 358.15);
    expect(hot.protects).toBe(false);
    expect(hot.ampacity).toBeCloseTo(18.074, 3);
  });
});

describe('temperature of a wire', () => {
  // Source: ABYC E-11 as above allows these currents at 30 °C for 105 °C: the heat balance with the stated
  // loss and its ±40 % must have that rise of 75 K between its two ends. Outside diameters are typical of
  // thin-wall automotive wire, from memory.
  it.each([
    [16, 25, 2.7e-3],
    [14, 35, 3.1e-3],
    [12, 45, 3.6e-3],
    [10, 60, 4.4e-3],
  ])('%d gauge at %d A', (n, current, outsideDiameter) => {
    const at = (loss: number) =>
      wireTemperature({ size: awg(n), current, outsideDiameter, ambient: 303.15, loss });
    const warm = at(STILL_AIR_LOSS * 1.4);
    const hot = at(STILL_AIR_LOSS * 0.6);
    if (!warm.settles) throw new Error('should settle with a good loss');
    expect(warm.temperature).toBeLessThan(378.15);
    if (hot.settles) expect(hot.temperature).toBeGreaterThan(378.15);
  });

  it('closes the heat balance where it settles', () => {
    const wire = { size: awg(14), current: 18, outsideDiameter: 3.1e-3, ambient: 333.15, loss: 15 };
    const found = wireTemperature(wire);
    if (!found.settles) throw new Error('should settle');
    const T = found.temperature;
    // 1/58 ohm·mm²/m, 2.0809 mm²: written out here, not taken from the code.
    const made = 18 ** 2 * (1 / 58 / 2.080906) * (1 + 0.00393 * (T - 293.15));
    const lost = 15 * Math.PI * 3.1e-3 * (T - 333.15);
    expect(Math.abs(made / lost - 1)).toBeLessThan(1e-6);
  });

  it('says when it runs away', () => {
    const wire = { size: awg(18), current: 100, outsideDiameter: 2.4e-3, ambient: 303.15 };
    expect(wireTemperature(wire)).toEqual({ settles: false });
  });

  it('stays at ambient without current', () => {
    const wire = { size: awg(18), current: 0, outsideDiameter: 2.4e-3, ambient: 303.15 };
    expect(wireTemperature(wire)).toEqual({ settles: true, temperature: 303.15 });
  });
});
