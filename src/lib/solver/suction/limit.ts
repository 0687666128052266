/** How hot the liquid may get before the pump's suction head runs short. */
import { coolantProperties, coolantRange } from '../fluids/coolant';
import { hydraulicModel, type HydraulicModel } from '../hydraulics/operatingPoint';
import type { FlowingLiquid } from '../hydraulics/hose';
import type { Loop, OperatingPoint } from '../loop/types';
import { brent } from '../numerics/root';
import { suctionMargin } from './npsh';

/**
 * Temperature at which the suction margin is used up, the flow following the liquid's own
 * properties, K. Null when the margin holds, or is already gone, over the whole range of the liquid.
 *
 * @source ISO 9906:2012 (NPSH3); vapour pressure as in {@link coolantVapourPressure}
 */
export function suctionLimitTemperature(loop: Loop, hydraulics: HydraulicModel): number | null {
  const [coldest, hottest] = coolantRange(loop.coolant);
  const margin = (T: number) => {
    const { rho, mu } = coolantProperties(loop.coolant, T);
    return marginOf(hydraulics.operatingPoint({ rho, mu }, T));
  };
  const fa = margin(coldest);
  const fb = margin(hottest);
  if (!(fa > 0 && fb < 0)) return null;
  return brent(margin, coldest, hottest, { fa, fb, xtol: 1e-6 }).x;
}

/**
 * Suction margin with the cap off, the liquid at temperature `T`, m: what is left of it when the
 * reservoir holds no pressure, as when cold, freshly opened, or under a weak cap.
 */
export function ventedSuctionMargin(loop: Loop, liquid: FlowingLiquid, T: number): number {
  const vented: Loop = { ...loop, reservoir: { ...loop.reservoir, capGauge: 0 } };
  return marginOf(hydraulicModel(vented).operatingPoint(liquid, T));
}

const marginOf = ({ npshAvailable, npshRequired }: OperatingPoint): number =>
  suctionMargin({ available: npshAvailable, required: npshRequired });
