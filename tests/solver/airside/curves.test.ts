import { describe, expect, it } from 'vitest';
import {
  askedOfFans,
  faceSweep,
  faceVelocityAtRatedVolts,
  faceVelocityWithoutFans,
  fanHandover,
  freeAirShare,
  standingFlow,
  fanSetCurve,
  fanSetPoint,
  freeDeliveryOfAll,
  zoneSweep,
} from '../../../src/lib/solver/airside/curves';
import { airModel, airSide } from '../../../src/lib/solver/airside/face';
import * as formulas from '../../../src/lib/solver/airside/formulas';
import { fanModel } from '../../../src/lib/solver/airside/fan';
import { airCp } from '../../../src/lib/solver/air/air';
import type { AirPath, Fans, Loop } from '../../../src/lib/solver/loop/types';
import { exampleLoop, inch } from '../hydraulics/exampleLoop';

const cfm = 4.719474432e-4;
const inchOfWater = 249.08891;
const loopWith = (fans: Partial<Fans> = {}, airPath: Partial<AirPath> = {}): Loop => ({
  ...exampleLoop,
  // Standard air, so that neither fan nor core is corrected.
  site: { ...exampleLoop.site, altitude: 0, ambientTemperature: 101325 / (287.05287 * 1.2) },
  fans: {
    ...exampleLoop.fans,
    curve: [
      { flow: 0, pressure: 0.6 * inchOfWater },
      { flow: 650 * cfm, pressure: 0 },
    ],
    ...fans,
  },
  airPath: { ...exampleLoop.airPath, ...airPath },
});

// Source: independent computation in Python of the trade question "what do two 10 in fans really pull?":
// a 2.75 in core of 3.0 v + 1.7 v² Pa per inch: 914 cfm (70 % of free air) at 0.178 in wg, 2.32 m/s.
describe('two fans standing still', () => {
  const loop = loopWith();
  const air = airSide(loop, 0);
  it('the point on both curves', () => {
    const [flow, pressure] = fanSetPoint(loop, air);
    expect(flow / cfm / 914).toBeCloseTo(1, 2);
    expect(pressure / inchOfWater).toBeCloseTo(0.178, 3);
    expect(askedOfFans(loop, 0, flow).at(-1)![1] / pressure).toBeCloseTo(1, 9);
  });
  it('the fans are drawn from shut-off to free delivery, the stack a fifth above shut-off', () => {
    const fans = fanSetCurve(loop, 0);
    expect(fans[0]![1] / inchOfWater).toBeCloseTo(0.6, 9);
    expect(fans.at(-1)![0] / cfm).toBeCloseTo(1300, 6);
    expect(fans.at(-1)![1]).toBeCloseTo(0, 6);
    expect(askedOfFans(loop, 0, 5).at(-1)![1] / inchOfWater).toBeCloseTo(0.72, 9);
  });
  it('driven fans are drawn to the flow that the wind drives through them', () => {
    const fast = airSide(loop, 60);
    const [flow, pressure] = fanSetPoint(loop, fast);
    expect(fanSetCurve(loop, 60).at(-1)![0]).toBeCloseTo(flow, 12);
    expect(fanSetCurve(loop, 60).at(-1)![1]).toBeCloseTo(pressure, 6);
  });
  it('70 % of free air', () => {
    const V_0 = freeDeliveryOfAll(loop);
    expect(V_0 / cfm).toBeCloseTo(1300, 6);
    expect(formulas.freeDelivery.value({ n: 2, s: 1, q_r: 650 * cfm })).toBeCloseTo(V_0, 12);
    const A = 24 * inch * 12 * inch;
    const V = formulas.zoneAirFlow.value({ u: air.zones[0]!.faceVelocity, A, x: 1 });
    expect(formulas.freeAirShare.value({ V, V_0 })).toBeCloseTo(0.7, 2);
  });
  it('the lines of it agree with the balance, and its share with 70 %', () => {
    const V = standingFlow(loop);
    expect(V / cfm / 914).toBeCloseTo(1, 2);
    expect(freeAirShare(loop)).toBeCloseTo(0.7, 2);
    const fan = fanModel(loop.fans, air.density);
    const adds = formulas.standingFanPressure(fan).value({ s: 1, rho: air.density, V, n: 2 });
    const asked = formulas
      .askedStanding(airModel(loop).resisting)
      .value({ V, A: 24 * 12 * inch * inch, x: 1 });
    expect(adds / asked).toBeCloseTo(1, 9);
  });
  it('standing fans have no share of nothing', () => {
    expect(freeAirShare(loopWith({ volts: 0 }))).toBeNull();
    expect(freeAirShare(loopWith({ count: 0 }))).toBeNull();
    expect(standingFlow(loopWith({ count: 0 }))).toBe(0);
  });
  it('the sweep starts there', () => expect(faceSweep(loop, 40).asIs[0]![1]).toBeCloseTo(2.32, 2));
});

