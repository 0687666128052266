/** What the drawing of the loop says at each place, taken from one side's solution as it stands. */
import { isFrontFirst, orderOf, reachingSecondCore } from '$lib/solver/loop/order';
import type { LiquidOrder, Loop, SteadySolution } from '$lib/solver/loop/types';
import type { Quantity } from '$lib/solver/quantity';
import type { RunName, TagName } from './drawing';

/** One number of a tag. */
export interface TagNumber {
  readonly value: number;
  readonly quantity: Quantity;
  /** Printed before the number, e.g. a plus sign for heat gained. */
  readonly before?: string;
}

export interface Picture {
  readonly liquidOrder: LiquidOrder;
  readonly numbers: Readonly<Partial<Record<TagName, readonly TagNumber[]>>>;
  /** Temperature of each run of hose, for its colour. */
  readonly runs: Readonly<Record<RunName, number>>;
  readonly chargeIn: number | null;
  readonly chargeOut: number | null;
  readonly ambient: number;
  readonly moving: boolean;
}

/** Words above the numbers of each tag; they hold in either order of the cores, and for both sides at once. */
export const TAG_WORDS: Readonly<Record<TagName, string>> = {
  chargeHot: 'From compressor',
  chargeCold: 'Charge to engine',
  chargeHeat: 'Heat taken up',
  toFront: 'Into exchanger',
  fromFront: 'Leaves exchanger',
  frontHeat: 'Heat given off',
  ambient: 'Air at the face',
  reservoir: 'Reservoir',
  suction: 'Suction margin',
  pump: 'Flow',
  toCooler: 'Into charge cooler',
  fromCooler: 'Leaves charge cooler',
};

const temperature = (value: number): TagNumber => ({ value, quantity: 'temperature' });

/** Hang one solution's numbers on the drawing, for a loop of this order. */
export function picture(
  s: SteadySolution,
  ambient: number,
  loop: Pick<Loop, 'liquidOrder'>,
): Picture {
  const t = s.temperatures;
  return {
    liquidOrder: orderOf(loop),
    numbers: {
      ...(s.charge && { chargeHot: [temperature(s.charge.compressorOutlet)] }),
      ...(s.chargeOut !== null && { chargeCold: [temperature(s.chargeOut)] }),
      chargeHeat: [{ value: s.ledger.charge, quantity: 'heat' }],
      toFront: [temperature(t.frontIn)],
      fromFront: [temperature(t.frontOut)],
      frontHeat: [{ value: s.front.heat, quantity: 'heat' }],
      ambient: [
        temperature(s.front.airIn),
        { value: s.air.meanFaceVelocity, quantity: 'faceVelocity' },
      ],
      reservoir: [temperature(t.reservoir)],
      suction: [{ value: s.margins.suction, quantity: 'head' }],
      pump: [{ value: s.operating.flow, quantity: 'volumeFlow' }],
      toCooler: [temperature(t.chargeCoolerIn)],
      fromCooler: [temperature(t.chargeCoolerOut)],
    },
    runs: {
      suction: t.pumpIn,
      delivery: isFrontFirst(loop) ? t.frontIn : t.chargeCoolerIn,
      transfer: reachingSecondCore(t, loop),
      back: t.returning,
    },
    chargeIn: s.charge?.compressorOutlet ?? null,
    chargeOut: s.chargeOut,
    ambient,
    moving: s.operating.flow > 0,
  };
}

const FIRST: Readonly<Record<LiquidOrder, string>> = {
  'cooler-first': 'charge cooler',
  'front-first': 'front exchanger',
};

/** Said under the drawing where the candidate's order is not the one drawn; else nothing. */
export function otherOrder(found: Picture, candidate: Picture | null): string | null {
  if (!candidate || candidate.liquidOrder === found.liquidOrder) return null;
  return `Drawn as found, ${FIRST[found.liquidOrder]} first; in the candidate the liquid passes the ${FIRST[candidate.liquidOrder]} first.`;
}
