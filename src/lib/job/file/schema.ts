/** Shape of a job file. Whatever is not named here is kept, never guessed at. */
import * as v from 'valibot';
import { candidateSchema, entriesSchema } from './entrySchema';
import { folderSchema, revisionsSchema } from '../folder/folderRecord';
import { LONGEST_NOTE, LONGEST_TEXT } from './limits';
import { logSchema } from '../log/logRecord';
import { ownSchema, photosSchema } from '../own/ownLines';
import { TITLE_KEYS } from '../types';

export const MOST_ASIDE = 40;

const text = v.pipe(v.string(), v.maxLength(LONGEST_TEXT));

const titleShape = Object.fromEntries(
  TITLE_KEYS.map((key) => [key, v.optional(text, '')]),
) as Record<(typeof TITLE_KEYS)[number], v.OptionalSchema<typeof text, ''>>;

export const jobSchema = v.looseObject({
  soakline: v.literal(3),
  header: v.looseObject({
    title: v.optional(v.looseObject(titleShape), {}),
    units: v.picklist(['US', 'SI']),
    paper: v.picklist(['A4', 'Letter']),
    invented: v.optional(text),
  }),
  asFound: entriesSchema,
  candidate: v.nullable(candidateSchema),
  aside: v.optional(v.pipe(v.array(candidateSchema), v.maxLength(MOST_ASIDE)), []),
  log: v.optional(logSchema),
  notes: v.optional(v.record(text, v.pipe(v.string(), v.maxLength(LONGEST_NOTE))), {}),
  own: v.optional(ownSchema, {}),
  photos: v.optional(photosSchema, {}),
  folder: v.optional(folderSchema),
  revisions: v.optional(revisionsSchema, []),
});

export type JobFile = v.InferOutput<typeof jobSchema>;
