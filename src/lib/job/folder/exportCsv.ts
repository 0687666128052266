/** Tables for other programs: CSV as RFC 4180 has it, UTF-8, decimal point, no grouping of digits. */
import { SI_UNIT } from '$lib/solver/quantity';
import { formatQuantity, type Quantity, type UnitSystem } from '$lib/units';
import { typedWords } from '../changes';
import { FIELD_GROUPS, type FieldSpec } from '../fields';
import type { Job, SideId } from '../types';
import { resolve, type Value } from '../values';

type Cell = string | number | null;

/** Every row with as many cells as the head; lines end in CR LF, quotes only where they are needed. */
export const csvText = (rows: readonly (readonly Cell[])[]): string =>
  rows.map((row) => `${row.map(csvCell).join(',')}\r\n`).join('');

const csvCell = (cell: Cell): string => {
  const text = cell === null ? '' : String(cell);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
};

/** One result of one sheet and side, as data. */
export interface ResultRow {
  /** Slug of the sheet. */
  readonly sheet: string;
  readonly id: string;
  readonly name: string;
  readonly side: SideId;
  readonly quantity: Quantity;
  /** SI; null where it does not exist, and `absent` says why. */
  readonly value: number | null;
  readonly absent?: string;
  readonly state?: string;
}

const RESULT_HEAD = [
  'sheet',
  'id',
  'name',
  'side',
  'value',
  'unit',
  'SI value',
  'SI unit',
  'state',
  'why none',
] as const;

/** Results as printed in the reader's units, and in SI with every digit. */
export const resultsCsv = (rows: readonly ResultRow[], system: UnitSystem): string =>
  csvText([
    RESULT_HEAD,
    ...rows.map(({ sheet, id, name, side, quantity, value, absent, state }) => {
      const printed = value === null ? null : formatQuantity(value, quantity, system);
      return [
        sheet,
        id,
        name,
        side,
        printed && printed.value,
        printed ? printed.unit : '',
        value,
        SI_UNIT[quantity],
        state ?? '',
        absent ?? '',
      ];
    }),
  ]);

const INPUT_HEAD = [
  'group',
  'input',
  'path',
  'side',
  'value',
  'SI value',
  'SI unit',
  '±',
  'kind of ±',
  'coverage factor',
  'where from',
  'assumed',
  'refused text',
] as const;

/** Inputs as typed, each with its ± and where it came from; of the candidate what it changes. */
export function inputsCsv(job: Job): string {
  const sides: readonly SideId[] = job.candidate ? ['asFound', 'candidate'] : ['asFound'];
  const rows = sides.flatMap((side) => {
    const { values } = resolve(job, side);
    const entries = side === 'asFound' ? job.asFound : job.candidate!.changes;
    return FIELD_GROUPS.flatMap(({ title, fields }) =>
      fields
        .filter(({ path, kind }) =>
          side === 'asFound' ? true : kind !== 'text' && values[path]!.changed,
        )
        .map((field) => {
          const entry = Object.hasOwn(entries, field.path) ? entries[field.path]! : {};
          return [
            title,
            field.label,
            field.path,
            side,
            ...cellsOf(field, values[field.path]!, entry),
          ];
        }),
    );
  });
  return csvText([INPUT_HEAD, ...rows]);
}

const cellsOf = (
  field: FieldSpec,
  value: Value,
  { pm, spread, k, from }: Job['asFound'][string],
): Cell[] => [
  allRows(field, value.text),
  value.si ?? null,
  field.kind === 'quantity' ? SI_UNIT[field.quantity] : '',
  pm ?? '',
  pm ? (spread ?? 'normal') : '',
  k ?? '',
  from ?? '',
  value.assumed && field.kind !== 'text' ? 'yes' : '',
  value.draft === undefined ? '' : allRows(field, value.draft),
];

/** A table whole, a row after the other; in words it may be cut short. */
const allRows = (field: FieldSpec, typed: Value['text']): string =>
  typeof typed === 'string'
    ? typedWords(field, typed)
    : typed.map((row) => row.join(' | ')).join('; ');
