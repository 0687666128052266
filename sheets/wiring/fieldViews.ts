/** From what the job holds about a field to what the kit draws of it. */
import {
  FIELD_GROUPS,
  type FieldSpec as JobField,
  type QuantityField,
  type TableField,
} from '$lib/job/fields';
import type { Side } from '$lib/job/evaluate';
import type { Row, Typed } from '$lib/job/types';
import type { Value } from '$lib/job/values';
import type { FieldNotes, FieldSpec, FieldState, TableColumn, TableRow } from '$lib/kit/types';

/** A field of one text on both sides. */
export interface FieldView {
  readonly spec: FieldSpec;
  readonly found: FieldState;
  readonly candidate?: FieldState;
  readonly notes?: FieldNotes;
  /** Of the candidate's own value. */
  readonly candidateNotes?: FieldNotes;
}

/** A table on one side. */
export interface TableView {
  readonly rows: readonly TableRow[];
  readonly error: string | null;
  readonly assumed: boolean;
  /** On the candidate: has rows of its own. */
  readonly changed: boolean;
}

const textOf = (typed: Typed): string => (typeof typed === 'string' ? typed : '');

function stateOf(value: Value): FieldState {
  return {
    text: textOf(value.draft ?? value.text),
    si: value.si ?? null,
    error: value.why ?? null,
    notice: value.note ?? null,
    assumed: value.assumed,
  };
}

/** The candidate's blank is empty where it says the same as the loop as found. */
function candidateStateOf(value: Value, found: Value): FieldState {
  const own = value.changed || (value.draft !== undefined && value.draft !== found.draft);
  return own
    ? stateOf(value)
    : { text: '', si: value.si ?? null, error: null, notice: null, assumed: false };
}

/**
 * Names of fields that stand in one group, by path. Where two share a name each also says which part
 * of the vehicle it belongs to.
 */
export function namesOf(fields: readonly JobField[]): ReadonlyMap<string, string> {
  return new Map(
    fields.map((field) => {
      const alone = fields.every((f) => f === field || f.label !== field.label);
      const home = FIELD_GROUPS.find((group) => group.fields.includes(field));
      const { label } = field;
      const full = home && `${home.title}: ${label.charAt(0).toLowerCase()}${label.slice(1)}`;
      return [field.path, alone || !full ? label : full];
    }),
  );
}

function specOf(field: Exclude<JobField, TableField>, label: string): FieldSpec {
  const common = {
    path: field.path,
    label,
    kind: field.kind,
    help: field.ask,
    ...(field.symbol && { symbol: field.symbol }),
    ...(field.typical && { typical: `${field.typical.text} (${field.typical.standing})` }),
  };
  if (field.kind === 'choice') return { ...common, choices: field.choices };
  if (field.kind === 'quantity') return { ...common, quantity: field.quantity, ...example(field) };
  return common;
}

const example = (field: QuantityField) => ({ example: field.example ?? field.default });

/** The view last made of a value as found, and what else it was made from. */
interface Made {
  readonly label: string;
  readonly planned: Value | undefined;
  readonly view: FieldView;
}

/** A value that an edit did not touch is still the same object, and so is its view: nothing to draw. */
const made = new WeakMap<Value, Made>();

/** Values that say the same; what a change gave is put together anew on each edit. */
function alike(a: Value | undefined, b: Value | undefined): boolean {
  if (a === b) return true;
  if (!a || !b) return false;
  const keys = Object.keys(a) as (keyof Value)[];
  return keys.length === Object.keys(b).length && keys.every((key) => a[key] === b[key]);
}

/** One field as the kit takes it. */
export function fieldView(
  field: Exclude<JobField, TableField>,
  label: string,
  found: Side,
  candidate: Side | null,
): FieldView {
  const value = found.values[field.path]!;
  const planned = candidate?.values[field.path];
  const before = made.get(value);
  if (before?.label === label && alike(before.planned, planned)) return before.view;
  const view = freshView(field, label, value, planned);
  made.set(value, { label, planned, view });
  return view;
}

function freshView(
  field: Exclude<JobField, TableField>,
  label: string,
  value: Value,
  planned: Value | undefined,
): FieldView {
  return {
    spec: specOf(field, label),
    found: stateOf(value),
    // Words of the title block belong to the job, not to a side.
    ...(planned && field.kind !== 'text' && { candidate: candidateStateOf(planned, value) }),
    ...(field.kind === 'quantity' && {
      notes: notesOf(value),
      ...(planned?.changed && { candidateNotes: notesOf(planned) }),
    }),
  };
}

const notesOf = (value: Value): FieldNotes => ({
  plusMinus: value.pmText ?? '',
  plusMinusError: value.pmMessage ?? null,
  ...(value.spread && { spread: value.spread }),
  k: value.kText ?? '',
  kError: value.kMessage ?? null,
  from: value.from ?? '',
});

const columnsMade = new WeakMap<TableField, readonly TableColumn[]>();

export function tableColumns(field: TableField): readonly TableColumn[] {
  const columns =
    columnsMade.get(field) ??
    field.columns.map((column) => ({
      key: column.key,
      label: column.label,
      ...(column.kind === 'quantity' ? { quantity: column.quantity } : { choices: column.choices }),
    }));
  columnsMade.set(field, columns);
  return columns;
}

/** The rows a table holds as typed. */
export const tableRows = (value: Value): readonly Row[] => {
  const typed = value.draft ?? value.text;
  return typeof typed === 'string' ? [] : typed;
};

const tablesMade = new WeakMap<Value, TableView>();

/** One table on one side as the kit takes it. */
export function tableView(field: TableField, value: Value): TableView {
  const view = tablesMade.get(value) ?? freshTable(field, value);
  tablesMade.set(value, view);
  return view;
}

function freshTable(field: TableField, value: Value): TableView {
  return {
    rows: tableRows(value).map((row, i) => ({
      id: String(i),
      cells: Object.fromEntries(
        field.columns.map((column, c) => [column.key, { text: row[c] ?? '' }]),
      ),
    })),
    error: value.why ?? null,
    assumed: value.assumed,
    changed: value.changed ?? false,
  };
}
