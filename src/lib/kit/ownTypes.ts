/** Lines the reader adds, as the kit draws them: words, pictures, and calculations already put into words. */
import type { SideName } from './types';

/** One side of a calculation, in the reader's units. */
export interface OwnSide {
  readonly side: SideName;
  /** TeX of the right side with numbers put in, and the same to be read aloud; null without a result. */
  readonly put: { readonly tex: string; readonly said: string } | null;
  readonly value: { readonly text: string; readonly unit: string } | null;
  /** Why there is no result. */
  readonly message?: string;
  /** From the side as found to this one, with its sign. */
  readonly difference?: { readonly text: string; readonly unit: string };
}

/** Parts of a calculation that can be at fault. */
export type OwnFaults = Readonly<Partial<Record<'expression' | 'symbol' | 'unit', string>>>;

export interface OwnTextItem {
  readonly kind: 'text';
  readonly id: string;
  readonly text: string;
}

export interface OwnPhotoItem {
  readonly kind: 'photo';
  readonly id: string;
  /** Address of the picture; null where it is not here, or not yet. */
  readonly src: string | null;
  readonly coming: boolean;
  readonly width: number;
  readonly height: number;
  readonly caption: string;
}

export interface OwnCalculationItem {
  readonly kind: 'calculation';
  readonly id: string;
  readonly statement: string;
  readonly expression: string;
  readonly symbol: string;
  readonly unit: string;
  /** The formula; null while it cannot be read. */
  readonly tex: string | null;
  readonly symbolTex: string;
  /** One entry where both sides say the same. */
  readonly sides: readonly OwnSide[];
  readonly same: boolean;
  readonly faults: OwnFaults;
  readonly note?: string;
}

export type OwnItem = OwnTextItem | OwnPhotoItem | OwnCalculationItem;

/** A name that a calculation may use. */
export interface OwnSymbol {
  readonly name: string;
  readonly tex: string;
  readonly means: string;
  readonly value: string;
  /** The reader's line that gives it; only lines below that one may use it. */
  readonly line?: string;
}

export type OwnPart = 'text' | 'caption' | 'statement' | 'symbol' | 'expression' | 'unit';
