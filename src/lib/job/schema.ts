/** Shape of a job file. Whatever is not named here is kept, never guessed at. */
import * as v from 'valibot';
import { logSchema } from './logRecord';
import { TITLE_KEYS } from './types';

const LONGEST_TEXT = 400;
const LONGEST_NOTE = 20_000;
const MOST_ROWS = 200;
const MOST_CELLS = 20;
export const MOST_ASIDE = 40;

const text = v.pipe(v.string(), v.maxLength(LONGEST_TEXT));
const row = v.pipe(v.array(text), v.maxLength(MOST_CELLS));
const typed = v.union([text, v.pipe(v.array(row), v.maxLength(MOST_ROWS))]);

const entry = v.looseObject({
  is: v.optional(typed),
  pm: v.optional(text),
  from: v.optional(text),
  draft: v.optional(typed),
  why: v.optional(text),
});
const entries = v.record(text, entry);

const candidate = v.looseObject({ name: text, changes: entries });

const titleShape = Object.fromEntries(
  TITLE_KEYS.map((key) => [key, v.optional(text, '')]),
) as Record<(typeof TITLE_KEYS)[number], v.OptionalSchema<typeof text, ''>>;

export const jobSchema = v.looseObject({
  soakline: v.literal(2),
  header: v.looseObject({
    title: v.optional(v.looseObject(titleShape), {}),
    units: v.picklist(['US', 'SI']),
    paper: v.picklist(['A4', 'Letter']),
    invented: v.optional(text),
  }),
  asFound: entries,
  candidate: v.nullable(candidate),
  aside: v.optional(v.pipe(v.array(candidate), v.maxLength(MOST_ASIDE)), []),
  log: v.optional(logSchema),
  notes: v.optional(v.record(text, v.pipe(v.string(), v.maxLength(LONGEST_NOTE))), {}),
});

export type JobFile = v.InferOutput<typeof jobSchema>;
