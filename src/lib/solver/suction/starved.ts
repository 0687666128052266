/** Where a pump that loses head to its suction side meets the loop. */
import { intersection } from '../hydraulics/intersection';
import { brent } from '../numerics/root';

/** A twentieth of a millilitre a minute: below it the liquid stands, m³/s. */
const STANDS = 1e-9;
/** Flows looked at where several crossings may exist. */
const LOOKS = 64;

export interface Starved {
  /** Head of the pump in health, and head the loop asks, m. */
  readonly lift: (flow: number) => number;
  readonly resistance: (flow: number) => number;
  /** Share of the head that the suction side leaves. */
  readonly left: (flow: number) => number;
  /** Where the two would meet in health, m³/s. */
  readonly healthy: number;
  /** The share never rises with flow, so that the curves meet once. */
  readonly single: boolean;
}

/**
 * Flow at which lift times the share left equals the resistance; 0 where nothing is left.
 *
 * Head lost means less flow, less flow means more suction head: the crossing lies between none and the
 * healthy flow. Where the pump's need falls over a stretch of flow there may be several; the one with
 * the largest flow is taken, as a loop that comes from cold and healthy reaches it first. It is looked
 * for at 64 flows down from the healthy one, so two crossings closer than that count as none.
 */
export function starvedFlow({ lift, resistance, left, healthy, single }: Starved): number {
  const starved = (flow: number) => left(flow) * lift(flow);
  const surplus = (flow: number) => starved(flow) - resistance(flow);
  if (!(healthy > STANDS) || surplus(healthy) >= 0) return healthy;
  if (!single) {
    let high = healthy;
    for (let i = LOOKS - 1; i > 0; i--) {
      const low = (healthy * i) / LOOKS;
      if (surplus(low) >= 0) return brent(surplus, low, high, { xtol: 0 }).x;
      high = low;
    }
  }
  if (surplus(STANDS) < 0) return 0;
  return intersection(starved, resistance, healthy).flow;
}
