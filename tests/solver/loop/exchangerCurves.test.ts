import { describe, expect, it } from 'vitest';
import {
  axisEnd,
  chargeByAirFlow,
  chargeCooling,
  frontAtSpeed,
  frontByFaceVelocity,
  frontByLiquidFlow,
  frontWithoutLiquidResistance,
} from '$lib/solver/loop/exchangerCurves';
import { frontChanged, frontEven } from '$lib/solver/loop/frontWhatIf';
import { prepareLoop } from '$lib/solver/loop/prepare';
import { steady } from '$lib/solver/loop/steady';
import { exampleLoop } from './example';

const prepared = prepareLoop(exampleLoop);
const s = steady(prepared, 'cruise');

/** Rising, and bending down: more of a stream never carries less, and each step brings less. */
function expectDiminishing(points: readonly (readonly [number, number])[]) {
  const slopes = points.slice(1).map(([x, y], i) => (y - points[i]![1]) / (x - points[i]![0]));
  for (const slope of slopes) expect(slope).toBeGreaterThan(0);
  for (let i = 1; i < slopes.length; i++) {
    expect(slopes[i]!).toBeLessThanOrEqual(slopes[i - 1]! * (1 + 1e-6));
  }
}

describe('front exchanger', () => {
  it('against face velocity: nothing without air, then less and less per step', () => {
    const points = frontByFaceVelocity(prepared, s, 8);
    expect(points[0]).toEqual([0, 0]);
    expect(points.at(-1)![0]).toBe(8);
    expectDiminishing(points);
  });
  it('against face velocity: passes through the point of even and fresh air', () => {
    const v = s.air.meanFaceVelocity;
    const [x, y] = frontByFaceVelocity(prepared, s, v).at(-1)!;
    expect(x).toBe(v);
    expect(y / frontEven(prepared, s).conductance).toBeCloseTo(1, 12);
  });
  it('at the speed of the duty: the state of the solution, not above the curve', () => {
    const at = frontAtSpeed(prepared, s, exampleLoop.duties.cruise.vehicleSpeed);
    expect(at.conductance / frontChanged(prepared, s).conductance).toBeCloseTo(1, 12);
    expect(at.faceVelocity).toBe(s.air.meanFaceVelocity);
    expect(at.conductance).toBeLessThanOrEqual(frontEven(prepared, s).conductance);
  });
  it('against liquid flow: less and less per step, below what the air can take', () => {
    const points = frontByLiquidFlow(prepared, s, 1e-3);
    expect(points[0]).toEqual([0, 0]);
    expectDiminishing(points);
    const most = frontWithoutLiquidResistance(prepared, s);
    for (const [, G] of points) expect(G).toBeLessThan(most);
    // A thousand times the flow leaves the liquid no resistance worth the name.
    const flooded = frontChanged(prepared, s, { flow: 1e4 }).conductance;
    expect(flooded / most).toBeGreaterThan(0.95);
    expect(flooded / most).toBeLessThan(1);
  });
});

describe('charge cooler', () => {
  it('cools the charge by its share of the way, whichever stream is smaller', () => {
    for (const duty of ['traffic', 'cruise', 'pull'] as const) {
      const core = steady(prepared, duty).chargeCooler!;
      const share = (core.airIn - core.airOut) / (core.airIn - core.liquidIn);
      expect(chargeCooling(core) / share).toBeCloseTo(1, 9);
    }
    // Less liquid than air: half of the liquid's possible rise is a quarter of the charge's.
    const state = { ...s.chargeCooler!, effectiveness: 0.5, C_air: 400, C_liquid: 200 };
    expect(chargeCooling(state)).toBe(0.25);
  });
  it('does less of it the more air comes, and nearly all of it for a breath', () => {
    const points = chargeByAirFlow(prepared, s, 0.6);
    expect(points[0]![1]).toBeGreaterThan(0.99);
    for (let i = 1; i < points.length; i++) {
      expect(points[i]![1]).toBeLessThanOrEqual(points[i - 1]![1]);
    }
  });
  it('passes through the duty itself', () => {
    const { massFlow } = s.charge!;
    const [x, y] = chargeByAirFlow(prepared, s, massFlow).at(-1)!;
    expect(x).toBe(massFlow);
    expect(y).toBeCloseTo(chargeCooling(s.chargeCooler!), 12);
  });
});

it('an axis ends beyond what it shows', () => {
  expect(axisEnd([1, 3], 2)).toBeGreaterThan(3);
  expect(axisEnd([], 2)).toBeGreaterThan(2);
});
