/** What each part takes of the pump's head at a flow. */
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
export const CORES = ['chargeCooler', 'frontExchanger'] as const;

/** In order of flow; the suction hose first. */
export function headShares(
  runs: readonly HoseGeometry[],
  cores: readonly RatedLossModel[],
  flow: number,
  liquid: FlowingLiquid,
): HeadShare[] {
  const hose = (i: number): HeadShare => {
    const { pressureDrop, velocity, reynolds, friction } = hoseDrop(runs[i]!, flow, liquid);
    const head = headOf({ dp: pressureDrop, rho: liquid.rho });
    return { part: HOSES[i]!, pressureDrop, head, velocity, reynolds, friction };
  };
  const core = (i: number): HeadShare => {
    const pressureDrop = cores[i]!.at(flow, liquid);
    const head = headOf({ dp: pressureDrop, rho: liquid.rho });
    return { part: CORES[i]!, pressureDrop, head, velocity: null, reynolds: null, friction: null };
  };
  return [hose(0), hose(1), core(0), hose(2), core(1), hose(3)];
}
