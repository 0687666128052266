import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { fitLinearQuadratic } from '../../../src/lib/solver/hydraulics/lossFit';
import { ratedLoss } from '../../../src/lib/solver/hydraulics/ratedLoss';
import { InvalidInputError } from '../../../src/lib/solver/errors';

const rated = { rho: 1000, mu: 1e-3 };
const path = 'chargeCooler.liquidLoss';

describe('one rating point', () => {
  const model = ratedLoss({ points: [{ flow: 5e-4, loss: 20e3 }], exponent: 1.8 }, rated, path);
  it('gives the point back', () => expect(model.at(5e-4, rated)).toBeCloseTo(20e3, 8));
  it('twice the flow: 2^1.8', () =>
    expect(model.at(1e-3, rated)).toBeCloseTo(20e3 * 3.482202253, 4));
  it('denser: (rho ratio)^0.8; thicker: (mu ratio)^0.2', () => {
    expect(model.at(5e-4, { rho: 1100, mu: 1e-3 })).toBeCloseTo(20e3 * 1.1 ** 0.8, 6);
    expect(model.at(5e-4, { rho: 1000, mu: 3e-3 })).toBeCloseTo(20e3 * 3 ** 0.2, 6);
  });
  // A smooth tube after Blasius, f ∝ Re^(-1/4), is a power law with n = 1.75: an independent form.
  it('scales between fluids as a Blasius tube does', () => {
    const blasius = (Q: number, rho: number, mu: number) => {
      const V = Q / 1e-4;
      return 0.3164 * ((rho * V * 0.0113) / mu) ** -0.25 * 100 * 0.5 * rho * V * V;
    };
    const tube = ratedLoss(
      { points: [{ flow: 5e-4, loss: blasius(5e-4, 1000, 1e-3) }], exponent: 1.75 },
      rated,
      path,
    );
    const other = { rho: 1060, mu: 2.3e-3 };
    expect(tube.at(8e-4, other) / blasius(8e-4, 1060, 2.3e-3)).toBeCloseTo(1, 12);
  });
});

describe('two and more points', () => {
  it('two points are met exactly', () => {
    const fit = fitLinearQuadratic([
      { flow: 1, loss: 3 },
      { flow: 2, loss: 10 },
    ]);
    expect(fit.a).toBeCloseTo(1, 12);
    expect(fit.b).toBeCloseTo(2, 12);
    expect(fit.clamped).toBeNull();
  });
  it('linear part with viscosity, squared part with density', () => {
    const model = ratedLoss(
      {
        points: [
          { flow: 1, loss: 3 },
          { flow: 2, loss: 10 },
        ],
        exponent: 2,
      },
      { rho: 2, mu: 5 },
      path,
    );
    expect(model.at(2, { rho: 4, mu: 15 })).toBeCloseTo(3 * 2 + 2 * 2 * 4, 10);
  });
  it('points steeper than the square: squared part alone, told', () => {
    const model = ratedLoss(
      {
        points: [
          { flow: 1, loss: 1 },
          { flow: 2, loss: 8 },
        ],
        exponent: 2,
      },
      rated,
      path,
    );
    // By hand: b = (1·1 + 4·8)/(1 + 16)
    expect(model.law).toMatchObject({ form: 'linear-quadratic', a: 0, clamped: 'a' });
    expect(model.at(1, rated)).toBeCloseTo(33 / 17, 10);
    expect(model.notes.map((n) => n.code)).toContain('loss.fit-clamped');
  });
  it('points flatter than linear: linear part alone, told', () => {
    const model = ratedLoss(
      {
        points: [
          { flow: 1, loss: 2 },
          { flow: 2, loss: 3 },
        ],
        exponent: 2,
      },
      rated,
      path,
    );
    expect(model.at(1, rated)).toBeCloseTo(8 / 5, 10); // (1·2 + 2·3)/(1 + 4)
    expect(model.notes.map((n) => n.code)).toContain('loss.fit-clamped');
  });
  it('least squares of three points, as worked by hand', () => {
    // Normal equations: 14a + 36b = 34, 36a + 98b = 90 → a = 23/19, b = 9/19.
    const fit = fitLinearQuadratic([
      { flow: 1, loss: 2 },
      { flow: 2, loss: 4 },
      { flow: 3, loss: 8 },
    ]);
    expect(fit.a).toBeCloseTo(23 / 19, 12);
    expect(fit.b).toBeCloseTo(9 / 19, 12);
  });
  it('no other pair of a and b at or above zero fits better', () => {
    const point = fc.record({
      flow: fc.double({ min: 0.1, max: 5, noNaN: true }),
      loss: fc.double({ min: 0, max: 50, noNaN: true }),
    });
    fc.assert(
      fc.property(
        fc.array(point, { minLength: 2, maxLength: 6 }),
        fc.double({ min: 0, max: 2, noNaN: true }),
        fc.double({ min: 0, max: 2, noNaN: true }),
        (points, ka, kb) => {
          fc.pre(new Set(points.map((p) => p.flow.toPrecision(3))).size > 1);
          const squares = (a: number, b: number) =>
            points.reduce((s, p) => s + (a * p.flow + b * p.flow ** 2 - p.loss) ** 2, 0);
          const { a, b } = fitLinearQuadratic(points);
          const best = squares(a, b);
          expect(a).toBeGreaterThanOrEqual(0);
          expect(b).toBeGreaterThanOrEqual(0);
          const slack = 1e-6 * (1 + squares(0, 0));
          expect(squares(a * ka + 0.01 * kb, b * kb + 0.01 * ka)).toBeGreaterThanOrEqual(
            best - slack,
          );
        },
      ),
    );
  });
});

