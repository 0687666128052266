/** From a core's measures in a job to the core the loop takes. */
import { once } from '$lib/once';
import { coreFromGeometry, type GeometryCore } from '$lib/solver/cores/geometry/fromGeometry';
import type { CoreGeometry, FinKind } from '$lib/solver/cores/geometry/types';
import { pressureAtAltitude } from '$lib/solver/air/atmosphere';
import { SolverError } from '$lib/solver/errors';
import type { CoreId } from '$lib/solver/loop/order';
import type { Arrangement } from '$lib/solver/loop/types';
import { ratingOf } from './rating';
import type { Values } from '../value';

export type { CoreId };
export const CORES = ['chargeCooler', 'frontExchanger'] as const satisfies readonly CoreId[];

/** Measures of a core as the solver takes them. */
export function geometryOf(values: Values, core: CoreId): CoreGeometry {
  const si = (key: string) => values[`${core}.measure.${key}`]!.si!;
  const choice = (key: string) => values[`${core}.measure.${key}`]!.choice!;
  const finHeight = si('finHeight');
  const fin = (): FinKind => {
    switch (choice('fin')) {
      case 'louvered':
        return {
          kind: 'louvered',
          louverAngleDegrees: si('louverAngle'),
          louverPitch: si('louverPitch'),
          louverLength: si('louverShare') * finHeight,
        };
      case 'offset-strip':
        return { kind: 'offset-strip', stripLength: si('stripLength') };
      default:
        return { kind: 'plain' };
    }
  };
  const face = () => {
    const width = values['frontExchanger.width']!.si!;
    const height = values['frontExchanger.height']!.si!;
    return choice('tubesRun') === 'across'
      ? { tubeRun: width, stack: height }
      : { tubeRun: height, stack: width };
  };
  return {
    ...(core === 'frontExchanger' ? face() : { tubeRun: si('tubeRun'), stack: si('stack') }),
    depth: si('depth'),
    tubeHeight: si('tubeHeight'),
    tubeWall: si('tubeWall'),
    webs: si('webs'),
    finHeight,
    finPitch: 1 / si('finsPerLength'),
    finThickness: si('finThickness'),
    fin: fin(),
    passes: si('passes'),
    portBore: si('portBore'),
    conductivity: si('conductivity'),
  };
}

const known = new WeakMap<Values, Partial<Record<CoreId, () => GeometryCore>>>();

/**
 * The core its measures make, at the flows and inlets of the job's rating point; worked out once.
 * @throws as `coreFromGeometry`, with the path of the field at fault
 */
export function measuredCore(values: Values, core: CoreId): GeometryCore {
  let cores = known.get(values);
  if (!cores) known.set(values, (cores = {}));
  return (cores[core] ??= once(() =>
    coreFromGeometry(
      geometryOf(values, core),
      values[`${core}.arrangement`]!.choice as Arrangement,
      { ...ratingOf(values, core), airPressure: pressureAtAltitude(values['site.altitude']!.si!) },
      `${core}.measure`,
    ),
  ))();
}

export const byMeasures = (values: Values, core: CoreId): boolean =>
  values[`${core}.by`]!.choice === 'measures';

/** @throws as {@link measuredCore}, for each core told by its measures */
export function requireMeasures(values: Values): void {
  for (const core of CORES) if (byMeasures(values, core)) measuredCore(values, core);
}

/** As {@link measuredCore}; null where the rating counts, or where the measures contradict each other. */
export function measuredOrNull(values: Values, core: CoreId): GeometryCore | null {
  if (!byMeasures(values, core)) return null;
  try {
    return measuredCore(values, core);
  } catch (error) {
    if (error instanceof SolverError) return null; // told by requireMeasures
    throw error;
  }
}
