/** States of the job that are kept, and what lies between two of them: inputs changed, results moved. */
import { showQuantity, type Quantity, type UnitSystem } from '$lib/units';
import { SI_UNIT } from '$lib/solver/quantity';
import { typedWords } from '../changes';
import { sameTyped } from '../check';
import { FIELD_GROUPS, type FieldSpec } from '../fields';
import { MOST_REVISIONS, type Revision, type RevisionResult } from './folderRecord';
import { LONGEST_NOTE, LONGEST_TEXT } from '../file/limits';
import { plusMinusText } from '../sure/halfWidths';
import { emptyJob, type Candidate, type Entries, type Job, type SideId } from '../types';
import { own, resolve, type Value } from '../values';

/** What is kept of a result. */
export type ResultKept = Pick<
  RevisionResult,
  'sheet' | 'id' | 'name' | 'side' | 'quantity' | 'value'
>;

/** What two states are compared by. */
export type JobStateKept = Pick<Revision, 'asFound' | 'candidate'> & {
  readonly results: readonly ResultKept[];
};

export interface RevisionWords {
  readonly date: string;
  readonly by: string;
  readonly note: string;
}

/** A, B … Z, AA, AB …: the mark after the last one. */
export function nextMark(revisions: readonly Revision[]): string {
  const last = revisions.at(-1)?.mark ?? '';
  if (!/^[A-Z]+$/.test(last)) return letters(revisions.length + 1);
  return letters([...last].reduce((n, letter) => n * 26 + letter.charCodeAt(0) - 64, 0) + 1);
}

function letters(n: number): string {
  const last = String.fromCharCode(65 + ((n - 1) % 26));
  return n <= 26 ? last : letters(Math.floor((n - 1) / 26)) + last;
}

export const isFull = (job: Job): boolean => job.revisions.length >= MOST_REVISIONS;

/** The inputs of `state` and the results that were worked out from them, kept under the next mark. */
export function keepRevision(
  job: Job,
  state: Job,
  words: RevisionWords,
  results: readonly ResultKept[],
): Job {
  if (isFull(job)) return job;
  const revision: Revision = {
    mark: nextMark(job.revisions),
    date: words.date.slice(0, LONGEST_TEXT),
    by: words.by.slice(0, LONGEST_TEXT),
    note: words.note.slice(0, LONGEST_NOTE),
    asFound: state.asFound,
    candidate: state.candidate,
    results: results.map(({ sheet, id, name, side, quantity, value }) => ({
      sheet,
      id,
      name,
      side,
      quantity,
      value,
    })),
  };
  return { ...job, revisions: [...job.revisions, revision] };
}

export const dropRevision = (job: Job, mark: string): Job => ({
  ...job,
  revisions: job.revisions.filter((revision) => revision.mark !== mark),
});

export interface InputChange {
  readonly path: string;
  readonly side: SideId;
  /** Heading under which the input stands. */
  readonly group: string;
  readonly label: string;
  readonly from: string;
  readonly to: string;
}

/** Inputs that differ between two states, in the order of the fields; those of the candidate after. */
export function inputChanges(
  before: JobStateKept,
  after: JobStateKept,
  units: UnitSystem,
): InputChange[] {
  const as = (state: JobStateKept, side: SideId) =>
    resolve({ ...emptyJob(units), asFound: state.asFound, candidate: state.candidate }, side)
      .values;
  const [was, is] = [as(before, 'asFound'), as(after, 'asFound')];
  const found = eachField((field) => {
    const [from, to] = [
      said(field, was[field.path]!, before.asFound),
      said(field, is[field.path]!, after.asFound),
    ];
    return { from, to, same: sameSaid(from, to) };
  }, 'asFound');

  const [a, b] = [before.candidate, after.candidate];
  const named = candidateWords(a) === candidateWords(b) ? [] : [nameRow(a, b)];
  if (!a || !b) return [...found, ...named];
  const [planned, replanned] = [as(before, 'candidate'), as(after, 'candidate')];
  const changes = eachField((field) => {
    const [from, to] = [
      planned[field.path]!.changed ? said(field, planned[field.path]!, a.changes) : AS_FOUND,
      replanned[field.path]!.changed ? said(field, replanned[field.path]!, b.changes) : AS_FOUND,
    ];
    return { from, to, same: from === to || sameSaid(from, to) };
  }, 'candidate');
  return [...found, ...named, ...changes];
}

