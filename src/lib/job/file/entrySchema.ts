/** Shape of what a job file says of its inputs, and of one candidate. */
import * as v from 'valibot';
import { LONGEST_TEXT } from './limits';
import { partsSchema } from './parts';
import { SPREADS } from '../entries';

const MOST_ROWS = 200;
const MOST_CELLS = 20;

const text = v.pipe(v.string(), v.maxLength(LONGEST_TEXT));
const row = v.pipe(v.array(text), v.maxLength(MOST_CELLS));
const typed = v.union([text, v.pipe(v.array(row), v.maxLength(MOST_ROWS))]);

const entry = v.looseObject({
  is: v.optional(typed),
  pm: v.optional(text),
  spread: v.optional(v.picklist(SPREADS)),
  k: v.optional(text),
  from: v.optional(text),
  draft: v.optional(typed),
  why: v.optional(text),
});

export const entriesSchema = v.record(text, entry);
export const candidateSchema = v.looseObject({
  name: text,
  changes: entriesSchema,
  parts: v.optional(partsSchema),
});
