/** Edits of a table as new rows; the job takes a table whole. */
import type { TableField } from '$lib/job/fields';
import type { Row } from '$lib/job/types';

/** Put `text` where the kit's cell path `table.row.column` points. */
export function withCell(
  field: TableField,
  rows: readonly Row[],
  cellPath: string,
  text: string,
): readonly Row[] {
  const [row, key] = cellPath.slice(field.path.length + 1).split('.');
  const column = field.columns.findIndex((c) => c.key === key);
  return rows.map((cells, r) =>
    r === Number(row)
      ? field.columns.map((_, c) => (c === column ? text : (cells[c] ?? '')))
      : cells,
  );
}

/** A new row at `index`; a choice starts at its first entry. */
export function withRow(field: TableField, rows: readonly Row[], index: number): readonly Row[] {
  const fresh = field.columns.map((c) => (c.kind === 'choice' ? (c.choices[0]?.value ?? '') : ''));
  return [...rows.slice(0, index), fresh, ...rows.slice(index)];
}

export const withoutRow = (rows: readonly Row[], index: number): readonly Row[] =>
  rows.filter((_, i) => i !== index);