interface Told {
  readonly words: string;
  readonly meaning: string;
}

const AS_FOUND: Told = { words: 'as found', meaning: 'as found' };

function eachField(
  compare: (field: FieldSpec) => { from: Told; to: Told; same: boolean },
  side: SideId,
): InputChange[] {
  return FIELD_GROUPS.flatMap(({ title, fields }) =>
    fields.flatMap((field) => {
      if (field.kind === 'text') return [];
      const { from, to, same } = compare(field);
      const { path, label } = field;
      return same ? [] : [{ path, side, group: title, label, from: from.words, to: to.words }];
    }),
  );
}

/** A value as its reader sees it, and what it means: `1 in` and `25.4 mm` are one meaning. */
function said(field: FieldSpec, value: Value, entries: Entries): Told {
  const { pm, spread, k } = own(entries, field.path) ?? {};
  const sure = pm
    ? [` ${plusMinusText(pm)}`, spread && `, ${spread}`, k && `, k = ${k}`].join('')
    : '';
  const text = sameTyped(value.text, '') ? 'not given' : typedWords(field, value.text);
  const { si, choice, rows } = value;
  return {
    words: `${text}${sure}${value.assumed ? ' (assumed)' : ''}`,
    meaning: JSON.stringify([si === undefined ? null : tidy(si), choice, rows?.map(tidyRow), sure]),
  };
}

const sameSaid = (a: Told, b: Told) => a.meaning === b.meaning;

/** Units typed differently meet again to twelve digits. */
const tidy = (x: number) => Number(x.toPrecision(12));
const tidyRow = (row: NonNullable<Value['rows']>[number]) =>
  Object.entries(row).map(([key, cell]) => [key, typeof cell === 'number' ? tidy(cell) : cell]);

const candidateWords = (candidate: Candidate | null): string =>
  candidate ? candidate.name || 'Candidate' : 'none';

const nameRow = (before: Candidate | null, after: Candidate | null): InputChange => ({
  path: 'candidate',
  side: 'candidate',
  group: 'Candidate',
  label: 'Name',
  from: candidateWords(before),
  to: candidateWords(after),
});

export interface MovedResult {
  readonly sheet: string;
  readonly id: string;
  readonly name: string;
  readonly side: SideId;
  readonly quantity: Quantity;
  /** SI; null where it did not exist. */
  readonly before: number | null;
  readonly after: number | null;
}

/** A share or a ratio this small is the rounding of a sum that should be nought. */
const NOUGHT = 1e-9;

function printOf(si: number | null, quantity: Quantity, system: UnitSystem): string {
  if (si === null) return 'no value';
  const nought = SI_UNIT[quantity] === '' && Math.abs(si) < NOUGHT;
  return showQuantity(nought ? 0 : si, quantity, system);
}

const isQuantity = (text: string): text is Quantity => Object.hasOwn(SI_UNIT, text);

/**
 * Results that moved by more than their print shows, in the order of `after`. What only one of the two
 * states worked out is no move; the same result on a second sheet is told once.
 */
export function movedResults(
  before: readonly ResultKept[],
  after: readonly ResultKept[],
  system: UnitSystem,
): MovedResult[] {
  const keyOf = ({ sheet, id, side }: ResultKept) => JSON.stringify([sheet, id, side]);
  const were = new Map(before.map((result) => [keyOf(result), result]));
  const told = new Set<string>();
  return after.flatMap((now) => {
    const was = were.get(keyOf(now));
    if (!was || !isQuantity(now.quantity) || was.quantity !== now.quantity) return [];
    const { sheet, id, name, side, quantity } = now;
    const print = (si: number | null) => printOf(si, quantity, system);
    const prints = [print(was.value), print(now.value)];
    const once = JSON.stringify([side, name, ...prints]);
    if (prints[0] === prints[1] || told.has(once)) return [];
    told.add(once);
    return [{ sheet, id, name, side, quantity, before: was.value, after: now.value }];
  });
}
