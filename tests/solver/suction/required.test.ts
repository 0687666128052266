import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { InvalidInputError } from '../../../src/lib/solver/errors';
import { requiredModel } from '../../../src/lib/solver/suction/required';
import { exampleLoop } from '../hydraulics/exampleLoop';

const points = [
  { flow: 2e-4, head: 1 },
  { flow: 4e-4, head: 1.4 },
  { flow: 8e-4, head: 3 },
];
const pump = { ...exampleLoop.pump, npshCurve: points };
const full = { speedRatio: 1, inParallel: 1 };

describe('suction head required', () => {
  it('an estimate stands for every flow and speed', () => {
    const model = requiredModel(exampleLoop.pump, { speedRatio: 0.5, inParallel: 2 });
    expect([0, 1e-4, 1e-3].map(model.at)).toEqual([1.8, 1.8, 1.8]);
    expect(model.notesAt(1)).toEqual([]);
  });
  it('goes through the points', () => {
    const { at, rising, notesAt } = requiredModel(pump, full);
    for (const { flow, head } of points) expect(at(flow)).toBeCloseTo(head, 14);
    expect(rising).toBe(true);
    expect(notesAt(4e-4)).toEqual([]);
  });
  // Source: affinity laws; ISO 9906:2012: NPSH goes with the square of speed at similar flows.
  it('follows speed by the affinity laws', () => {
    const fast = requiredModel(pump, full).at;
    fc.assert(
      fc.property(
        fc.double({ min: 0.3, max: 1.2, noNaN: true }),
        fc.double({ min: 0, max: 1.5e-3, noNaN: true }),
        (s, Q) => {
          const slow = requiredModel(pump, { speedRatio: s, inParallel: 1 }).at;
          expect(slow(s * Q)).toBeCloseTo(s * s * fast(Q), 12);
        },
      ),
    );
  });
  it('two in parallel: each needs what its half of the flow needs', () =>
    expect(requiredModel(pump, { speedRatio: 1, inParallel: 2 }).at(8e-4)).toBeCloseTo(1.4, 14));
  it('outside the points it goes on without falling, and says so', () => {
    const { at, notesAt } = requiredModel(pump, full);
    expect(at(0)).toBe(1);
    expect(at(1e-3)).toBeGreaterThan(3);
    for (const Q of [1e-5, 1e-3]) {
      expect(notesAt(Q).map(({ code }) => code)).toEqual(['suction.beyond-points']);
    }
  });
  it('a need that falls over a stretch is told apart', () => {
    const hooked = [{ flow: 0, head: 2 }, ...points];
    expect(requiredModel({ ...pump, npshCurve: hooked }, full).rising).toBe(false);
  });
  it.each([
    [[points[0]!]],
    [[points[1]!, points[0]!]],
    [[points[0]!, { flow: 3e-4, head: -1 }]],
    [[points[0]!, { flow: NaN, head: 1 }]],
  ])('refuses %o', (npshCurve) =>
    expect(() => requiredModel({ ...pump, npshCurve }, full)).toThrow(InvalidInputError),
  );
  it('refuses an estimate below nothing', () =>
    expect(() => requiredModel({ ...exampleLoop.pump, npshRequired: -1 }, full)).toThrow(
      InvalidInputError,
    ));
});
