import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { coolantProperties } from '$lib/solver/fluids/coolant';
import { saturationTemperatureWater } from '$lib/solver/fluids/saturation';
import { prepareLoop } from '$lib/solver/loop/prepare';
import { steady } from '$lib/solver/loop/steady';
import type { Loop } from '$lib/solver/loop/types';
import {
  operatingPath,
  pathPoint,
  pathThrough,
  temperatureOfFirstLoss,
} from '$lib/solver/suction/path';
import { inletPressure, levelAboveEye } from '$lib/solver/suction/inlet';
import { ratingNotes } from '$lib/solver/suction/notes';
import { InvalidInputError, OutOfRangeError } from '$lib/solver/errors';
import { arbitraryLoop } from '../loop/arbitrary';
import { exampleLoop } from '../hydraulics/exampleLoop';

const tank = (change: Partial<Loop['reservoir']>, loop = exampleLoop): Loop => ({
  ...loop,
  reservoir: { ...loop.reservoir, ...change },
});
const first = (loop: Loop) => temperatureOfFirstLoss(prepareLoop(loop));
const warmest = (loop: Loop): number => {
  const loss = first(loop);
  if (loss.kind !== 'at') throw new Error(loss.kind);
  return loss.point.temperature;
};

describe('temperature of the first loss', () => {
  it('there the margin is used up and, counted, 3 % of the head are gone', () => {
    const counted: Loop = {
      ...exampleLoop,
      pump: { ...exampleLoop.pump, cavitation: 'counted' },
    };
    for (const loop of [exampleLoop, counted]) {
      const loss = first(loop);
      expect(loss.kind).toBe('at');
      if (loss.kind !== 'at') return;
      expect(Math.abs(loss.point.margin)).toBeLessThan(1e-6);
      expect(loss.point.headLeft).toBeCloseTo(0.97, 6);
    }
  });
  /**
   * Source: worked examples in tests/reference/values/npsh-available.json (o10, o11), by the saturation
   * equation: vapour pressure at zero margin 65947.51013 Pa at 361.5197069 K, and 60267.6287 Pa at
   * 359.1900086 K. Here the loop is bent to meet the same balance: no suction loss, so that
   * p_v = p_a + ρ g (z − NPSHr), the density being the liquid's own.
   */
  it('water without a suction loss: the saturation equation by hand', () => {
    const plain: Loop = {
      ...exampleLoop,
      coolant: { kind: 'water', massFraction: 0 },
      site: { ...exampleLoop.site, altitude: 0 },
      pump: { ...exampleLoop.pump, npshRequired: 4 },
      hoses: {
        ...exampleLoop.hoses,
        suction: {
          ...exampleLoop.hoses.suction,
          bore: 0.5,
          length: 0,
          bends: 0,
          otherK: 0,
          fittingBore: 0,
        },
      },
    };
    const T = warmest(plain);
    const { rho } = coolantProperties(plain.coolant, T);
    const p_v = 101325 + rho * 9.80665 * (plain.reservoir.levelAbovePump - 4);
    expect(T).toBeCloseTo(saturationTemperatureWater(p_v), 6);
  });
  it('a cap, a higher tank and the sea move it up; a longer hose and a thirstier pump down', () => {
    const T = warmest(exampleLoop);
    const { suction } = exampleLoop.hoses;
    expect(warmest(tank({ capGauge: 3e4 }))).toBeGreaterThan(T);
    expect(warmest(tank({ levelAbovePump: 0.6 }))).toBeGreaterThan(T);
    expect(
      warmest({
        ...exampleLoop,
        hoses: { ...exampleLoop.hoses, suction: { ...suction, length: 4 } },
      }),
    ).toBeLessThan(T);
    expect(
      warmest({ ...exampleLoop, pump: { ...exampleLoop.pump, npshRequired: 3 } }),
    ).toBeLessThan(T);
  });
  it('says so where it never comes, where it always is, and where nothing flows', () => {
    // Under four bar the boiling point lies beyond 120 °C, to which the liquid is described.
    expect(first(tank({ capGauge: 4e5 }))).toMatchObject({ kind: 'never', upTo: 393.15 });
    expect(first(tank({ levelAbovePump: -20 }))).toEqual({ kind: 'always' });
    expect(first({ ...exampleLoop, pump: { ...exampleLoop.pump, volts: 0 } })).toEqual({
      kind: 'no-flow',
    });
  });
  it('every valid loop has an answer, and below that temperature a margin', () => {
    fc.assert(
      fc.property(arbitraryLoop, (loop) => {
        const prepared = prepareLoop(loop);
        const loss = temperatureOfFirstLoss(prepared);
        if (loss.kind !== 'at') return;
        expect(loss.point.temperature).toBeGreaterThanOrEqual(prepared.coldest);
        expect(loss.point.temperature).toBeLessThanOrEqual(prepared.hottest);
        expect(pathPoint(prepared, loss.point.temperature - 0.5).margin).toBeGreaterThan(-1e-6);
        expect(pathPoint(prepared, loss.point.temperature + 0.5).margin).toBeLessThan(1e-6);
      }),
      { numRuns: 60 },
    );
  });
});

