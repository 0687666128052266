import type { ChargeExchange } from './chargeSide';
import type { FrontExchange } from './front';
import type { PreparedLoop } from './prepare';

/**
 * Share of a core's rated liquid film that is left when its liquid stands still: free convection in
 * narrow passages. Our estimate, no source; it sets how fast metal and standing liquid come together,
 * never where they come to rest.
 */
export const STANDING_FILM_SHARE = 0.05;

export interface StandingConductances {
  /** Metal to standing liquid, W/K. */
  readonly toLiquid: { readonly charge: number; readonly front: number };
  /** Air to standing liquid, through the metal, W/K. */
  readonly toAir: { readonly charge: number; readonly front: number };
}

/** Conductances of both cores with standing liquid. */
export function standingConductances(
  { chargeCore, frontCore }: PreparedLoop,
  charge: ChargeExchange,
  front: FrontExchange,
): StandingConductances {
  const toLiquid = {
    charge: STANDING_FILM_SHARE * chargeCore.rated.hA_liquid,
    front: STANDING_FILM_SHARE * frontCore.rated.hA_liquid,
  };
  const series = (a: number, b: number) => (a > 0 ? 1 / (1 / a + 1 / b) : 0);
  return {
    toLiquid,
    toAir: {
      charge: series(charge.airSideConductance, toLiquid.charge),
      front: series(front.airSideConductance, toLiquid.front),
    },
  };
}
