import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { InvalidInputError, OutOfRangeError } from '$lib/solver/errors';
import {
  breakerBehaviour,
  breakerState,
  deratedRating,
  timeConstantFromTrip,
  tripTime,
  type ThermalBreaker,
} from '$lib/solver/feed/breaker';
import { tripTimeFromCurve } from '$lib/solver/feed/tripCurve';

/** Invented, with the slope of the trade's worked question. */
const breaker: ThermalBreaker = {
  rating: 20,
  referenceTemperature: 298.15,
  lossPerKelvin: 0.005,
  timeConstant: 52,
  reset: 'automatic',
  resetState: 0.4,
};
const currents = fc.double({ min: 0, max: 150, noNaN: true });
const ambients = fc.double({ min: 240, max: 395, noNaN: true });

describe('derating', () => {
  // Source: worked question of the trade: a 20 A breaker losing 0.5 % per kelvin holds 14 A at 85 °C.
  it('a 20 A breaker at 85 °C holds 14 A and trips at 18 A', () => {
    expect(deratedRating(breaker, 358.15)).toBeCloseTo(14, 10);
    expect(tripTime(breaker, 18, 358.15).trips).toBe(true);
    expect(tripTime(breaker, 18, 298.15)).toEqual({ trips: false, settlesAt: 0.81 });
  });

  it('holds more in the cold, and never comes to nothing in its range', () => {
    expect(deratedRating(breaker, 258.15)).toBeCloseTo(24, 10);
    const worst = { rating: 20, referenceTemperature: 273.15, lossPerKelvin: 0.0075 };
    expect(deratedRating(worst, 398.15)).toBeGreaterThan(0);
    expect(() => deratedRating(breaker, 85)).toThrow(OutOfRangeError);
    expect(() => deratedRating(breaker, NaN)).toThrow(OutOfRangeError);
  });
});

describe('trip time', () => {
  // Source: the cold curve of IEC 60255-149, t = tau ln(I² / (I² - Ib²)) (from memory); by hand at twice the
  // rating: 52 ln(4/3) = 14.96 s; from half the rating, 52 ln(3.75/3) = 11.60 s.
  it('cold and hot curve', () => {
    expect(tripTime(breaker, 40, 298.15)).toMatchObject({ trips: true });
    const cold = tripTime(breaker, 40, 298.15);
    const hot = tripTime(breaker, 40, 298.15, 0.25);
    expect(cold.trips && cold.time).toBeCloseTo(52 * Math.log(4 / 3), 10);
    expect(hot.trips && hot.time).toBeCloseTo(52 * Math.log(3.75 / 3), 10);
  });

  it('is when the differential equation reaches 1', () => {
    const trip = tripTime(breaker, 18, 358.15, 0.1);
    if (!trip.trips) throw new Error('should trip');
    // An integration that knows nothing of the closed form: midpoint rule, 20 000 steps.
    const x = (18 / 14) ** 2;
    const h = trip.time / 20_000;
    let y = 0.1;
    for (let i = 0; i < 20_000; i++) y += (h / 52) * (x - (y + (h / 104) * (x - y)));
    expect(y).toBeCloseTo(1, 7);
  });

  it('is a typed answer everywhere: a positive time, or "never" with the state it settles at', () => {
    fc.assert(
      fc.property(
        currents,
        ambients,
        fc.double({ min: 0, max: 0.999, noNaN: true }),
        (i, T, y0) => {
          const trip = tripTime(breaker, i, T, y0);
          if (trip.trips) {
            expect(trip.time).toBeGreaterThan(0);
            expect(trip.time).toBeLessThan(Infinity);
          } else {
            expect(trip.settlesAt).toBeLessThanOrEqual(1);
          }
        },
      ),
    );
    expect(tripTime({ ...breaker, lossPerKelvin: 0 }, 20, 298.15)).toEqual({
      trips: false,
      settlesAt: 1,
    });
    expect(() => tripTime(breaker, NaN, 298.15)).toThrow(OutOfRangeError);
  });

  it('more current or more heat never trips later', () => {
    fc.assert(
      fc.property(currents, currents, ambients, ambients, (i1, i2, T1, T2) => {
        const time = (i: number, T: number) => {
          const trip = tripTime(breaker, i, T);
          return trip.trips ? trip.time : Infinity;
        };
        const [low, high] = [Math.min(i1, i2), Math.max(i1, i2)];
        const [cool, warm] = [Math.min(T1, T2), Math.max(T1, T2)];
        expect(time(high, warm)).toBeLessThanOrEqual(time(low, cool));
      }),
    );
  });

  it('finds the time constant from one point of a curve', () => {
    const tau = timeConstantFromTrip({ t: 15, m: 2 });
    const trip = tripTime({ ...breaker, timeConstant: tau }, 40, 298.15);
    expect(trip.trips && trip.time).toBeCloseTo(15, 10);
    expect(() => timeConstantFromTrip({ t: 15, m: 1 })).toThrow(OutOfRangeError);
  });
});

