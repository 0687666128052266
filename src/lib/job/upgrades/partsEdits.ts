/** Edits of the candidate's parts list. Each returns a new job; what is typed is kept, read or not. */
import { MOST_PARTS, type Part } from '../file/parts';
import { PART_NUMBERS, readPart, type PartNumber } from './partsList';
import type { Job } from '../types';

export type PartColumn = PartNumber | 'what' | 'from' | 'kind';

const BLANK: Part = { what: '', count: '', price: '', mass: '' };

/** Type into one cell. A number without a unit gets the one assumed, so that it means the same in either system. */
export function setPart(job: Job, row: number, column: PartColumn, text: string): Job {
  const parts = job.candidate?.parts ?? [];
  const before = parts[row];
  if (!before) return job;
  const number = PART_NUMBERS.find((key) => key === column);
  const cell = number && readPart(number, text, job.header.units);
  const typed = cell?.ok ? cell.typed : text;
  const { [column]: _old, ...rest } = before;
  const optional = (column === 'from' || column === 'kind' || column === 'off') && typed === '';
  const after = (optional ? rest : { ...rest, [column]: typed }) as Part;
  return withParts(job, parts.with(row, after));
}

/** A blank row at `index`. */
export function addPart(job: Job, index: number): Job {
  const parts = job.candidate?.parts ?? [];
  if (parts.length >= MOST_PARTS) return job;
  return withParts(job, parts.toSpliced(index, 0, BLANK));
}

export const removePart = (job: Job, index: number): Job =>
  withParts(job, (job.candidate?.parts ?? []).toSpliced(index, 1));

function withParts(job: Job, parts: readonly Part[]): Job {
  if (!job.candidate) return job;
  const { parts: _before, ...rest } = job.candidate;
  return { ...job, candidate: parts.length > 0 ? { ...rest, parts } : rest };
}