describe('the path', () => {
  it('at the balance it is the operating point', () => {
    const s = steady(exampleLoop, 'cruise');
    const [point] = operatingPath(prepareLoop(exampleLoop), [s.liquid.temperature]);
    expect(point!.flow).toBe(s.operating.flow);
    expect(point!.margin).toBeCloseTo(s.margins.suction, 12);
  });
});

it('the path turns at the first loss: that point is put in, in order', () => {
  const prepared = prepareLoop(exampleLoop);
  const loss = temperatureOfFirstLoss(prepared);
  const path = pathThrough(prepared, [300, 340, 379], loss);
  const T = path.map(({ temperature }) => temperature);
  expect(T).toEqual([...T].sort((a, b) => a - b));
  expect(T).toHaveLength(4);
  expect(loss.kind === 'at' && T.includes(loss.point.temperature)).toBe(true);
  expect(pathThrough(prepared, [300], { kind: 'always' })).toHaveLength(1);
});

describe('the inlet', () => {
  const eye = (inletFaces: 'level' | 'up' | 'down') =>
    levelAboveEye({
      reservoir: exampleLoop.reservoir,
      pump: { ...exampleLoop.pump, inletFaces, eyeDepth: 0.04 },
    });
  // Geometry: the eye of an inlet that faces up lies below the port, so more liquid stands above it.
  it('facing up it gains its depth, facing down it loses it', () => {
    expect(eye('level')).toBe(0.15);
    expect(eye('up')).toBeCloseTo(0.19, 12);
    expect(eye('down')).toBeCloseTo(0.11, 12);
    expect(levelAboveEye(exampleLoop)).toBe(0.15);
  });
  it('the depth is worth itself in suction head', () => {
    const facing = (inletFaces: 'up' | 'down') =>
      pathPoint(
        prepareLoop({ ...exampleLoop, pump: { ...exampleLoop.pump, inletFaces, eyeDepth: 0.04 } }),
        330,
      ).available;
    expect(facing('up') - facing('down')).toBeCloseTo(0.08, 12);
  });
  it('refuses a depth below nothing', () =>
    expect(() =>
      levelAboveEye({ ...exampleLoop, pump: { ...exampleLoop.pump, eyeDepth: -1 } }),
    ).toThrow(InvalidInputError));
  const side = { p_ambient: 101325, p_tank_gauge: 0, rho: 1000, z: 0, h_suction: 5 };
  it('its pressure: hydrostatics less the loss', () =>
    expect(inletPressure(side)).toBeCloseTo(101325 - 5 * 9806.65, 6));
  it('refuses a pressure below absolute zero', () =>
    expect(() => inletPressure({ ...side, h_suction: 11 })).toThrow(OutOfRangeError));
});

describe('the tank', () => {
  it('a cap that opens above its rating is told; no rating, nothing to tell', () => {
    const codes = (change: Partial<Loop['reservoir']>) =>
      ratingNotes({ ...exampleLoop.reservoir, ...change }).map(({ code }) => code);
    expect(codes({ capGauge: 1.1e5, ratedGauge: 1e5 })).toEqual(['reservoir.cap-above-rating']);
    expect(codes({ capGauge: 1e5, ratedGauge: 1e5 })).toEqual([]);
    expect(codes({ capGauge: 1e5 })).toEqual([]);
  });
});
