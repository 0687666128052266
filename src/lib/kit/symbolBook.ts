/** Where explanations of symbols come from: handed down by the sheet, fetched when first asked for. */
import { getContext, setContext } from 'svelte';
import type { Quantity } from './types';

/** What is said of a symbol on request. */
export interface SymbolExplanation {
  readonly means: string;
  /** Usual range, SI, and how sure that is; in words where there is none. */
  readonly usual:
    { readonly from: number; readonly to: number; readonly standing: string } | string;
  /** Where it is measured. */
  readonly where: string;
}

export type SymbolBook = (term: {
  readonly quantity: Quantity;
  readonly name: string;
}) => SymbolExplanation | undefined;

type Opened = () => Promise<SymbolBook>;

const KEY = Symbol('symbol book');

export const setSymbolBook = (open: Opened): void => void setContext(KEY, open);

/** The way to the book; undefined where nobody hands one down. */
export const symbolBook = (): Opened | undefined => getContext<Opened | undefined>(KEY);

/** Where a value lies by its usual range. */
export function placeOf(
  value: number,
  usual: SymbolExplanation['usual'],
): 'below' | 'above' | 'inside' | null {
  if (typeof usual === 'string' || !Number.isFinite(value)) return null;
  return value < usual.from ? 'below' : value > usual.to ? 'above' : 'inside';
}
