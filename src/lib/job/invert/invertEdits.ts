/** Edits of a job that belong to the question asked backwards: ask it, take its answer over. */
import { formatQuantity, fromShown, shownUnit, type UnitSystem } from '$lib/units';
import type { Quantity } from '$lib/solver/quantity';
import { applyEdit } from '../edit';
import { evaluate } from '../evaluate';
import { fieldAt } from '../fields';
import type { Inversion } from './inversion';
import { triedInput, type Setting } from './invertInputs';
import type { Job, Row, SideId, Typed } from '../types';
import type { Value, Values } from '../values';

/** Digits of a value taken over: as one would write it down. */
const DIGITS = 4;
/** Of what follows from it. */
const MORE_DIGITS = 6;

/** Ask another question: several texts, one step to undo. */
export const asked =
  (texts: Readonly<Record<string, string>>) =>
  (job: Job): Job =>
    Object.entries(texts).reduce(
      (current, [key, text]) => applyEdit(current, 'asFound', `whatItTakes.${key}`, text).job,
      job,
    );

/** A value written short, to the side that still meets the target. */
export function roundedInto(
  x: number,
  quantity: Quantity,
  units: UnitSystem,
  meets: Inversion['meets'],
): number {
  const unit = shownUnit(quantity, units);
  const { value, halfUlp } = formatQuantity(x, quantity, units, { digits: DIGITS, unit });
  const near = [value, value + 2 * halfUlp, value - 2 * halfUlp]
    .map((shown) => fromShown(shown, quantity, units))
    .toSorted((a, b) => Math.abs(a - x) - Math.abs(b - x));
  const stretch = meets.find(({ from, to }) => x >= from && x <= to);
  return near.find((n) => !stretch || (n >= stretch.from && n <= stretch.to)) ?? near[0]!;
}

/** As near as a value written down can be to the one found. */
const ALIKE = 1e-3;

/** Whether the input already has the value found. */
export const isThere = ({ value, present }: Inversion): boolean =>
  value !== null && Math.abs(value - present.x) <= ALIKE * Math.abs(value);

/** Put the value found on one side into the candidate; a job without one gets one. */
export function takenOver(job: Job, side: SideId, answer: Inversion): Job {
  const of = evaluate(job)[side];
  if (!of || answer.value === null) return job;
  const { units } = job.header;
  const input = triedInput(answer.question.input, of.values);
  const x = input.only
    ? answer.value
    : roundedInto(answer.value, input.quantity, units, answer.meets);
  return input.settings(x).reduce((current, setting, i) => {
    const typed = textOf(setting, of.values, units, i === 0 ? DIGITS : MORE_DIGITS);
    return applyEdit(current, 'candidate', setting.path, typed).job;
  }, job);
}

/** A setting as a person would type it. */
export function textOf(
  { path, si, choice, rows }: Setting,
  values: Values,
  units: UnitSystem,
  digits: number,
): Typed {
  if (choice !== undefined) return choice;
  const field = fieldAt(path);
  if (rows !== undefined) return tableText(path, rows, values[path]!, units);
  if (field.kind !== 'quantity') throw new Error(`${path} takes no number`);
  return amount(si!, field.quantity, units, digits);
}

function amount(si: number, quantity: Quantity, units: UnitSystem, digits: number): string {
  const unit = shownUnit(quantity, units);
  const { value } = formatQuantity(si, quantity, units, { digits, unit, decimals: 12 });
  return unit.label === '' ? String(value) : `${value} ${unit.label}`;
}

/** Rows with what changed worded anew; the rest stays as typed. */
function tableText(
  path: string,
  rows: NonNullable<Value['rows']>,
  before: Value,
  units: UnitSystem,
): Row[] {
  const field = fieldAt(path);
  if (field.kind !== 'table') throw new Error(`${path} is no table`);
  const typed = before.text as readonly Row[];
  return rows.map((row, r) =>
    field.columns.map((column, c) => {
      const cell = row[column.key];
      const same = cell === before.rows![r]![column.key];
      if (same || typeof cell !== 'number' || column.kind !== 'quantity') return typed[r]![c] ?? '';
      return amount(cell, column.quantity, units, MORE_DIGITS);
    }),
  );
}
