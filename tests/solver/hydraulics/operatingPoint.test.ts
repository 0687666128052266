import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { coolantProperties } from '../../../src/lib/solver/fluids/coolant';
import { hosePressureDrop } from '../../../src/lib/solver/hydraulics/hose';
import { hydraulicModel } from '../../../src/lib/solver/hydraulics/operatingPoint';
import { InvalidInputError, OutOfRangeError } from '../../../src/lib/solver/errors';
import type { Hose, Loop, Pump } from '../../../src/lib/solver/loop/types';
import {
  exampleLoop,
  fahrenheit,
  foot,
  gpm,
  halfAndHalf,
  inch,
  parabola,
  psi,
} from './exampleLoop';

const T = fahrenheit(120);
const liquid = coolantProperties(halfAndHalf, T);
const none: Hose = {
  bore: 0.05,
  length: 0,
  roughness: 0,
  bends: 0,
  bendK: 0,
  otherK: 0,
  fittingBore: 0,
};
/** 20 ft with eight bends of K 0.75, entrance 0.5, exit 1.0; bore in sixteenths of an inch. */
const twentyFeet = (dash: number): Hose => ({
  bore: (dash / 16) * inch,
  length: 20 * foot,
  roughness: 1.5e-6,
  bends: 8,
  bendK: 0.75,
  otherK: 1.5,
  fittingBore: 0,
});
const within = (got: number, want: number, rel: number) =>
  expect(Math.abs(got / want - 1), `${got} against ${want}`).toBeLessThanOrEqual(rel);

// Source: independent computation in Python, trade question "is −10 enough?"; printed to 0.01 psi.
// Tolerance 2 %, as it says for results that rest on liquid properties.
describe('20 ft of hose at 8 US gal/min, 50/50 at 120 °F', () => {
  it.each([
    [8, 22.99, 28900],
    [10, 8.51, 23100],
    [12, 3.8, 19200],
    [16, 1.08, 14400],
  ])('−%d', (dash, loss, Re) => {
    const drop = hosePressureDrop(twentyFeet(dash), 8 * gpm, liquid);
    within(drop.pressureDrop / psi, loss, 0.02);
    within(drop.reynolds, Re, 0.02);
  });
  it('−12 with water, and with cold 50/50', () => {
    const water = coolantProperties({ kind: 'water', massFraction: 0 }, T);
    const cold = coolantProperties(halfAndHalf, fahrenheit(60));
    within(hosePressureDrop(twentyFeet(12), 8 * gpm, water).pressureDrop / psi, 3.15, 0.02);
    within(hosePressureDrop(twentyFeet(12), 8 * gpm, cold).pressureDrop / psi, 4.43, 0.02);
  });
});

const withPump = (dash: number, H0: number, Qm: number, change: Partial<Pump> = {}): Loop => ({
  ...exampleLoop,
  hoses: { suction: none, delivery: twentyFeet(dash), transfer: none, back: none },
  pump: { ...exampleLoop.pump, curve: parabola(H0 * foot, Qm * gpm), ...change },
});

// Source: independent computation in Python, trade question "what will the pump really flow?":
// H = H0 (V/13.5)² − H0 (Q/Qm)², hose as above, cores 3 and 1.5 psi at 8 gal/min, exponent 1.8.
describe('what four pumps really flow', () => {
  const pumps = [
    [6.5, 5.8],
    [16, 11],
    [28, 26],
    [50, 42],
  ] as const;
  it.each([
    [12, [3.53, 6.1, 9.37, 13.11]],
    [10, [3.0, 5.11, 7.55, 10.47]],
    [16, [3.97, 6.98, 11.25, 15.93]],
  ])('through −%d', (dash, flows) => {
    pumps.forEach(([H0, Qm], i) => {
      const flow = hydraulicModel(withPump(dash, H0, Qm)).flowAt(liquid) / gpm;
      within(flow, flows[i]!, 0.02);
    });
  });
  it.each([
    [12, 5.38],
    [11, 4.9],
    [9, 3.96],
  ])('the second of them at %d V', (volts, flow) => {
    within(hydraulicModel(withPump(12, 16, 11, { volts })).flowAt(liquid) / gpm, flow, 0.02);
  });
  it.each([
    ['two-in-series', 7.62],
    ['two-in-parallel', 7.03],
  ] as const)('%s', (arrangement, flow) => {
    within(hydraulicModel(withPump(12, 16, 11, { arrangement })).flowAt(liquid) / gpm, flow, 0.02);
  });
});

describe('the operating point', () => {
  const model = hydraulicModel(exampleLoop);
  const op = model.operatingPoint(liquid, T);

  it('pump and system meet, and the parts add up to the head', () => {
    within(op.head, model.systemHead(op.flow, liquid), 1e-13);
    within(
      op.shares.reduce((sum, s) => sum + s.head, 0),
      op.head,
      1e-13,
    );
    expect(op.flow).toBe(model.flowAt(liquid));
  });
  it('names the parts in order of flow', () =>
    expect(op.shares.map((s) => s.part)).toEqual([
      'suction',
      'delivery',
      'chargeCooler',
      'transfer',
      'frontExchanger',
      'back',
    ]));
  it('is stable: the system rises where the pump falls', () => {
    expect(op.pumpSlope).toBeLessThan(0);
    expect(op.systemSlope).toBeGreaterThan(0);
    const h = 1e-3 * op.flow;
    const chord =
      (model.systemHead(op.flow + h, liquid) - model.systemHead(op.flow - h, liquid)) / (2 * h);
    within(op.systemSlope, chord, 1e-4);
  });
  it('has nothing to tell about a loop inside its data', () => expect(op.notes).toEqual([]));
  it('colder coolant flows less', () => {
    const cold = coolantProperties(halfAndHalf, fahrenheit(20));
    expect(model.flowAt(cold)).toBeLessThan(op.flow);
  });
});

