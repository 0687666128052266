/** Core from measures: conductance and air loss over face velocity, for both cores. */
import { pressureAtAltitude } from '$lib/solver/air/atmosphere';
import { sweptCore } from '$lib/solver/cores/geometry/sweep';
import { SolverError } from '$lib/solver/errors';
import type { Arrangement } from '$lib/solver/loop/types';
import type { Side } from '../../evaluate';
import { CORES, geometryOf, type CoreId } from '../../models/coreMeasures';
import { ratingOf } from '../../models/rating';
import { curveSet, DRAWN_SLOW, type Curves } from './bandSource';

/** What a core by its measures is made of. @throws where the measures make no core */
export const measuresOf = ({ values }: Side, core: CoreId) => ({
  geometry: geometryOf(values, core),
  arrangement: values[`${core}.arrangement`]!.choice as Arrangement,
  point: {
    ...ratingOf(values, core),
    airPressure: pressureAtAltitude(values['site.altitude']!.si!),
  },
});

/** Null where the measures make no core. */
function measuresOrNull(side: Side, core: CoreId) {
  try {
    return measuresOf(side, core);
  } catch (error) {
    if (error instanceof SolverError) return null;
    throw error;
  }
}

export const MEASURES = curveSet({
  name: 'measures',
  draws: DRAWN_SLOW,
  follows: (side) => CORES.map((core) => measuresOrNull(side, core)),
  curves: (side): Curves =>
    Object.fromEntries(
      CORES.flatMap((core) => {
        const made = measuresOrNull(side, core);
        if (!made) return [];
        const swept = sweptCore(made.geometry, made.arrangement, made.point);
        return [
          [`${core} UA`, swept.map(({ faceVelocity, UA }) => [faceVelocity, UA] as const)],
          [
            `${core} loss`,
            swept.map(({ faceVelocity, airLoss }) => [faceVelocity, airLoss] as const),
          ],
        ] as const;
      }),
    ),
});
