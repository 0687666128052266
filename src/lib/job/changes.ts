/** What the candidate changes, in words: for the desk and the printed folder. */
import { FIELD_GROUPS, type FieldSpec } from './fields';
import type { Job, Typed } from './types';
import { resolve } from './values';

export interface Change {
  readonly path: string;
  /** Heading under which the input stands. */
  readonly group: string;
  readonly label: string;
  readonly from: string;
  readonly to: string;
}

const HOW_MANY_ROWS = (rows: number) => (rows === 1 ? '1 row' : `${rows} rows`);

/** What was typed into a field as one text: rows of a table joined, a choice by its label. */
export function typedWords(field: FieldSpec, typed: Typed): string {
  if (typeof typed !== 'string') {
    const rows = typed.map((row) => row.filter(Boolean).join(' at '));
    return rows.length <= 4 ? rows.join('; ') : `${HOW_MANY_ROWS(rows.length)}: ${rows[0]} …`;
  }
  if (field.kind !== 'choice') return typed;
  return field.choices.find((choice) => choice.value === typed)?.label ?? typed;
}

/** Every input on which the candidate differs, in the order of the fields. */
export function changesOf(job: Job): Change[] {
  if (!job.candidate) return [];
  const found = resolve(job, 'asFound').values;
  const planned = resolve(job, 'candidate').values;
  return FIELD_GROUPS.flatMap(({ title, fields }) =>
    fields
      .filter(({ path }) => planned[path]?.changed)
      .map((field) => ({
        path: field.path,
        group: title,
        label: field.label,
        from: typedWords(field, found[field.path]!.text),
        to: typedWords(field, planned[field.path]!.text),
      })),
  );
}
