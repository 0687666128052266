/** Both cores of a side as their measures make them. */
import { byMeasures, CORES, measuredCore, type CoreId } from '$lib/job/models/coreMeasures';
import type { Side } from '$lib/job/evaluate';
import { ratingOf } from '$lib/job/models/rating';
import { measuresOf } from '$lib/job/sure/bands/measures';
import type { GeometryCore, GeometryPoint } from '$lib/solver/cores/geometry/fromGeometry';
import type { CoreGeometry } from '$lib/solver/cores/geometry/types';
import { ratedCore, type RatedCore } from '$lib/solver/cores/rating';
import { SolverError } from '$lib/solver/errors';
import type { Arrangement, Core } from '$lib/solver/loop/types';

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
  /** Conductance that the typed rating stands for; null where nobody typed one or it cannot be. */
  readonly ratedUA: number | null;
  /** The typed rating backed out, to be shown step by step. */
  readonly rated: { readonly core: Core; readonly rated: RatedCore } | null;
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
    const rated = typedRating(side, core);
    try {
      cores.push({
        core,
        ...measuresOf(side, core),
        made: measuredCore(side.values, core),
        ratedUA: rated?.rated.UA ?? null,
        rated,
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

function typedRating(side: Side, core: CoreId): MeasuredCore['rated'] {
  if (side.values[`${core}.rating.heat`]!.assumed) return null;
  try {
    const typed = { ...side.loop[core], rating: ratingOf(side.values, core) };
    return { core: typed, rated: ratedCore(typed, core) };
  } catch (error) {
    if (error instanceof SolverError) return null;
    throw error;
  }
}
