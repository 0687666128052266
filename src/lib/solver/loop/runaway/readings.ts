/** What is read off the balances of a loop under its knobs. */
import { headLeft } from '../../suction/headLeft';
import type { Balance } from './balanceAt';
import type { Crossing, HeatsAt, Knob } from './types';

export interface SuctionReading {
  readonly available: number;
  readonly required: number;
  /** Available less required, m. */
  readonly margin: number;
  /** Share of the pump's head left, counted or not. */
  readonly headLeft: number;
}

/** Suction side of the pump at a state of the balance. */
export function suctionOf({ prepared }: Balance, { T, pumpFlow }: HeatsAt): SuctionReading {
  const { available, required } = prepared.hydraulics.suctionAt(pumpFlow, prepared.liquidAt(T), T);
  return {
    available,
    required,
    margin: available - required,
    headLeft: headLeft({ available, required }),
  };
}

/** Heat that pulls the liquid back (above zero) or away, per kelvin off the crossing, W/K. */
export const holding = ({ slopeIn, slopeOut }: Crossing): number => slopeOut - slopeIn;

/** Whether the crossing lies below boiling everywhere in the loop. */
export const isLiquid = ({ boilingMargin }: Crossing): boolean => boilingMargin > 0;

/** Turning it this way makes the liquid hotter: where the last balance is lost. */
export const HARDER: Readonly<Record<Knob, 1 | -1>> = {
  flow: -1,
  fan: -1,
  ambientShift: 1,
  load: 1,
};

/** Rise from one state to another, K: of the liquid leaving the reservoir, of the drop, of the charge air. */
export function changeOf(from: Crossing, to: Crossing) {
  return {
    liquid: to.T - from.T,
    drop: to.drop - from.drop,
    dropRatio: from.drop > 0 ? to.drop / from.drop : 1,
    charge: from.chargeOut === null || to.chargeOut === null ? null : to.chargeOut - from.chargeOut,
  };
}
