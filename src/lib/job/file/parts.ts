/** What must be bought or made for a candidate: the parts list, its price and its mass. */
import * as v from 'valibot';
import { LONGEST_TEXT } from './limits';

export const MOST_PARTS = 60;
const text = v.pipe(v.string(), v.maxLength(LONGEST_TEXT));

/** One row as typed. Price and masses are for one piece; an empty price or mass is not known. */
const part = v.looseObject({
  what: text,
  /** Pieces, or a quantity with its unit such as 12 ft. */
  count: text,
  price: text,
  mass: text,
  /** Mass of what one of them replaces and takes off; absent or empty: nothing comes off. */
  off: v.optional(text),
  from: v.optional(text),
  /** Kind of change it serves, by the id of a kind; absent: the candidate as a whole. */
  kind: v.optional(text),
});

export const partsSchema = v.pipe(v.array(part), v.maxLength(MOST_PARTS));

export type Part = Readonly<v.InferOutput<typeof part>>;
