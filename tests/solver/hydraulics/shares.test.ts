import { expect, it } from 'vitest';
import { coolantProperties } from '../../../src/lib/solver/fluids/coolant';
import { hydraulicModel } from '../../../src/lib/solver/hydraulics/operatingPoint';
import {
  fractionOfHead,
  headOfRuns,
  headSum,
  largestShare,
  runShares,
  worstRun,
} from '../../../src/lib/solver/hydraulics/shares';
import { exampleLoop, halfAndHalf } from './exampleLoop';

const liquid = coolantProperties(halfAndHalf, 320);
const point = hydraulicModel(exampleLoop).operatingPoint(liquid, 320);

// A closed loop lifts nothing for good: what the pump gives, the parts take.
it('all heads add up to the head of the pump, all fractions to one', () => {
  expect(headSum(point) / point.head).toBeCloseTo(1, 9);
  const all = point.shares.reduce((sum, { head }) => sum + fractionOfHead(head, point), 0);
  expect(all).toBeCloseTo(1, 12);
});

it('finds the largest of all parts and of the runs', () => {
  const most = Math.max(...point.shares.map((s) => s.head));
  expect(largestShare(point).head).toBe(most);
  const runs = runShares(point);
  expect(runs.map((r) => r.part)).toEqual(['suction', 'delivery', 'transfer', 'back']);
  expect(worstRun(point).head).toBe(Math.max(...runs.map((r) => r.head)));
});

it('the runs are all but the two cores', () => {
  const cores = point.shares.filter((s) => s.velocity === null);
  expect(cores).toHaveLength(2);
  expect(headOfRuns(point) + headSum({ shares: cores })).toBeCloseTo(headSum(point), 12);
});

it('a standing loop asks nothing of anyone', () => {
  const still = hydraulicModel({
    ...exampleLoop,
    pump: { ...exampleLoop.pump, volts: 0 },
  }).operatingPoint(liquid, 320);
  expect(fractionOfHead(still.shares[0]!.head, still)).toBe(0);
});
