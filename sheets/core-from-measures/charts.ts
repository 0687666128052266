/** Plots of the cores by their measures. */
import type { Chart, Spot } from '$lib/kit';
import { faceVelocityOf, sweptCore } from '$lib/solver/cores/geometry/sweep';
import { marks, type BothBands } from '../bands/marks';
import type { CoreId } from '$lib/job/models/coreMeasures';
import type { MeasuredCore } from './measured';

type SideName = 'found' | 'candidate';
export type Shown = { readonly side: SideName; readonly core: MeasuredCore };

const FACE = { name: 'Face velocity, standard air', quantity: 'faceVelocity', zero: true } as const;

/** The cores of one kind, of both sides. */
export const ofKind = (shown: readonly Shown[], core: CoreId): Shown[] =>
  shown.filter((s) => s.core.core === core);

/** Conductance against face velocity; the rating typed in as a spot of its own. */
export function conductanceChart(shown: readonly Shown[], bands: BothBands = []): Chart {
  return {
    x: FACE,
    y: { name: 'Conductance of the core', quantity: 'conductance', zero: true },
    curves: shown.map(({ side, core }) => ({
      id: `${side}-ua`,
      side,
      label: 'by its measures',
      points: sweptCore(core.geometry, core.arrangement, core.point).map(
        ({ faceVelocity, UA }) => [faceVelocity, UA] as const,
      ),
    })),
    bands: bandsOf(shown, bands, 'UA', 'ua'),
    spots: shown.flatMap(({ side, core }): Spot[] =>
      core.ratedUA === null
        ? []
        : [
            {
              side,
              label: 'its rating',
              x: faceVelocityOf(core.geometry, core.point.airMassFlow),
              y: core.ratedUA,
            },
          ],
    ),
  };
}

/** Pressure the air loses against face velocity. */
export function airLossChart(shown: readonly Shown[], bands: BothBands = []): Chart {
  return {
    x: FACE,
    y: { name: 'Pressure the air loses', quantity: 'airPressure', zero: true },
    curves: shown.map(({ side, core }) => ({
      id: `${side}-loss`,
      side,
      label: 'core',
      points: sweptCore(core.geometry, core.arrangement, core.point).map(
        ({ faceVelocity, airLoss }) => [faceVelocity, airLoss] as const,
      ),
    })),
    bands: bandsOf(shown, bands, 'loss', 'loss'),
  };
}

/** Of the sides that are shown: a core nobody measured has no curve. */
const bandsOf = (shown: readonly Shown[], bands: BothBands, what: 'UA' | 'loss', id: string) =>
  shown.flatMap(({ side, core }) => marks(bands, `${core.core} ${what}`, { id, only: side }));
