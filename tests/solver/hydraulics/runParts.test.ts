import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { g, headOf } from '../../../src/lib/solver/hydraulics/affinity';
import { fittingK, hosePressureDrop } from '../../../src/lib/solver/hydraulics/hose';
import * as formulas from '../../../src/lib/solver/hydraulics/runFormulas';
import { HOSE_VELOCITY_MAX, runParts } from '../../../src/lib/solver/hydraulics/runParts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const given = fc.record({
  bore: between(0.005, 0.05),
  length: between(0, 20),
  roughness: between(0, 1e-4),
  bends: fc.integer({ min: 0, max: 12 }),
  bendK: between(0, 2),
  otherK: between(0, 10),
  neck: between(0.3, 1),
  flow: between(1e-6, 3e-3),
  rho: between(950, 1120),
  mu: between(2e-4, 2e-2),
});

it('the parts of a run add up to its head, and so does its line', () => {
  fc.assert(
    fc.property(given, ({ neck, flow, rho, mu, ...run }) => {
      const hose = { ...run, fittingBore: neck * run.bore };
      const drop = hosePressureDrop(hose, flow, { rho, mu });
      const head = headOf({ dp: drop.pressureDrop, rho });
      const { friction, bends, other, fittings } = runParts(hose, drop);
      const close = (h: number) => expect(Math.abs(h / head - 1)).toBeLessThanOrEqual(1e-12);
      close(friction + bends + other + fittings);
      const V = formulas.velocityInBore.value({ Q: flow, D: hose.bore });
      close(
        formulas.runHead.value({
          f: drop.friction!,
          L: hose.length,
          D: hose.bore,
          n: hose.bends,
          K_b: hose.bendK,
          K_o: hose.otherK,
          K_f: fittingK(hose),
          V,
        }),
      );
    }),
  );
});

// Darcy-Weisbach by hand: bends 2 × 0.75 at 2 m/s lose 1.5 × 4/(2 g).
it('a part is its loss coefficient times the velocity head', () => {
  const hose = {
    bore: 0.02,
    length: 0,
    roughness: 0,
    bends: 2,
    bendK: 0.75,
    otherK: 1,
    fittingBore: 0,
  };
  const parts = runParts(hose, { velocity: 2, friction: 0.02 });
  expect(parts.bends).toBeCloseTo(3 / g, 12);
  expect(parts.other).toBeCloseTo(2 / g, 12);
  expect(parts.fittings).toBe(0);
  expect(parts.friction).toBe(0);
});

it('without flow nothing is lost', () => {
  const hose = {
    bore: 0.02,
    length: 3,
    roughness: 0,
    bends: 2,
    bendK: 0.75,
    otherK: 1,
    fittingBore: 0.015,
  };
  const parts = runParts(hose, { velocity: 0, friction: null });
  expect(Object.values(parts)).toEqual([0, 0, 0, 0]);
});

// Common practice, no source: suction at most 4 ft/s, discharge at most 7 ft/s (1 ft = 0.3048 m).
it('velocities of good practice', () => {
  expect(HOSE_VELOCITY_MAX.suction).toBeCloseTo(1.2192, 10);
  expect(HOSE_VELOCITY_MAX.back).toBeCloseTo(2.1336, 10);
});

describe('what the work comes to', () => {
  // Trade figure, published pump: 13 W in, 15 L/min at 0.1 bar is 2.5 W, hence 19 %.
  it('wire to water', () => {
    const rho = 1000;
    const H = 1e4 / (rho * 9.80665);
    expect(formulas.wireToWater.value({ rho, Q: 15e-3 / 60, H, P: 13 })).toBeCloseTo(0.19, 2);
  });
  // Worked apart from the project: 21.1 kW at 8 gal/min of water warms it 18.2 °F (cp 4180, 990 kg/m³).
  it('rise in a pass', () => {
    const flow = { rho: 990, Q: 8 * 6.30901964e-5, c_p: 4180 };
    expect(formulas.passRise.value({ Q_c: 21.1e3, Q_e: 0, ...flow }) * 1.8).toBeCloseTo(18.2, 1);
  });
  it('the loop at another flow is what its function says', () =>
    expect(formulas.systemHeadAt((q) => 3 * q).value({ Q: 2 })).toBe(6));
});
