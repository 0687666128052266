import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { airCp } from '../../../src/lib/solver/air/air';
import { airModel, airSide } from '../../../src/lib/solver/airside/face';
import { facePaths, hottestRise, overlap } from '../../../src/lib/solver/airside/overlap';
import { OutOfRangeError } from '../../../src/lib/solver/errors';
import type { AirPath, Loop } from '../../../src/lib/solver/loop/types';
import { exampleLoop } from '../loop/example';

const close = (got: number, want: number, rel: number) =>
  expect(Math.abs(got - want), `${got} against ${want}`).toBeLessThanOrEqual(rel * Math.abs(want));

const withAir = (airPath: Partial<AirPath>, loop: Loop = exampleLoop): Loop => ({
  ...loop,
  airPath: { ...loop.airPath, ...airPath },
});
/** No fans, the whole face open to the wind behind nothing: the balance is ram against loss. */
const windOnly = (airPath: Partial<AirPath>): Loop => ({
  ...withAir(airPath),
  fans: { ...exampleLoop.fans, count: 0, coverage: 1 },
  frontExchanger: { ...exampleLoop.frontExchanger, airLoss: square(10) },
});
/** b u², Pa, in standard air, by two points. */
const square = (b: number) => ({
  points: [2, 4].map((u) => ({ flow: u, loss: b * u * u })),
  exponent: 2,
});

describe('two paths under one pressure', () => {
  const curve = (a: number, b: number) => ({
    loss: (u: number) => (a + b * u) * u,
    slope: (u: number) => a + 2 * b * u,
    flow: (p: number) => (p === 0 ? 0 : (2 * p) / (a + Math.sqrt(a * a + 4 * b * p))),
  });

  // Worked by hand: core 10 u², other core 30 u², half covered, 40 Pa. Covered: 40 u² = 40, u = 1 m/s.
  // Clear: 10 u² = 40, u = 2 m/s. Mean 1.5 m/s.
  it('the example worked by hand', () => {
    const paths = overlap(curve(0, 10), curve(0, 30), 0.5);
    close(paths.pressure(1), 40, 1e-14);
    close(paths.clear(1), 2, 1e-14);
    close(paths.mean(1), 1.5, 1e-14);
    close(paths.loss(1.5), 40, 1e-12);
    expect(paths.loss(0)).toBe(0);
  });

  it('loss is the inverse of the mean velocity, rises with it, and lies between both cores alone', () => {
    fc.assert(
      fc.property(
        fc.record({
          a: fc.double({ min: 0.1, max: 50, noNaN: true }),
          b: fc.double({ min: 0.1, max: 50, noNaN: true }),
          c: fc.double({ min: 0.1, max: 200, noNaN: true }),
          share: fc.double({ min: 0.01, max: 0.99, noNaN: true }),
          u: fc.double({ min: 0.01, max: 20, noNaN: true }),
        }),
        ({ a, b, c, share, u }) => {
          const core = curve(a, b);
          const paths = overlap(core, curve(0, c), share);
          const p = paths.loss(u);
          expect(p).toBeGreaterThanOrEqual(core.loss(u) * (1 - 1e-9));
          expect(p).toBeLessThanOrEqual((core.loss(u) + c * u * u) * (1 + 1e-9));
          expect(paths.loss(1.01 * u)).toBeGreaterThan(p);
        },
      ),
    );
  });
});

