/**
 * What the kit draws. Structural twins of what sheets produce, so that the kit needs to know
 * neither the solver nor the job: only quantity, line, finding, side.
 */
import type { DISPLAY, UnitSystem } from '$lib/units';

export type { UnitSystem };

/** Name of a kind of quantity, as the units know it. */
export type Quantity = keyof typeof DISPLAY;

/** The two states every comparison is between. */
export type SideName = 'found' | 'candidate';

/** How the two sides are worded wherever they meet. */
export const SIDE_WORD: Readonly<Record<SideName, string>> = {
  found: 'As found',
  candidate: 'Candidate',
};

/** A number inside a sentence, SI. */
export interface SaidNumber {
  readonly value: number;
  readonly quantity: Quantity;
  /** Half width of its uncertainty, SI. */
  readonly plusMinus?: number;
}

/** A sentence with numbers in it; a plain string will do where there are none. */
export type Words = string | readonly (string | SaidNumber)[];

/** Something the reader must be told although a value exists. */
export interface NoteItem {
  readonly code: string;
  readonly message: string;
}

/** Where a law or a value comes from, and how sure that is. */
export interface SourceItem {
  readonly cite: string;
  readonly standing: string;
}

export interface TermItem {
  readonly tex: string;
  readonly quantity: Quantity;
  readonly name: string;
}

/** The printable part of a formula. */
export interface FormulaItem {
  readonly id: string;
  readonly expr: string;
  readonly gives: TermItem;
  readonly terms: Readonly<Record<string, TermItem>>;
  readonly functions?: Readonly<Record<string, { readonly says: string; readonly tex: string }>>;
  readonly source: SourceItem;
  tex(): string;
  texWith(
    x: Readonly<Record<string, number>>,
    show: (value: number, quantity: Quantity) => string,
  ): string;
}

/** A formula with the numbers that go into it and what came out, SI. */
export interface Evaluated {
  readonly formula: FormulaItem;
  readonly x: Readonly<Record<string, number>>;
  readonly value: number;
}

interface LineHead {
  readonly id: string;
  readonly statement: string;
  readonly why?: string;
  readonly notes?: readonly NoteItem[];
  /** About neither side: it says itself what it is about. */
  readonly apart?: boolean;
}

export interface FormulaLineItem extends LineHead, Evaluated {
  readonly kind: 'formula';
}

export interface BalanceLineItem extends LineHead {
  readonly kind: 'balance';
  readonly unknown: TermItem & { readonly value: number };
  readonly left: Evaluated;
  readonly right: Evaluated;
  readonly method: string;
}

export type LineItem = FormulaLineItem | BalanceLineItem;

export type Level = 'info' | 'good' | 'watch' | 'act';

export interface FindingItem {
  readonly code: string;
  readonly level: Level;
  readonly sentence: Words;
}

export interface CautionItem {
  readonly title: string;
  readonly text: string;
  readonly source?: string;
}

export type MarginState = 'ok' | 'near' | 'over';

/** A named result of one side; two lists of these make a comparison. */
export interface ResultItem {
  readonly id: string;
  readonly name: string;
  readonly symbol?: string;
  /** SI; null where it does not exist, and `absent` says why. */
  readonly value: number | null;
  readonly absent?: string;
  /** Stands for the number where that alone would mislead. */
  readonly said?: string;
  readonly quantity: Quantity;
  readonly differenceQuantity?: Quantity;
  /** Half width of the stated uncertainty, SI. */
  readonly plusMinus?: number;
  readonly state?: MarginState;
  readonly better?: 'lower' | 'higher';
}

/** One entry the reader may fill in. */
export interface FieldSpec {
  /** Where the value lives; handed back unchanged with every edit. */
  readonly path: string;
  readonly label: string;
  readonly kind: 'quantity' | 'choice' | 'text';
  readonly quantity?: Quantity;
  /** TeX of the symbol, shown after the label. */
  readonly symbol?: string;
  /** Where and how to measure it. */
  readonly help?: string;
  /** The usual range in words, e.g. `3 to 10 gpm`. */
  readonly typical?: string;
  /** What an empty box shows, e.g. `1.25 in`. */
  readonly example?: string;
  readonly choices?: readonly Option[];
  /** Ends of a slider the reader may ask for, SI. */
  readonly slide?: { readonly from: number; readonly to: number };
}

/** What one side of a field holds now. */
export interface FieldState {
  /** Exactly as typed. */
  readonly text: string;
  /** SI, where the text could be read. */
  readonly si?: number | null;
  readonly error?: string | null;
  readonly notice?: string | null;
  /** A default stands in for a value nobody has given. */
  readonly assumed?: boolean;
}

/** How a ± is to be read: two standard deviations, bounds, bounds with a likely middle, a certificate. */
export type SpreadKind = 'normal' | 'interval' | 'triangular' | 'calibration';

/** The side notes of a value. */
export interface FieldNotes {
  /** ± as typed. */
  readonly plusMinus?: string;
  readonly plusMinusError?: string | null;
  /** Absent: normal. */
  readonly spread?: SpreadKind;
  /** Coverage factor of a calibration, as typed. */
  readonly k?: string;
  readonly kError?: string | null;
  /** Where it came from. */
  readonly from?: string;
}

export type EditHandler = (path: string, text: string, side: SideName) => void;
/** Which of a value's side notes. */
export type NotePart = 'plusMinus' | 'spread' | 'k' | 'from';
export type NoteHandler = (path: string, part: NotePart, text: string, side: SideName) => void;

export interface Option {
  readonly value: string;
  readonly label: string;
}

/** A column of typed values, or with `choices` one of picked ones. */
export interface TableColumn {
  readonly key: string;
  readonly label: string;
  readonly quantity?: Quantity;
  readonly example?: string;
  readonly choices?: readonly Option[];
}

export interface TableRow {
  readonly id: string;
  readonly cells: Readonly<Record<string, FieldState>>;
}

/** The facts of the title block. */
export interface TitleFacts {
  readonly job: string;
  readonly vehicle: string;
  readonly date: string;
  readonly by: string;
  readonly checkedBy: string;
  /** Position of this sheet in the folder, null where it is not in it, and how many sheets that has. */
  readonly place: number | null;
  readonly of: number;
}
