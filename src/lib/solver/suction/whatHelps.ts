/** What would raise the suction margin, and by how much. */
import { hydraulicModel } from '../hydraulics/operatingPoint';
import type { PreparedLoop } from '../loop/prepare';
import type { Loop } from '../loop/types';
import type { Quantity } from '../quantity';
import { suctionMargin } from './npsh';

/** Seven psi: one size of cap more, as the trade sells them. */
export const CAP_STEP = 7 * 6894.757293;
/** About a foot. */
export const LEVEL_STEP = 0.3;
export const COOLER_STEP = 10;
/** Inner bores that hose is sold in: ½ to 1½ in, common practice, no source. */
export const HOSE_BORES = [1 / 2, 5 / 8, 3 / 4, 7 / 8, 1, 5 / 4, 3 / 2].map(
  (inch) => inch * 0.0254,
);

export type HelpId = 'cap' | 'level' | 'bore' | 'length' | 'cooler' | 'sea-level';

export interface Help {
  readonly id: HelpId;
  /** What is changed, from and to, SI. */
  readonly from: number;
  readonly to: number;
  readonly quantity: Quantity;
  /** Margin with it, and gained by it, m. */
  readonly margin: number;
  readonly gain: number;
  /** Not where the cap would open above what the tank is made for. */
  readonly allowed: boolean;
}

interface Change {
  readonly allowed?: false;
  readonly id: HelpId;
  readonly from: number;
  readonly to: number;
  readonly quantity: Quantity;
  readonly loop: Loop;
  readonly T: number;
}

/**
 * Suction margin with one thing changed at a time, the flow settled anew, the liquid else as warm as it
 * is. Largest gain first; a cap above what the tank is made for is marked; what cannot be done here (a wider hose than any sold, colder than it freezes,
 * lower than the sea) is left out.
 *
 * @param T - temperature of the liquid leaving the reservoir, K
 */
export function whatHelps(prepared: PreparedLoop, T: number): readonly Help[] {
  const now = marginOf(prepared.loop, prepared, T);
  return changes(prepared, T)
    .map(({ loop, T: at, allowed = true, ...rest }): Help => {
      const margin = marginOf(loop, prepared, at);
      return { ...rest, allowed, margin, gain: margin - now };
    })
    .sort((a, b) => b.gain - a.gain);
}

function changes({ loop, coldest }: PreparedLoop, T: number): Change[] {
  const { reservoir, hoses, site } = loop;
  const { suction } = hoses;
  const tank = (change: Partial<Loop['reservoir']>): Loop => ({
    ...loop,
    reservoir: { ...reservoir, ...change },
  });
  const hose = (change: Partial<Loop['hoses']['suction']>): Loop => ({
    ...loop,
    hoses: { ...hoses, suction: { ...suction, ...change } },
  });
  const cap = reservoir.capGauge + CAP_STEP;
  const level = reservoir.levelAbovePump + LEVEL_STEP;
  const bore = HOSE_BORES.find((size) => size > suction.bore * 1.02);
  const length = suction.length / 2;
  const list: Change[] = [
    {
      id: 'cap',
      from: reservoir.capGauge,
      to: cap,
      quantity: 'gaugePressure',
      loop: tank({ capGauge: cap }),
      T,
      // Stamps are round numbers: a hair above by conversion is not above.
      ...(cap > (reservoir.ratedGauge ?? Infinity) * 1.001 && { allowed: false }),
    },
    {
      id: 'level',
      from: reservoir.levelAbovePump,
      to: level,
      quantity: 'length',
      loop: tank({ levelAbovePump: level }),
      T,
    },
    {
      id: 'length',
      from: suction.length,
      to: length,
      quantity: 'length',
      loop: hose({ length }),
      T,
    },
  ];
  if (bore !== undefined) {
    // Fittings to match the wider hose, else they would take what it gives.
    const fittingBore = (suction.fittingBore / suction.bore) * bore;
    list.push({
      id: 'bore',
      from: suction.bore,
      to: bore,
      quantity: 'bore',
      loop: hose({ bore, fittingBore }),
      T,
    });
  }
  if (T - COOLER_STEP >= coldest) {
    list.push({
      id: 'cooler',
      from: T,
      to: T - COOLER_STEP,
      quantity: 'temperature',
      loop,
      T: T - COOLER_STEP,
    });
  }
  if (site.altitude > 0) {
    list.push({
      id: 'sea-level',
      from: site.altitude,
      to: 0,
      quantity: 'altitude',
      loop: { ...loop, site: { ...site, altitude: 0 } },
      T,
    });
  }
  return list;
}

function marginOf(loop: Loop, { liquidAt, hydraulics, ...own }: PreparedLoop, T: number): number {
  const model = loop === own.loop ? hydraulics : hydraulicModel(loop);
  const liquid = liquidAt(T);
  const flow = model.flowAt(liquid, T);
  return suctionMargin(model.suctionAt(flow, liquid, T));
}
