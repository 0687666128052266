/** Each formula a sheet shows gives what the plain function gives, over its range. */
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { deratedRating, heatingRatio, tripTime } from '$lib/solver/feed/breaker';
import * as formulas from '$lib/solver/feed/formulas';
import { wireArea } from '$lib/solver/feed/gauge';
import { operatingVoltage } from '$lib/solver/feed/motor';
import { speedRatio } from '$lib/solver/feed/pumpDraw';
import { jointResistance, walk } from '$lib/solver/feed/walk';
import { wireResistance } from '$lib/solver/feed/wire';
import { workedFeed } from './example';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
function same(a: number, b: number): void {
  expect(Math.abs(a - b)).toBeLessThanOrEqual(1e-12 * Math.max(Math.abs(a), Math.abs(b)));
}

describe('formulas of the feed', () => {
  it('area of a gauge', () => {
    fc.assert(
      fc.property(fc.integer({ min: -3, max: 40 }), (n) =>
        same(formulas.wireAreaFormula.value({ n }), wireArea({ awg: n })),
      ),
    );
  });

  it('resistance at 20 °C and hot', () => {
    fc.assert(
      fc.property(between(0.1, 50), between(5e-9, 2e-4), between(224, 473), (L, A, T) => {
        const size = { by: 'area', area: A } as const;
        const R_20 = formulas.wireResistance20.value({ L, A });
        same(R_20, wireResistance({ size, lengthOneWay: L, temperature: 293.15 }));
        same(
          formulas.wireResistanceHot.value({ R_20, T }),
          wireResistance({ size, lengthOneWay: L, temperature: T }),
        );
      }),
    );
  });

  it('drop, heat and volts along the walked feed', () => {
    fc.assert(
      fc.property(between(0.1, 40), (I) => {
        const w = walk(workedFeed, I);
        for (const { resistance: R, drop, heat } of w.drops) {
          const U = formulas.dropFormula.value({ I, R });
          same(U, drop);
          same(formulas.jointHeat.value({ U, I }), heat);
          same(formulas.jointHeatFromResistance.value({ I, R }), heat);
          same(formulas.jointResistanceFormula.value({ U, I }), jointResistance({ U, I }));
        }
        const ohms = (wire: boolean) =>
          w.drops.reduce((s, d) => s + ((d.kind === 'wire') === wire ? d.resistance : 0), 0);
        const V_p = formulas.voltsAtPump.value({
          V_s: 13.8,
          I,
          R_w: ohms(true),
          R_c: ohms(false),
        });
        expect(Math.abs(V_p - w.pumpVolts)).toBeLessThan(1e-12 * 13.8);
      }),
    );
  });

  it('volts of a pump that holds its power', () => {
    fc.assert(
      fc.property(between(10, 16), between(0, 0.1), between(5, 200), (V_s, R, P) => {
        const motor = { kind: 'constant-power', power: P, cutoutVolts: 0 } as const;
        const point = operatingVoltage(V_s, R, motor);
        if (point.status !== 'runs') return;
        same(formulas.voltsConstantPower.value({ V_s, R, P }), point.volts);
      }),
    );
  });

  it('flow ratio', () => {
    const pump = { motor: 'brushed', ratedVolts: 13.5, cutoutVolts: 0 } as const;
    fc.assert(
      fc.property(between(0, 16), (V_p) =>
        same(formulas.flowRatio.value({ V_p, V_r: 13.5 }), speedRatio(pump, V_p)),
      ),
    );
  });

  it('breaker: derated, heating, trip and reset', () => {
    const make = (rating: number, b: number, timeConstant: number) =>
      ({
        rating,
        referenceTemperature: 298.15,
        lossPerKelvin: b,
        timeConstant,
        reset: 'automatic',
        resetState: 0.4,
      }) as const;
    fc.assert(
      fc.property(
        between(1, 100),
        between(0, 0.0075),
        between(240, 395),
        between(1.01, 6),
        between(0, 0.95),
        between(1, 500),
        (I_r, b, T, m, y_0, tau) => {
          const breaker = make(I_r, b, tau);
          const I_h = formulas.deratedBreaker.value({ I_r, b, T, T_r: 298.15 });
          same(I_h, deratedRating(breaker, T));
          const x = formulas.breakerHeating.value({ I: m * I_h, I_h });
          same(x, heatingRatio(breaker, m * I_h, T));
          const trip = tripTime(breaker, m * I_h, T, y_0);
          if (!trip.trips) throw new Error('above its rating it trips');
          // The printed quotient loses the digits that x - 1 loses near 1; the code's form does not.
          const shown = formulas.breakerTripTime.value({ tau, x, y_0 });
          expect(Math.abs(shown / trip.time - 1)).toBeLessThan(1e-10);
          // The state decays to r in that time.
          const off = formulas.breakerResetTime.value({ tau, r: 0.4 });
          same(Math.exp(-off / tau), 0.4);
        },
      ),
    );
  });

  it('have ids of their own', () => {
    const ids = Object.values(formulas).map((f) => f.id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of ids) expect(id).toMatch(/^feed\./);
  });
});