describe('the curve for one fluid', () => {
  const laws = [
    ratedLoss({ points: [{ flow: 2, loss: 7 }], exponent: 1.6 }, rated, path),
    ratedLoss(
      {
        points: [
          { flow: 1, loss: 3 },
          { flow: 2, loss: 10 },
        ],
        exponent: 2,
      },
      rated,
      path,
    ),
    ratedLoss(
      {
        points: [
          { flow: 1, loss: 3 },
          { flow: 2, loss: 6 },
        ],
        exponent: 2,
      },
      rated,
      path,
    ),
  ];
  it.each(laws)('inverse and slope belong to it (%#)', (model) => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 50, noNaN: true }), (flow) => {
        const curve = model.for({ rho: 1100, mu: 2e-3 });
        expect(curve.flow(curve.loss(flow)) / flow).toBeCloseTo(1, 10);
        const h = 1e-5 * flow;
        const chord = (curve.loss(flow + h) - curve.loss(flow - h)) / (2 * h);
        expect(curve.slope(flow) / chord).toBeCloseTo(1, 6);
        expect(curve.loss(flow * 1.01)).toBeGreaterThan(curve.loss(flow));
      }),
    );
  });
  it('no flow, no loss', () => {
    for (const model of laws) {
      expect(model.at(0, rated)).toBe(0);
      expect(model.for(rated).flow(0)).toBe(0);
    }
  });
  it('a part without loss has none', () => {
    const none = ratedLoss({ points: [{ flow: 1, loss: 0 }], exponent: 2 }, rated, path);
    expect(none.at(3, rated)).toBe(0);
    expect(none.for(rated).flow(0)).toBe(0);
  });
});

describe('what it tells and refuses', () => {
  it('tells a flow far above the rating', () => {
    const model = ratedLoss({ points: [{ flow: 1, loss: 1 }], exponent: 2 }, rated, path);
    expect(model.notesAt(1.9)).toEqual([]);
    expect(model.notesAt(2.1)[0]).toMatchObject({ code: 'loss.far-from-rating', quantity: path });
  });
  it.each([
    { points: [], exponent: 2 },
    { points: [{ flow: 0, loss: 1 }], exponent: 2 },
    { points: [{ flow: 1, loss: -1 }], exponent: 2 },
    { points: [{ flow: 1, loss: NaN }], exponent: 2 },
    { points: [{ flow: 1, loss: 1 }], exponent: 2.1 },
    {
      points: [
        { flow: 1, loss: 1 },
        { flow: 1, loss: 2 },
      ],
      exponent: 2,
    },
  ])('refuses %j', (loss) => expect(() => ratedLoss(loss, rated, path)).toThrow(InvalidInputError));
});