describe('from which speed the fans are in the way', () => {
  it('there they neither lift nor hold back', () => {
    for (const coverage of [1, 0.8]) {
      const loop = loopWith({ coverage });
      const { speed, faceVelocity, loss } = fanHandover(loop)!;
      const [zone] = airSide(loop, speed).zones;
      expect(zone!.fanPressure).toBeCloseTo(0, 6);
      expect(zone!.faceVelocity / faceVelocity).toBeCloseTo(1, 8);
      const { density } = airSide(loop, speed);
      const line = formulas.handoverSpeed((u) =>
        Math.abs(u / faceVelocity - 1) < 1e-12 ? loss : NaN,
      );
      const A = 1;
      const V_0 = faceVelocity * coverage;
      const v = line.value({ V_0, A, x: coverage, k: 0.4, rho: density });
      expect(v).toBeCloseTo(speed, 10);
    }
  });
  it('slower they lift, faster they hold back', () => {
    const loop = loopWith();
    const { speed } = fanHandover(loop)!;
    expect(airSide(loop, 0.9 * speed).zones[0]!.fanPressure).toBeGreaterThan(0);
    expect(airSide(loop, 1.1 * speed).zones[0]!.fanPressure).toBeLessThan(0);
  });
  it('is no speed without fans, without volts, without ram pressure', () => {
    expect(fanHandover(loopWith({ count: 0 }))).toBeNull();
    expect(fanHandover(loopWith({ volts: 0 }))).toBeNull();
    expect(fanHandover(loopWith({}, { ramRecovery: 0 }))).toBeNull();
  });
  it('is no speed beyond those the air side answers for', () => {
    expect(fanHandover(loopWith({ coverage: 0.6 }, { ramRecovery: 1e-4 }))).toBeNull();
  });
});

describe('face velocity against vehicle speed', () => {
  const { asIs, standing, without } = faceSweep(loopWith(), 40);
  it('running fans never do worse than standing ones', () =>
    asIs.forEach(([speed, u], i) => {
      expect(standing[i]![0]).toBe(speed);
      expect(u).toBeGreaterThan(standing[i]![1]);
    }));
  // Below the handover the fan adds, above it the empty hole passes more.
  it('crosses the curve without fans at the handover', () => {
    const { speed } = fanHandover(loopWith())!;
    asIs.forEach(([v, u], i) => {
      if (v < 0.98 * speed) expect(u).toBeGreaterThan(without[i]![1]);
      if (v > 1.02 * speed) expect(u).toBeLessThan(without[i]![1]);
    });
    expect(faceVelocityWithoutFans(loopWith(), 40)).toBeCloseTo(without.at(-1)![1], 12);
  });
  it('nothing moves standing still with the fans off', () => expect(standing[0]![1]).toBe(0));
  it('has an open zone only where the shroud leaves some of the face free', () => {
    expect(zoneSweep(loopWith(), 40).open).toBeUndefined();
    const { shrouded, open } = zoneSweep(loopWith({ coverage: 0.7 }), 40);
    expect(open![0]![1]).toBe(0);
    expect(open!.at(-1)![1]).toBeGreaterThan(shrouded!.at(-1)![1]);
  });
  it('low volts cost face velocity', () => {
    const low = loopWith({ volts: 11 });
    expect(faceVelocityAtRatedVolts(low, 0)).toBeCloseTo(asIs[0]![1], 10);
    expect(airSide(low, 0).meanFaceVelocity).toBeLessThan(asIs[0]![1]);
  });
  it('no fans, no curve', () => {
    expect(fanSetCurve(loopWith({ count: 0 }), 0)).toEqual([]);
    expect(freeDeliveryOfAll(loopWith({ count: 0 }))).toBe(0);
  });
});

it('mean velocity, mass flow and capacity rate are those of the solution', () => {
  const loop = loopWith({ coverage: 0.7 });
  const air = airSide(loop, 20);
  const [shrouded, open] = air.zones;
  const u = formulas.meanFaceVelocity.value({
    u_s: shrouded!.faceVelocity,
    u_o: open!.faceVelocity,
    x: 0.7,
  });
  expect(u).toBeCloseTo(air.meanFaceVelocity, 12);
  const A = loop.frontExchanger.width * loop.frontExchanger.height;
  const m_a = formulas.faceMassFlow.value({ rho: air.density, u, A });
  expect(m_a).toBeCloseTo(air.totalMassFlow, 12);
  const cp = airCp(loop.site.ambientTemperature);
  expect(formulas.airCapacityRate.value({ m_a, cp })).toBeCloseTo(m_a * cp, 9);
});

// Trade figure, worked apart: 12 kW through 24 × 12 in at 1.6 m/s warms the air 63 °F (35 K). With a
// quarter of that coming round, the air at the face is r/(1 − r) = 1/3 of it warmer.
it('hot air coming round', () => {
  const C_a = 12e3 / (63 / 1.8);
  const T = formulas.airAtFace.value({ T_a: 300, dT_stack: 5, r: 0.25, Q_f: 12e3, C_a });
  expect(T).toBeCloseTo(300 + 5 + 21 / 1.8, 9);
});