describe('any pump on any loop', () => {
  const anyHose = fc.record({
    bore: fc.double({ min: 0.004, max: 0.05, noNaN: true }),
    length: fc.double({ min: 0, max: 30, noNaN: true }),
    roughness: fc.double({ min: 0, max: 1e-4, noNaN: true }),
    bends: fc.integer({ min: 0, max: 20 }),
    bendK: fc.double({ min: 0, max: 3, noNaN: true }),
    otherK: fc.double({ min: 0, max: 50, noNaN: true }),
    fittingBore: fc.oneof(fc.constant(0), fc.double({ min: 0.002, max: 0.05, noNaN: true })),
  });
  const anyCurve = fc
    .uniqueArray(fc.double({ min: 1e-3, max: 40, noNaN: true }), { minLength: 2, maxLength: 8 })
    .map((heads) => [...heads].sort((a, b) => b - a).map((head, i) => ({ flow: i * 3e-4, head })));
  const anyLoop = fc.record({
    hoses: fc.record({ suction: anyHose, delivery: anyHose, transfer: anyHose, back: anyHose }),
    curve: anyCurve,
    volts: fc.double({ min: 0.01, max: 18, noNaN: true }),
    arrangement: fc.constantFrom(
      'one' as const,
      'two-in-series' as const,
      'two-in-parallel' as const,
    ),
    fahrenheit: fc.double({ min: -20, max: 240, noNaN: true }),
  });
  it('settles, with the balance closed to the last digits', () => {
    fc.assert(
      fc.property(anyLoop, ({ hoses, curve, volts, arrangement, fahrenheit: t }) => {
        const loop = {
          ...exampleLoop,
          hoses,
          pump: { ...exampleLoop.pump, curve, volts, arrangement },
        };
        const model = hydraulicModel(loop);
        const now = coolantProperties(halfAndHalf, fahrenheit(t));
        const flow = model.flowAt(now);
        expect(flow).toBeGreaterThan(0);
        expect(flow).toBeLessThanOrEqual(model.pump.runOut);
        const rest = model.pump.head(flow) - model.systemHead(flow, now);
        // Near a kink a last digit of the flow is worth slope × rounding of head.
        const slope = Math.abs(model.pump.slope(flow)) + model.systemHead(2 * flow, now) / flow;
        expect(Math.abs(rest)).toBeLessThan(1e-13 * model.pump.shutOff + 1e-14 * slope * flow);
      }),
      { numRuns: 300 },
    );
  });
  it('more volts, more flow', () => {
    fc.assert(
      fc.property(anyLoop, ({ hoses, curve, volts }) => {
        const at = (v: number) =>
          hydraulicModel({
            ...exampleLoop,
            hoses,
            pump: { ...exampleLoop.pump, curve, volts: v },
          }).flowAt(liquid);
        expect(at(volts * 1.05)).toBeGreaterThan(at(volts));
      }),
    );
  });
});

describe('edges', () => {
  it('a stopped pump: no flow, no shares, the static suction head', () => {
    const model = hydraulicModel({ ...exampleLoop, pump: { ...exampleLoop.pump, volts: 0 } });
    const op = model.operatingPoint(liquid, T);
    expect([op.flow, op.head, op.pumpSlope]).toEqual([0, 0, 0]);
    expect(op.shares.every((s) => s.pressureDrop === 0)).toBe(true);
    expect(op.notes.map((n) => n.code)).toContain('pump.stopped');
    expect(op.npshAvailable).toBeGreaterThan(5);
  });
  it('beyond the last point of a short curve the flow is told', () => {
    const curve = parabola(16 * foot, 11 * gpm).slice(0, 10);
    const op = hydraulicModel({
      ...exampleLoop,
      pump: { ...exampleLoop.pump, curve },
    }).operatingPoint(liquid, T);
    expect(op.notes.map((n) => n.code)).toContain('pump.beyond-curve');
  });
  it('a vented reservoir too hot and high: the suction head runs short', () => {
    const hot = fahrenheit(215);
    const model = hydraulicModel({ ...exampleLoop, site: { ...exampleLoop.site, altitude: 1524 } });
    const op = model.operatingPoint(coolantProperties(halfAndHalf, hot), hot);
    expect(op.npshAvailable).toBeLessThan(0);
    expect(op.notes.map((n) => n.code)).toContain('suction.short');
  });
  it('a cap helps, and the note says on what it rests', () => {
    const capped = { ...exampleLoop, reservoir: { ...exampleLoop.reservoir, capGauge: 16 * psi } };
    const op = hydraulicModel(capped).operatingPoint(liquid, T);
    const vented = hydraulicModel(exampleLoop).operatingPoint(liquid, T);
    within(op.npshAvailable - vented.npshAvailable, (16 * psi) / (liquid.rho * 9.80665), 1e-12);
    expect(op.notes.map((n) => n.code)).toEqual(['suction.cap-pressure']);
  });
  it('refuses what cannot be', () => {
    expect(() => hydraulicModel(exampleLoop).flowAt({ rho: NaN, mu: 1e-3 })).toThrow(
      OutOfRangeError,
    );
    const noPoints = { ...exampleLoop.chargeCooler, liquidLoss: { points: [], exponent: 2 } };
    expect(() => hydraulicModel({ ...exampleLoop, chargeCooler: noPoints })).toThrow(
      InvalidInputError,
    );
  });
});
