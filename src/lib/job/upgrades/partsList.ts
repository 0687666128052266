/** A parts list from its texts: what it costs and weighs, and what of it is not known. */
import { parseQuantity, type UnitSystem } from '$lib/units';
import { readNumber } from '$lib/units/number';
import type { Part } from '../file/parts';

/** Columns that hold numbers. */
export const PART_NUMBERS = ['count', 'price', 'mass', 'off'] as const;
export type PartNumber = (typeof PART_NUMBERS)[number];

/** One cell read; `typed` is what it is kept as: with any unit that was assumed put behind it. */
export type PartCell =
  | { readonly ok: true; readonly value: number | null; readonly typed: string }
  | { readonly ok: false; readonly message: string };

const LARGEST = 1e6;
/** What an empty cell stands for. */
const EMPTY: Readonly<Record<PartNumber, number | null>> = {
  count: 1,
  price: null,
  mass: null,
  off: 0,
};

/**
 * Read one cell. An empty count is one piece; an empty price or mass is not known; where no mass that
 * comes off is stated, none does. A count may carry the
 * unit by which the part is sold, such as 12 ft: price and mass are then for one of those.
 */
export function readPart(key: PartNumber, typed: string, units: UnitSystem): PartCell {
  const text = typed.trim();
  if (text === '') return { ok: true, value: EMPTY[key], typed: '' };
  if (key === 'count') {
    const read = readNumber(text);
    if (!read || !(read.value > 0 && read.value <= LARGEST)) {
      return { ok: false, message: `“${text}” is not a count. Enter pieces, such as 2 or 12 ft.` };
    }
    return { ok: true, value: read.value, typed: text };
  }
  const parsed = parseQuantity(text, key === 'price' ? 'money' : 'mass', { system: units });
  if (!parsed.ok) return { ok: false, message: parsed.message };
  if (!(parsed.si >= 0 && parsed.si <= LARGEST)) {
    return { ok: false, message: `A ${key === 'price' ? 'price' : 'mass'} is zero or more.` };
  }
  return { ok: true, value: parsed.si, typed: parsed.text };
}

/** One row with its numbers, SI; null: not known. */
export interface PartRow {
  readonly what: string;
  readonly count: number | null;
  readonly price: number | null;
  readonly mass: number | null;
  /** Mass of what one piece takes off; null only where it cannot be read. */
  readonly off: number | null;
  readonly kind: string | null;
  /** What could not be read, by column. */
  readonly faults: Readonly<Partial<Record<PartNumber, string>>>;
}

export function partRow(part: Part, units: UnitSystem): PartRow {
  const faults: Partial<Record<PartNumber, string>> = {};
  const number = (key: PartNumber): number | null => {
    const cell = readPart(key, part[key] ?? '', units);
    if (cell.ok) return cell.value;
    faults[key] = cell.message;
    return null;
  };
  const [count, price, mass, off] = PART_NUMBERS.map(number) as [
    PartRow['count'],
    PartRow['price'],
    PartRow['mass'],
    PartRow['off'],
  ];
  return { what: part.what, count, price, mass, off, kind: part.kind ?? null, faults };
}

/** Whether anything was typed into a row. */
const isBlank = ({ what, count, price, mass, off = '' }: Part) =>
  [what, count, price, mass, off].every((text) => text.trim() === '');

/** A parts list read whole. */
export interface PartsList {
  readonly rows: readonly PartRow[];
  /** Sum of count × price; null where no part is listed or one price is not known: never zero for want of a price. */
  readonly cost: number | null;
  /** The same of the masses. */
  readonly mass: number | null;
  /** The same of what comes off; null where one cannot be read. */
  readonly off: number | null;
  /** Rows without a price, without a mass. */
  readonly unpriced: number;
  readonly unweighed: number;
}

export function partsList(parts: readonly Part[] | undefined, units: UnitSystem): PartsList {
  const rows = (parts ?? []).filter((part) => !isBlank(part)).map((part) => partRow(part, units));
  const lacks = (key: Exclude<PartNumber, 'count'>) =>
    rows.filter((row) => row.count === null || row[key] === null).length;
  const sum = (key: Exclude<PartNumber, 'count'>) =>
    rows.length === 0 || lacks(key) > 0
      ? null
      : rows.reduce((total, row) => total + row.count! * row[key]!, 0);
  return {
    rows,
    cost: sum('price'),
    mass: sum('mass'),
    off: sum('off'),
    unpriced: lacks('price'),
    unweighed: lacks('mass'),
  };
}
