/** Random drives for random loops (fast-check): any features together. */
import fc from 'fast-check';
import type { EventRequest } from '$lib/solver/loop/events/types';
import type { Loop, Segment, TransientState } from '$lib/solver/loop/types';
import { coldState } from '$lib/solver/loop/warmUp';
import { arbitraryDuty } from '../arbitrary';

const GRAIN = 1000;
const between = (min: number, max: number) =>
  fc.integer({ min: 0, max: GRAIN }).map((i) => min + ((max - min) * i) / GRAIN);
const maybe = <T>(some: fc.Arbitrary<T>) => fc.option(some, { nil: undefined });

const segment: fc.Arbitrary<Segment> = fc
  .record({
    duty: arbitraryDuty,
    duration: between(5, 400),
    heat: maybe(between(0, 40e3)),
  })
  .map(({ heat, ...rest }) => (heat === undefined ? rest : { ...rest, heat }));

type Features = Omit<EventRequest, 'start' | 'ice'> & { readonly ice?: { readonly share: number } };

const features: fc.Arbitrary<Features> = fc
  .record({
    schedule: fc.array(segment, { minLength: 1, maxLength: 4 }),
    cavitation: maybe(fc.constantFrom('counted' as const, 'ignored' as const)),
    pumpOff: maybe(
      fc
        .record({ from: between(0, 300), length: between(1, 200) })
        .map(({ from, length }) => [{ from, until: from + length }]),
    ),
    breaker: maybe(
      fc.record({
        breaker: fc.record({
          rating: between(2, 30),
          referenceTemperature: fc.constant(298.15),
          lossPerKelvin: between(0, 0.006),
          timeConstant: between(5, 200),
          reset: fc.constantFrom('automatic' as const, 'modified' as const, 'manual' as const),
          resetState: between(0.2, 0.9),
        }),
        place: fc.constantFrom('bay' as const, 'outside' as const),
        start: between(0, 1),
        pushedAt: fc.array(between(0, 500), { maxLength: 3 }),
      }),
    ),
    airBound: maybe(fc.record({ at: between(0, 300), restToPrime: between(0, 60) })),
    thermostat: maybe(
      fc
        .record({
          sensor: fc.constantFrom('reservoir' as const, 'frontOut' as const),
          offAt: between(290, 340),
          width: between(0.5, 10),
        })
        .map(({ sensor, offAt, width }) => ({ sensor, offAt, onAt: offAt + width })),
    ),
    ice: maybe(fc.record({ share: between(0.1, 0.9) })),
    boiling: maybe(fc.boolean()),
    underhood: maybe(
      fc.record({
        timeConstant: between(20, 600),
        liquidGain: between(0, 0.8),
        inletShare: between(0, 1),
      }),
    ),
    hoseDelay: maybe(fc.record({ cells: fc.integer({ min: 1, max: 4 }) })),
  })
  .map(
    // An absent feature is absent, not undefined.
    (all) =>
      Object.fromEntries(
        Object.entries(all).filter(([, x]) => x !== undefined),
      ) as unknown as Features,
  );

/** A drive that the loop can start: cold, ice only where it fits and melts. */
export const arbitraryDrive = features.map((given) => (loop: Loop): EventRequest => {
  const { ice, ...rest } = given;
  const start: TransientState = coldState(
    loop,
    Math.max(loop.site.ambientTemperature, loop.coolant.kind === 'water' ? 275 : 0),
  );
  const { totalVolume, liquidVolume } = loop.reservoir;
  const room = Math.min(totalVolume - liquidVolume, 0.6 * liquidVolume);
  if (!ice || loop.coolant.massFraction > 0) return { ...rest, start };
  return { ...rest, start, ice: { mass: ice.share * room * 900 } };
});
