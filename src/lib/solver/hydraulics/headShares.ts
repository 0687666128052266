/** What each part takes of the pump's head at a flow. */
import type { CoreId } from '../loop/order';
import type { HeadShare, HoseId } from '../loop/types';
import { headOf } from './affinity';
import { hoseDrop, type FlowingLiquid, type HoseGeometry } from './hose';
import type { RatedLossModel } from './ratedLoss';

export const HOSES = [
  'suction',
  'delivery',
  'transfer',
  'back',
] as const satisfies readonly HoseId[];
/**
 * In order of flow; the suction hose first.
 * @param order - both cores, by the order in which the liquid passes them
 */
export function headShares(
  runs: readonly HoseGeometry[],
  cores: Readonly<Record<CoreId, RatedLossModel>>,
  order: readonly [CoreId, CoreId],
  flow: number,
  liquid: FlowingLiquid,
): HeadShare[] {
  const hose = (i: number): HeadShare => {
    const { pressureDrop, velocity, reynolds, friction } = hoseDrop(runs[i]!, flow, liquid);
    const head = headOf({ dp: pressureDrop, rho: liquid.rho });
    return { part: HOSES[i]!, pressureDrop, head, velocity, reynolds, friction };
  };
  const core = (part: CoreId): HeadShare => {
    const pressureDrop = cores[part].at(flow, liquid);
    const head = headOf({ dp: pressureDrop, rho: liquid.rho });
    return { part, pressureDrop, head, velocity: null, reynolds: null, friction: null };
  };
  return [hose(0), hose(1), core(order[0]), hose(2), core(order[1]), hose(3)];
}