describe('a face partly covered', () => {
  // Worked by hand, wind alone at 10 m/s, 35 % of the stagnation pressure left: losses go with density as
  // the ram pressure does, so it cancels: 0.35 · ½ · 1.2 · 10² = 21 Pa of standard air. Covered:
  // (10 + 30) u² = 21, u = 0.7246 m/s; clear: 10 u² = 21, u = 1.4491 m/s; 60 % covered: mean 1.0144 m/s.
  it('wind alone, worked by hand', () => {
    const loop = windOnly({ stackLoss: square(30), stackShare: 0.6, ramRecovery: 0.35 });
    const air = airSide(loop, 10);
    const [covered, clear] = air.zones[0]!.parts!;
    close(covered.faceVelocity, 0.7246, 1e-4);
    close(clear.faceVelocity, 1.4491, 1e-4);
    close(air.meanFaceVelocity, 1.0144, 1e-4);
    close(covered.coreLoss + covered.stackLoss, air.ramPressure, 1e-12);
    close(clear.coreLoss, air.ramPressure, 1e-12);
  });

  it('covered wholly it is the model without parts; covered nowhere the one without other cores', () => {
    for (const speed of [0, 5, 25, 60]) {
      const { stackShare: _, ...asEver } = withAir({}).airPath;
      const whole = airSide({ ...exampleLoop, airPath: asEver }, speed);
      expect(airSide(withAir({ stackShare: 1 }), speed)).toEqual(whole);
      const bare = airSide(
        withAir({ stackLoss: { points: [], exponent: 2 }, stackHeat: 0 }),
        speed,
      );
      expect(airSide(withAir({ stackShare: 0 }), speed)).toEqual(bare);
    }
  });

  it('nears both of them from within', () => {
    const u = (stackShare: number) => airSide(withAir({ stackShare }), 12).meanFaceVelocity;
    close(u(1 - 1e-9), u(1), 1e-8);
    close(u(1e-9), u(0), 1e-8);
  });

  it('holds back more the more it covers, in wind and behind the fans', () => {
    for (const speed of [0, 12, 40]) {
      const u = [0, 0.2, 0.4, 0.6, 0.8, 1].map(
        (stackShare) => airSide(withAir({ stackShare }), speed).meanFaceVelocity,
      );
      for (let i = 1; i < u.length; i++) expect(u[i]).toBeLessThan(u[i - 1]!);
    }
  });

  it('flows and pressures agree: zones, parts, fans, curve of the whole', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        fc.oneof(fc.constant(0), fc.double({ min: 0.01, max: 60, noNaN: true })),
        (stackShare, speed) => {
          const model = airModel(withAir({ stackShare }));
          const air = model.at(speed);
          for (const zone of air.zones) {
            const [covered, clear] = zone.parts!;
            close(covered.share + clear.share, zone.share, 1e-12);
            close(covered.airMassFlow + clear.airMassFlow, zone.airMassFlow, 1e-12);
            close(covered.coreLoss + covered.stackLoss, clear.coreLoss, 1e-9);
            const driven = air.ramPressure + zone.fanPressure;
            close(covered.coreLoss + covered.stackLoss, driven, 1e-9);
            close(model.resisting(zone.faceVelocity), driven, 1e-8);
          }
          close(
            facePaths(air).reduce((sum, p) => sum + p.airMassFlow, 0),
            air.totalMassFlow,
            1e-12,
          );
        },
      ),
    );
  });

  it('all heat of the other cores goes into the covered air, and none into the clear', () => {
    const loop = withAir({ stackShare: 0.4, stackHeat: 4e3 });
    const air = airSide(loop, 12);
    const cp = airCp(loop.site.ambientTemperature);
    const heat = facePaths(air).reduce((sum, p) => sum + p.airMassFlow * cp * p.rise, 0);
    close(heat, 4e3, 1e-12);
    close(air.stackRise * air.totalMassFlow * cp, 4e3, 1e-12);
    expect(
      facePaths(air)
        .filter(({ covered }) => !covered)
        .map(({ rise }) => rise),
    ).toEqual([0, 0]);
    expect(hottestRise(air)).toBeGreaterThan(2 * air.stackRise);
  });

  it('cores behind hold back as much, and warm only what comes round again', () => {
    const front = airSide(withAir({ stackShare: 0.5, recirculation: 0.2 }), 0);
    const behind = airSide(
      withAir({ stackShare: 0.5, recirculation: 0.2, stackPlace: 'behind' }),
      0,
    );
    expect(behind.meanFaceVelocity).toBe(front.meanFaceVelocity);
    // r / (1 - r) = 0.25 with a fifth coming round.
    close(behind.stackRise, 0.25 * front.stackRise, 1e-12);
    const fast = airSide(withAir({ stackShare: 0.5, stackPlace: 'behind' }), 20);
    expect([fast.recirculation, hottestRise(fast)]).toEqual([0, 0]);
  });

  it('without wind and fans all stands, and says where the heat is', () => {
    const air = airSide(windOnly({ stackLoss: square(30), stackShare: 0.6, stackHeat: 2e3 }), 0);
    expect(air.totalMassFlow).toBe(0);
    expect(hottestRise(air)).toBe(0);
    expect(air.notes.map(({ code }) => code)).toContain('air.still');
  });

  it('refuses a share that is none', () => {
    expect(() => airSide(withAir({ stackShare: 1.2 }), 10)).toThrow(OutOfRangeError);
    expect(() => airSide(withAir({ stackShare: NaN }), 10)).toThrow(OutOfRangeError);
  });
});
