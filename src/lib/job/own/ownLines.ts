/** Lines the reader adds to a sheet: words, photographs, calculations over the sheet's symbols. */
import * as v from 'valibot';
import { LONGEST_NOTE, LONGEST_TEXT } from '../file/limits';

/** On one sheet. */
export const MOST_LINES = 60;
export const MOST_PHOTOS = 60;
/** Base64 of a scaled photograph; a larger one was not scaled by this program. */
export const LARGEST_PHOTO = 1_500_000;

const text = v.pipe(v.string(), v.maxLength(LONGEST_TEXT));
const note = v.pipe(v.string(), v.maxLength(LONGEST_NOTE));

const ownLine = v.variant('kind', [
  v.looseObject({ id: text, kind: v.literal('text'), text: note }),
  /** `photo` is a key of the job's photographs. */
  v.looseObject({ id: text, kind: v.literal('photo'), photo: text, caption: text }),
  v.looseObject({
    id: text,
    kind: v.literal('calculation'),
    /** What it works out, in words. */
    statement: text,
    /** Symbol under which later lines can use it; may be empty. */
    symbol: text,
    expression: text,
    /** Unit in which the result is wanted; empty: the natural one. */
    unit: text,
  }),
]);

const photo = v.looseObject({
  type: v.picklist(['image/jpeg', 'image/png', 'image/webp']),
  width: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(8192)),
  height: v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(8192)),
  /** Base64. */
  data: v.pipe(v.string(), v.maxLength(LARGEST_PHOTO), v.base64()),
});

export const ownSchema = v.record(text, v.pipe(v.array(ownLine), v.maxLength(MOST_LINES)));
export const photosSchema = v.pipe(
  v.record(text, photo),
  v.check((photos) => Object.keys(photos).length <= MOST_PHOTOS, `at most ${MOST_PHOTOS} photos`),
);

export type OwnLine = Readonly<v.InferOutput<typeof ownLine>>;
export type Photo = Readonly<v.InferOutput<typeof photo>>;
