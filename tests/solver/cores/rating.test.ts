import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airCp } from '$lib/solver/air/air';
import { InvalidInputError, OutOfRangeError } from '$lib/solver/errors';
import { coolantProperties } from '$lib/solver/fluids/coolant';
import type { Arrangement, Core, CoreRating } from '$lib/solver/loop/types';
import { dutyFromUA } from '$lib/solver/cores/lmtd';
import { ratedCore } from '$lib/solver/cores/rating';
import { chargeCore, frontCore } from './fixture';

const relative = (got: number, expected: number) => Math.abs(got / expected - 1);
const ARRANGEMENTS: readonly Arrangement[] = [
  'counterflow',
  'parallel',
  'crossflow-both-unmixed',
  'crossflow-air-mixed',
  'crossflow-liquid-mixed',
];
const rate = (core: Core, rating: Partial<CoreRating>) =>
  ratedCore({ ...core, rating: { ...core.rating, ...rating } }, 'chargeCooler');
const facts = (run: () => unknown) => {
  try {
    run();
  } catch (error) {
    return error as InvalidInputError;
  }
  throw new Error('nothing was thrown');
};

describe('UA from a rating', () => {
  it('brings back a UA from outside', () => {
    // Source: own closed forms over the exact crossflow series: C 2000 and 1250 W/K, hot 328 K, cold 303 K,
    // 17302.61 W -> NTU 1.1, UA 1375. The capacity rates are set by the flows, here with our cp.
    const rating: CoreRating = {
      ...frontCore.rating,
      heat: 17302.61,
      airInlet: 303,
      liquidInlet: 328,
      airMassFlow: 1250 / airCp(303),
      coolant: { kind: 'water', massFraction: 0 },
    };
    const { rho, cp } = coolantProperties(rating.coolant, 328);
    const got = ratedCore(
      { ...frontCore, rating: { ...rating, liquidFlow: 2000 / (rho * cp) } },
      'x',
    );
    expect(relative(got.UA, 1375)).toBeLessThan(1e-5); // as stated with the value: well conditioned
    expect(relative(got.NTU, 1.1)).toBeLessThan(1e-5);
  });

  it.each(ARRANGEMENTS)('%s: the UA found carries the rated heat', (arrangement) => {
    for (const core of [chargeCore, frontCore]) {
      const heat = 0.6 * core.rating.heat; // within reach of parallel flow too
      const { UA, C_air, C_liquid } = rate({ ...core, arrangement }, { heat });
      const { airInlet, liquidInlet } = core.rating;
      const airIsHot = airInlet > liquidInlet;
      const airIsMin = C_air < C_liquid;
      const duty = dutyFromUA({
        arrangement:
          arrangement === 'crossflow-air-mixed' || arrangement === 'crossflow-liquid-mixed'
            ? (arrangement === 'crossflow-air-mixed') === airIsMin
              ? 'crossflow-cmin-mixed'
              : 'crossflow-cmax-mixed'
            : arrangement,
        UA,
        C_hot: airIsHot ? C_air : C_liquid,
        C_cold: airIsHot ? C_liquid : C_air,
        T_hot_in: Math.max(airInlet, liquidInlet),
        T_cold_in: Math.min(airInlet, liquidInlet),
      });
      expect(relative(duty.heat, heat)).toBeLessThan(1e-9);
    }
  });

  it('splits so that the sides in series give UA, the air side with its share', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 0.95, noNaN: true }), (airShare) => {
        const { UA, hA_air, hA_liquid } = ratedCore({ ...chargeCore, airShare }, 'x');
        expect(relative(1 / (1 / hA_air + 1 / hA_liquid), UA)).toBeLessThan(1e-12);
        expect(relative(UA / hA_air, airShare)).toBeLessThan(1e-12);
      }),
    );
  });
});

describe('a rating that cannot be', () => {
  it('more heat than the second law lets these flows carry', () => {
    const error = facts(() => rate(chargeCore, { heat: 32e3 })); // 0.45 kg/s over 65 K: 29.6 kW at most
    expect(error).toBeInstanceOf(InvalidInputError);
    expect(error.facts.quantity).toBe('chargeCooler.rating.heat');
    expect(error.facts.value).toBe(32e3);
  });

  it('less than that, but more than parallel flow can', () => {
    const error = facts(() => rate({ ...chargeCore, arrangement: 'parallel' }, { heat: 27e3 }));
    expect(error.facts.quantity).toBe('chargeCooler.rating.heat');
  });

  it.each(['heat', 'airMassFlow', 'liquidFlow'] as const)(
    '%s of zero, below, or missing',
    (key) => {
      for (const value of [0, -1, NaN, Infinity]) {
        const error = facts(() => rate(chargeCore, { [key]: value }));
        expect(error.facts.quantity).toBe(`chargeCooler.rating.${key}`);
      }
    },
  );

  it('no difference of temperature', () => {
    const error = facts(() => rate(chargeCore, { airInlet: 315, liquidInlet: 315 }));
    expect(error.facts.quantity).toBe('chargeCooler.rating.airInlet');
  });

  it('a share or an exponent outside its range', () => {
    for (const odd of [
      { airShare: 0 },
      { airShare: NaN },
      { airExponent: 2 },
      { cleanliness: 1.1 },
    ]) {
      expect(() => ratedCore({ ...chargeCore, ...odd }, 'x')).toThrow(OutOfRangeError);
    }
  });
});
