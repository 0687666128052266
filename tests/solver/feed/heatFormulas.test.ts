import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { ampacity } from '$lib/solver/feed/ampacity';
import {
  breakerBehaviour,
  deratedRating,
  timeConstantFromTrip,
  tripTime,
} from '$lib/solver/feed/breaker';
import { relayResistance, relaySharing } from '$lib/solver/feed/circuit';
import { contactCurrent, contactsTogether } from '$lib/solver/feed/circuitFormulas';
import { wireTemperature } from '$lib/solver/feed/conductorHeat';
import { wireResistance20, wireResistanceHot } from '$lib/solver/feed/formulas';
import * as heat from '$lib/solver/feed/heatFormulas';
import { currentOpeningIn, opensAlike, tripPoints } from '$lib/solver/feed/tripCurves';
import { wireCarries } from '$lib/solver/feed/wireFor';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const near = (a: number, b: number, rel = 1e-10) =>
  expect(Math.abs(a / b - 1), `${a} against ${b}`).toBeLessThan(rel);

const placed = {
  ambient: 333.15,
  thermal: {
    rating: 10,
    referenceTemperature: 298.15,
    lossPerKelvin: 0.005,
    timeConstant: 52.141,
    reset: 'automatic',
    resetState: 0.5,
  },
} as const;

describe('formulas of what heats', () => {
  it('a wire by its own current', () => {
    fc.assert(
      fc.property(between(1, 20), between(1, 8), between(1e-6, 1e-5), (I, L, A) => {
        const T_a = 328.15;
        const D = 4e-3;
        const size = { by: 'area', area: A } as const;
        const plain = wireTemperature({ size, current: I, outsideDiameter: D, ambient: T_a });
        if (!plain.settles) return;
        const R_20 = wireResistance20.value({ L, A });
        const T = heat.wireSettles.value({
          T_a,
          I,
          R_a: wireResistanceHot.value({ R_20, T: T_a }),
          G: heat.wireToAir.value({ D, L }),
          R_20,
        });
        near(T, plain.temperature);
      }),
    );
  });
  it('what a wire may carry', () => {
    for (const awg of [18, 14, 10, 4]) {
      const { table, here } = wireCarries({ by: 'awg', awg }, 350)!;
      near(heat.wireMayCarry.value({ I_t: table, T_a: 350 }), here);
      near(here, ampacity({ by: 'awg', awg }, 350));
    }
    expect(wireCarries({ by: 'awg', awg: 20 }, 350)).toBeNull();
  });
  it('two contacts', () => {
    const relays = [
      { name: 'a', resistance: 0.004, rating: 20 },
      { name: 'b', resistance: 0.012, rating: 20 },
    ];
    const R_r = contactsTogether.value({ R_1: 0.004, R_2: 0.012 });
    near(R_r, relayResistance(relays));
    // By hand: conductances 250 and 83.3 share 18 A as 13.5 and 4.5 A.
    near(contactCurrent.value({ I: 18, R_r, R_1: 0.004 }), 13.5);
    near(relaySharing(relays, 18)[0]!.current, 13.5);
  });
  it('time constant and period of a breaker', () => {
    near(heat.breakerTimeConstant.value({ t_m: 15, m: 2 }), timeConstantFromTrip({ t: 15, m: 2 }));
    const cycle = breakerBehaviour(placed.thermal, 12, placed.ambient);
    if (cycle.kind !== 'cycles') throw new Error(cycle.kind);
    near(heat.breakerPeriod.value({ t_on: cycle.on, t_off: cycle.off }), cycle.period);
  });
});

describe('curve of a breaker', () => {
  it('is the trip time, read the other way', () => {
    fc.assert(
      fc.property(between(0.5, 180), between(0, 0.95), (t, y0) => {
        const trip = tripTime(placed.thermal, currentOpeningIn(placed, t, y0), placed.ambient, y0);
        if (!trip.trips) throw new Error('holds');
        near(trip.time, t, 1e-6);
      }),
    );
  });
  it('falls, beyond the current held, to the end of the plot', () => {
    const points = tripPoints(placed, 0, 25);
    points.slice(1).forEach(([I, t], i) => {
      expect(I).toBeGreaterThan(points[i]![0]);
      expect(t).toBeLessThan(points[i]![1]);
    });
    expect(points[0]![0]).toBeGreaterThan(deratedRating(placed.thermal, placed.ambient));
    near(points.at(-1)![0], 25);
    expect(tripPoints(placed, 0, 5)).toEqual([]);
  });
  it('two breakers alike', () => {
    expect(opensAlike(placed, { ...placed })).toBe(true);
    expect(opensAlike(placed, { ...placed, ambient: 340 })).toBe(false);
    expect(opensAlike(placed, { ...placed, thermal: { ...placed.thermal, rating: 12 } })).toBe(
      false,
    );
  });
});
