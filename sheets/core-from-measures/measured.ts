/** Both cores of a side as their measures make them. */
import { byMeasures, CORES, geometryOf, measuredCore, type CoreId } from '$lib/job/coreMeasures';
import type { Side } from '$lib/job/evaluate';
import { ratingOf } from '$lib/job/rating';
import { pressureAtAltitude } from '$lib/solver/air/atmosphere';
import type { GeometryCore, GeometryPoint } from '$lib/solver/cores/geometry/fromGeometry';
import type { CoreGeometry } from '$lib/solver/cores/geometry/types';
import { ratedCore } from '$lib/solver/cores/rating';
import { SolverError } from '$lib/solver/errors';
import type { Arrangement } from '$lib/solver/loop/types';

export const CORE_WORDS = {
  frontExchanger: { id: 'front', title: 'Front exchanger' },
  chargeCooler: { id: 'charge', title: 'Charge cooler' },
} as const satisfies Record<CoreId, { id: string; title: string }>;

export interface MeasuredCore {
  readonly core: CoreId;
  readonly geometry: CoreGeometry;
  readonly arrangement: Arrangement;
  readonly point: GeometryPoint;
  readonly made: GeometryCore;
  /** Conductance that the typed rating stands for; null where the loop does not use it or it cannot be. */
  readonly ratedUA: number | null;
  /** Nobody has given a measure yet: all of them are usual ones. */
  readonly assumed: boolean;
  /** The loop is solved with the measures. */
  readonly counts: boolean;
}

export interface CoreTrouble {
  readonly core: CoreId;
  readonly message: string;
}

/** Someone has measured this core, or asks for its measures to count. */
const spokenOf = (side: Side, core: CoreId): boolean =>
  byMeasures(side.values, core) || measuredAny(side, core);

function measuredAny(side: Side, core: CoreId): boolean {
  const prefix = `${core}.measure.`;
  return Object.entries(side.values).some(([path, v]) => path.startsWith(prefix) && !v.assumed);
}

/** The cores to show: those somebody measured; the front exchanger when there is none. */
export function measuredCores(side: Side): {
  readonly cores: readonly MeasuredCore[];
  readonly trouble: readonly CoreTrouble[];
} {
  const spoken = CORES.filter((core) => spokenOf(side, core));
  const cores: MeasuredCore[] = [];
  const trouble: CoreTrouble[] = [];
  for (const core of spoken.length ? spoken : (['frontExchanger'] as const)) {
    try {
      cores.push({
        core,
        geometry: geometryOf(side.values, core),
        arrangement: side.values[`${core}.arrangement`]!.choice as Arrangement,
        point: {
          ...ratingOf(side.values, core),
          airPressure: pressureAtAltitude(side.values['site.altitude']!.si!),
        },
        made: measuredCore(side.values, core),
        ratedUA: ratedConductance(side, core),
        assumed: !measuredAny(side, core),
        counts: byMeasures(side.values, core),
      });
    } catch (error) {
      if (!(error instanceof SolverError)) throw error;
      trouble.push({ core, message: error.message });
    }
  }
  return { cores, trouble };
}

function ratedConductance(side: Side, core: CoreId): number | null {
  if (side.values[`${core}.rating.heat`]!.assumed) return null;
  try {
    return ratedCore({ ...side.loop[core], rating: ratingOf(side.values, core) }, core).UA;
  } catch (error) {
    if (error instanceof SolverError) return null;
    throw error;
  }
}
