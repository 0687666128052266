/** How the job folder is put together, and the states of the job that were kept. */
import * as v from 'valibot';
import { candidateSchema, entriesSchema } from '../file/entrySchema';
import { LONGEST_NOTE, LONGEST_TEXT } from '../file/limits';
import type { Candidate, Entries } from '../entries';

const MOST_SHEETS = 60;
export const MOST_REVISIONS = 40;
const MOST_RESULTS = 2000;

const text = v.pipe(v.string(), v.maxLength(LONGEST_TEXT));
const note = v.pipe(v.string(), v.maxLength(LONGEST_NOTE));

export const folderSchema = v.looseObject({
  /** Slugs of the sheets in the folder, in the order wanted; absent: every sheet in its usual order. */
  sheets: v.optional(v.pipe(v.array(text), v.maxLength(MOST_SHEETS))),
  /** Cover, in the reader's own words: what was found, and what was decided. */
  findings: v.optional(note, ''),
  decisions: v.optional(note, ''),
});

const result = v.looseObject({
  sheet: text,
  id: text,
  name: text,
  side: v.picklist(['asFound', 'candidate']),
  quantity: text,
  /** SI. */
  value: v.nullable(v.number()),
});

const revision = v.looseObject({
  mark: text,
  date: text,
  by: text,
  note,
  asFound: entriesSchema,
  candidate: v.nullable(candidateSchema),
  results: v.pipe(v.array(result), v.maxLength(MOST_RESULTS)),
});

export const revisionsSchema = v.pipe(v.array(revision), v.maxLength(MOST_REVISIONS));

export type FolderPlan = Readonly<v.InferOutput<typeof folderSchema>>;
export type RevisionResult = Readonly<v.InferOutput<typeof result>>;
export interface Revision {
  readonly mark: string;
  readonly date: string;
  readonly by: string;
  readonly note: string;
  readonly asFound: Entries;
  readonly candidate: Candidate | null;
  readonly results: readonly RevisionResult[];
}
