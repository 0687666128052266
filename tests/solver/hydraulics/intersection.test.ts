import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { intersection } from '../../../src/lib/solver/hydraulics/intersection';
import { NoRootError } from '../../../src/lib/solver/errors';

// Source: closed forms of quadratic equations; the power law by scipy.optimize.brentq.
describe('pump H0 − a Q² against a system', () => {
  it.each([
    ['quadratic', 9, 3.6e6, (Q: number) => 4.5e6 * Q * Q, 0.001054092553, 5],
    ['with a static head', 9, 3.6e6, (Q: number) => 0.5 + 2e6 * Q * Q, 0.001232013451, 3.535714286],
    [
      'linear and quadratic',
      9,
      3.6e6,
      (Q: number) => 800 * Q + 4e6 * Q * Q,
      0.001036854818,
      5.12975551,
    ],
    ['power law', 9, 3.6e6, (Q: number) => 1.4e6 * Q ** 1.8, 0.0009898864729, 5.472449175],
  ])('%s', (_, H0, a, system, flow, lift) => {
    const found = intersection((Q) => H0 - a * Q * Q, system, Math.sqrt(H0 / a));
    expect(found.flow / flow).toBeCloseTo(1, 9);
    expect(found.lift / lift).toBeCloseTo(1, 9);
    expect(Math.abs(found.residual)).toBeLessThan(1e-13);
  });

  it('a curve that sags at the start', () => {
    const found = intersection(
      (Q) => 8 + 600 * Q - 3e6 * Q * Q,
      (Q) => 2.5e6 * Q * Q,
      0.0018,
    );
    expect(found.flow / 0.001261823658).toBeCloseTo(1, 9);
  });

  // Source: straight-line fan on a core of k1 Q + k2 Q², closed form.
  it('a fan on a core', () => {
    const found = intersection(
      (Q) => 250 * (1 - Q / 1.2),
      (Q) => 40 * Q + 80 * Q * Q,
      1.2,
    );
    expect(found.flow / 0.8003542692).toBeCloseTo(1, 9);
    expect(found.lift / 83.25952726).toBeCloseTo(1, 9);
  });
});

describe('always found', () => {
  it('for any system that rises, over many decades of restriction', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -6, max: 6, noNaN: true }),
        fc.double({ min: 1, max: 2, noNaN: true }),
        (decade, n) => {
          const pump = (Q: number) => 5 * (1 - Q * Q);
          const system = (Q: number) => 10 ** decade * Q ** n;
          const { flow, residual } = intersection(pump, system, 1);
          expect(flow).toBeGreaterThan(0);
          expect(flow).toBeLessThanOrEqual(1);
          expect(Math.abs(residual)).toBeLessThan(1e-13);
        },
      ),
    );
  });
  it('no restriction at all: the pump runs out', () =>
    expect(
      intersection(
        (Q) => 1 - Q,
        () => 0,
        1,
      ).flow,
    ).toBe(1));
  it('a pump too weak for the static head is told apart', () =>
    expect(() =>
      intersection(
        (Q) => 1 - Q,
        () => 2,
        1,
      ),
    ).toThrow(NoRootError));
});
