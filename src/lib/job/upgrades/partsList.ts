/** A parts list from its texts: what it costs and weighs, and what of it is not known. */
import { parseQuantity, type UnitSystem } from '$lib/units';
import { readNumber } from '$lib/units/number';
import type { Part } from '../file/parts';

/** Columns that hold numbers. */
export const PART_NUMBERS = ['count', 'price', 'mass'] as const;
export type PartNumber = (typeof PART_NUMBERS)[number];

/** One cell read; `typed` is what it is kept as: with any unit that was assumed put behind it. */
export type PartCell =
  | { readonly ok: true; readonly value: number | null; readonly typed: string }
  | { readonly ok: false; readonly message: string };

const LARGEST = 1e6;

/**
 * Read one cell. An empty count is one piece; an empty price or mass is not known. A count may carry the
 * unit by which the part is sold, such as 12 ft: price and mass are then for one of those.
 */
export function readPart(key: PartNumber, typed: string, units: UnitSystem): PartCell {
  const text = typed.trim();
  if (text === '') return { ok: true, value: key === 'count' ? 1 : null, typed: '' };
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
    return { ok: false, message: `A ${key} is zero or more.` };
  }
  return { ok: true, value: parsed.si, typed: parsed.text };
}

/** One row with its numbers, SI; null: not known. */
export interface PartRow {
  readonly what: string;
  readonly count: number | null;
  readonly price: number | null;
  readonly mass: number | null;
  readonly kind: string | null;
  /** What could not be read, by column. */
  readonly faults: Readonly<Partial<Record<PartNumber, string>>>;
}

export function partRow(part: Part, units: UnitSystem): PartRow {
  const faults: Partial<Record<PartNumber, string>> = {};
  const number = (key: PartNumber): number | null => {
    const cell = readPart(key, part[key], units);
    if (cell.ok) return cell.value;
    faults[key] = cell.message;
    return null;
  };
  const [count, price, mass] = PART_NUMBERS.map(number) as [
    PartRow['count'],
    PartRow['price'],
    PartRow['mass'],
  ];
  return { what: part.what, count, price, mass, kind: part.kind ?? null, faults };
}

/** Whether anything was typed into a row. */
const isBlank = ({ what, count, price, mass }: Part) =>
  [what, count, price, mass].every((text) => text.trim() === '');

/** A parts list read whole. */
export interface PartsList {
  readonly rows: readonly PartRow[];
  /** Sum of count × price; null where no part is listed or one price is not known: never zero for want of a price. */
  readonly cost: number | null;
  /** The same of the masses. */
  readonly mass: number | null;
  /** Rows without a price, without a mass. */
  readonly unpriced: number;
  readonly unweighed: number;
}

export function partsList(parts: readonly Part[] | undefined, units: UnitSystem): PartsList {
  const rows = (parts ?? []).filter((part) => !isBlank(part)).map((part) => partRow(part, units));
  const lacks = (key: 'price' | 'mass') =>
    rows.filter((row) => row.count === null || row[key] === null).length;
  const sum = (key: 'price' | 'mass') =>
    rows.length === 0 || lacks(key) > 0
      ? null
      : rows.reduce((total, row) => total + row.count! * row[key]!, 0);
  return {
    rows,
    cost: sum('price'),
    mass: sum('mass'),
    unpriced: lacks('price'),
    unweighed: lacks('mass'),
  };
}