describe('what it does over a long time', () => {
  it('cycles between its two states, each leg as the state equation has it', () => {
    const b = breakerBehaviour(breaker, 18, 358.15);
    if (b.kind !== 'cycles') throw new Error(b.kind);
    const x = (18 / 14) ** 2;
    expect(breakerState({ x, y0: 0.4, t: b.on, tau: 52 })).toBeCloseTo(1, 12);
    expect(breakerState({ x: 0, y0: 1, t: b.off, tau: 52 })).toBeCloseTo(0.4, 12);
    expect(b.period).toBeCloseTo(b.on + b.off, 12);
    expect(b.share * b.period).toBeCloseTo(b.on, 12);
    expect(b.opensAfter).toBeGreaterThan(b.on); // the first time it starts cold
    // Source: common practice, no source: cycles of 30 to 120 s are seen on vehicles.
    expect(b.period).toBeGreaterThan(30);
    expect(b.period).toBeLessThan(120);
  });

  it('stays open unless it resets itself, and holds below its rating', () => {
    for (const reset of ['modified', 'manual'] as const) {
      expect(breakerBehaviour({ ...breaker, reset }, 18, 358.15).kind).toBe('stays-open');
    }
    expect(breakerBehaviour(breaker, 13, 358.15).kind).toBe('holds');
  });

  it('never cycles at the edge into something that is no number', () => {
    fc.assert(
      fc.property(currents, ambients, (i, T) => {
        const b = breakerBehaviour(breaker, i, T);
        if (b.kind !== 'cycles') return;
        expect(b.share).toBeGreaterThan(0);
        expect(b.share).toBeLessThan(1);
      }),
    );
  });
});

describe('a curve from a maker', () => {
  const curve = {
    holdsTo: 1,
    points: [
      { multiple: 1.35, time: 1000 },
      { multiple: 2, time: 20 },
      { multiple: 4, time: 5 },
    ],
  };

  it('meets its points and is a straight line on a log-log chart between', () => {
    for (const { multiple, time } of curve.points) {
      const trip = tripTimeFromCurve(curve, multiple);
      expect(trip.trips === 'yes' && trip.time).toBeCloseTo(time, 9);
    }
    // By hand: from (2, 20) to (4, 5) time goes with the inverse square: at 2√2, 10 s.
    const mid = tripTimeFromCurve(curve, 2 * Math.SQRT2);
    expect(mid.trips === 'yes' && mid.time).toBeCloseTo(10, 9);
  });

  it('promises nothing between the two, and is not drawn on', () => {
    expect(tripTimeFromCurve(curve, 1)).toEqual({ trips: 'never' });
    expect(tripTimeFromCurve(curve, 1.2)).toEqual({ trips: 'not-promised', longerThan: 1000 });
    expect(() => tripTimeFromCurve(curve, 4.1)).toThrow(OutOfRangeError);
    expect(() => tripTimeFromCurve(curve, NaN)).toThrow(OutOfRangeError);
  });

  it('refuses a curve that rises', () => {
    const points = [...curve.points, { multiple: 5, time: 6 }];
    expect(() => tripTimeFromCurve({ ...curve, points }, 2)).toThrow(InvalidInputError);
    expect(() => tripTimeFromCurve({ holdsTo: 1, points: [] }, 2)).toThrow(InvalidInputError);
  });
});
