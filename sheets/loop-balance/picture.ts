/** What the drawing of the loop says at each place, taken from one side's solution as it stands. */
import type { SteadySolution } from '$lib/solver/loop/types';
import type { Quantity } from '$lib/solver/quantity';
import type { TagName } from './drawing';

/** One number of a tag. */
export interface TagNumber {
  readonly value: number;
  readonly quantity: Quantity;
  /** Printed before the number, e.g. a plus sign for heat gained. */
  readonly before?: string;
}

export interface Picture {
  readonly numbers: Readonly<Partial<Record<TagName, readonly TagNumber[]>>>;
  /** Temperature of each run of hose, for its colour. */
  readonly runs: Readonly<Record<'suction' | 'delivery' | 'transfer' | 'back', number>>;
  readonly chargeIn: number | null;
  readonly chargeOut: number | null;
  readonly ambient: number;
  readonly moving: boolean;
}

/** Words above the numbers of each tag. */
export const TAG_WORDS: Readonly<Record<TagName, string>> = {
  chargeHot: 'From compressor',
  chargeCold: 'Charge to engine',
  chargeHeat: 'Heat taken up',
  toFront: 'Leaves charge cooler',
  fromFront: 'Leaves exchanger',
  frontHeat: 'Heat given off',
  ambient: 'Air at the face',
  reservoir: 'Reservoir',
  suction: 'Suction margin',
  pump: 'Flow',
  toCooler: 'Into charge cooler',
};

const temperature = (value: number): TagNumber => ({ value, quantity: 'temperature' });

/** Hang one solution's numbers on the drawing. */
export function picture(s: SteadySolution, ambient: number): Picture {
  const t = s.temperatures;
  return {
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
    },
    runs: {
      suction: t.pumpIn,
      delivery: t.chargeCoolerIn,
      transfer: t.frontIn,
      back: t.frontOut,
    },
    chargeIn: s.charge?.compressorOutlet ?? null,
    chargeOut: s.chargeOut,
    ambient,
    moving: s.operating.flow > 0,
  };
}
