/** From what is typed into a field to its value, or to the reason why it has none. */
import { dashBore } from '$lib/solver/hydraulics/dash';
import {
  parseQuantity,
  showQuantity,
  type DashConvention,
  type DashSize,
  type Quantity,
  type UnitSystem,
} from '$lib/units';
import type { ChoiceField, Column, FieldSpec, QuantityField, TableField } from './fields/types';
import type { Row, Typed } from './types';

/** What the meaning of a text depends on besides the text. */
export interface CheckContext {
  readonly units: UnitSystem;
  readonly dash: DashConvention;
}

/** One cell of a table: SI, the value of a choice, or empty. */
export type Cell = number | string | null;

/** The value of a field; which member is set follows from its kind. */
export interface Meaning {
  readonly si?: number;
  readonly choice?: string;
  readonly rows?: readonly Readonly<Record<string, Cell>>[];
}

export type Checked =
  | {
      readonly ok: true;
      readonly meaning: Meaning;
      /** As typed, with any unit that was assumed put behind it. */
      readonly typed: Typed;
      readonly note?: string;
    }
  | { readonly ok: false; readonly message: string };

/** Check what was typed into `field`. */
export function checkTyped(field: FieldSpec, typed: Typed, context: CheckContext): Checked {
  if (field.kind === 'table') return checkTable(field, typed, context);
  if (typeof typed !== 'string') return { ok: false, message: `${field.label} takes one value.` };
  switch (field.kind) {
    case 'quantity':
      return checkQuantity(field, typed, context);
    case 'choice':
      return checkChoice(field, typed);
    case 'text':
      return typed.length > field.maxLength
        ? { ok: false, message: `At most ${field.maxLength} characters.` }
        : { ok: true, meaning: {}, typed };
  }
}

function checkQuantity(field: QuantityField, typed: string, context: CheckContext): Checked {
  if (field.optional && typed.trim() === '') return { ok: true, meaning: {}, typed: '' };
  const isHose = field.path.startsWith('hose.');
  const parsed = parseQuantity(typed, field.quantity, {
    system: context.units,
    ...(isHose ? { dash: { convention: context.dash, table: DASH_TABLE } } : {}),
  });
  if (!parsed.ok) return { ok: false, message: parsed.message };
  const outside = outsideWords(parsed.si, field, context.units);
  if (outside) return { ok: false, message: outside };
  if (field.integer && !Number.isInteger(parsed.si)) {
    return { ok: false, message: 'Must be a whole number.' };
  }
  return {
    ok: true,
    meaning: { si: parsed.si },
    typed: parsed.text,
    ...(parsed.note ? { note: parsed.note } : {}),
  };
}

function checkChoice({ choices }: Pick<ChoiceField, 'choices'>, typed: string): Checked {
  if (choices.some((choice) => choice.value === typed)) {
    return { ok: true, meaning: { choice: typed }, typed };
  }
  const known = choices.map((choice) => choice.label).join('; ');
  return { ok: false, message: `“${typed.slice(0, 40)}” is not one of: ${known}.` };
}

function checkTable(field: TableField, typed: Typed, context: CheckContext): Checked {
  if (typeof typed === 'string') return { ok: false, message: `${field.label} takes rows.` };
  const { minRows, maxRows, columns } = field;
  if (typed.length < minRows) {
    return { ok: false, message: `Needs ${minRows} rows or more; it has ${typed.length}.` };
  }
  if (typed.length > maxRows) return { ok: false, message: `Takes at most ${maxRows} rows.` };

  const rows: Record<string, Cell>[] = [];
  const completed: string[][] = [];
  const notes = new Set<string>();
  for (const [r, row] of typed.entries()) {
    const cells: Record<string, Cell> = {};
    const texts: string[] = [];
    for (const [c, column] of columns.entries()) {
      const cell = checkCell(column, row[c] ?? '', context);
      if (!cell.ok) return { ok: false, message: `Row ${r + 1}, ${column.label}: ${cell.message}` };
      cells[column.key] = cell.meaning.si ?? cell.meaning.choice ?? null;
      texts.push(cell.typed as string);
      if (cell.note) notes.add(cell.note);
    }
    rows.push(cells);
    completed.push(texts);
  }
  const note = [...notes].join('; ');
  return { ok: true, meaning: { rows }, typed: completed, ...(note ? { note } : {}) };
}

function checkCell(column: Column, typed: string, context: CheckContext): Checked {
  if (column.optional && typed.trim() === '') return { ok: true, meaning: {}, typed: '' };
  if (column.kind === 'choice') return checkChoice(column, typed);
  const parsed = parseQuantity(typed, column.quantity, { system: context.units });
  if (!parsed.ok) return { ok: false, message: parsed.message };
  const outside = outsideWords(parsed.si, column, context.units);
  if (outside) return { ok: false, message: outside };
  return {
    ok: true,
    meaning: { si: parsed.si },
    typed: parsed.text,
    ...(parsed.note ? { note: parsed.note } : {}),
  };
}

function outsideWords(
  si: number,
  { min, max, quantity }: { min: number; max: number; quantity: Quantity },
  units: UnitSystem,
): string | null {
  if (si >= min && si <= max) return null;
  // Rounding of a unit must not refuse the limit itself, e.g. -40 °F.
  const slack = 1e-9 * Math.max(Math.abs(min), Math.abs(max));
  if (si >= min - slack && si <= max + slack) return null;
  const show = (x: number) => showQuantity(x, quantity, units, { digits: 3 });
  return `${show(si)} is outside ${show(min)} to ${show(max)}.`;
}

/** Sizes whose bore is known by both conventions. */
const DASH_TABLE: readonly DashSize[] = [4, 6, 8, 10, 12, 16, 20, 24].map((dash) => ({
  dash,
  hoseBore: dashBore(dash, 'hose-bore').bore,
  tubeBore: dashBore(dash, 'tube-replaced').bore,
}));

export const sameTyped = (a: Typed | undefined, b: Typed | undefined): boolean =>
  a === b || JSON.stringify(a) === JSON.stringify(b);

/** A copy of rows that nobody else holds. */
export const copyTyped = (typed: Typed): Typed =>
  typeof typed === 'string' ? typed : typed.map((row: Row) => [...row]);
