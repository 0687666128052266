/** The front of what is worth its money: properties that any Pareto front has. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nonDominated, type Worth } from '$lib/solver/plan/front';

const worth = fc.record({
  cost: fc.integer({ min: 0, max: 30 }),
  result: fc.integer({ min: 0, max: 30 }),
});
const choices = fc.array(worth, { maxLength: 40 });
const beats = (a: Worth, b: Worth) =>
  a.cost <= b.cost && a.result <= b.result && (a.cost < b.cost || a.result < b.result);

describe('choices worth their money', () => {
  it('are those that no other beats, by trying every pair', () => {
    fc.assert(
      fc.property(choices, (all) => {
        const front = new Set(nonDominated(all));
        for (const one of all) {
          expect(front.has(one)).toBe(!all.some((other) => beats(other, one)));
        }
      }),
    );
  });
  it('come in order of cost, each leading to less than the one before', () => {
    fc.assert(
      fc.property(choices, (all) => {
        const front = nonDominated(all);
        for (let i = 1; i < front.length; i++) {
          expect(front[i]!.cost).toBeGreaterThanOrEqual(front[i - 1]!.cost);
          expect(front[i]!.result).toBeLessThanOrEqual(front[i - 1]!.result);
        }
      }),
    );
  });
  it('do not change when asked again, whatever the order', () => {
    fc.assert(
      fc.property(choices, (all) => {
        const front = nonDominated(all);
        expect(nonDominated(front)).toEqual(front);
        expect(nonDominated([...all].reverse())).toEqual(front);
      }),
    );
  });
});
