/**
 * What a job keeps of a log: which file, which columns, what was found. The rows stay in their file, and
 * the file is opened again for its curves. SI throughout; null where a number is not known.
 */
import * as v from 'valibot';

const text = v.pipe(v.string(), v.maxLength(400));
const number = v.pipe(v.number(), v.finite());
const known = v.nullable(number);
const list = <T extends v.GenericSchema>(item: T, most: number) =>
  v.pipe(v.array(item), v.maxLength(most));

const span = v.looseObject({ from: number, to: number });

/** A channel over a stretch: mean, standard deviation, number of readings. */
const level = v.looseObject({ mean: number, deviation: number, count: number });
const levels = v.record(text, level);

const change = v.looseObject({
  channel: text,
  kind: v.picklist(['drop', 'rise']),
  at: number,
  /** The change began within. */
  earliest: number,
  latest: number,
  before: number,
  after: number,
  /** Usual time between the channel's readings. */
  step: number,
});

const event = v.looseObject({
  changes: list(change, 12),
  /** Channel that moved first; null where the log cannot tell. */
  first: v.nullable(text),
  /** How much later the next began. */
  lead: v.nullable(v.tuple([number, number])),
  /** What every channel read afterwards. */
  after: levels,
});

const estimate = v.looseObject({
  name: text,
  value: number,
  deviation: known,
  low: known,
  high: known,
  /** What of the half width the instruments' own ± brings. */
  instruments: v.optional(known, null),
  /** As the job describes it. */
  entered: known,
});

/** What the fit of other stretches foretold of one. */
const trial = v.looseObject({
  from: number,
  to: number,
  /** Errors there over those where the fit saw the readings, and over the readings' own noise. */
  overSeen: number,
  overNoise: number,
  channels: list(v.looseObject({ channel: text, unseen: number, noise: number, count: number }), 8),
});
/** Once a single one, or none. */
const trials = v.pipe(
  v.nullable(v.union([list(trial, 40), trial])),
  v.transform((held) => (held === null ? [] : Array.isArray(held) ? held : [held])),
);

const fitted = v.looseObject({
  spans: list(span, 20),
  model: v.looseObject({
    charge: v.picklist(['heat', 'UA']),
    flow: v.picklist(['logged', 'sought']),
    speed: v.picklist(['logged', 'of the duty']),
  }),
  step: number,
  rows: number,
  estimates: list(estimate, 20),
  /** Means at which the conductances were found. */
  at: v.looseObject({
    liquidTemperature: number,
    ambient: number,
    flow: number,
    speed: number,
    frontAirRate: number,
    /** kg/s */
    chargeAirFlow: known,
  }),
  widened: number,
  channels: list(v.looseObject({ channel: text, rms: number, noise: number, count: number }), 8),
  /** What is left of each channel, thinned. */
  residuals: list(v.looseObject({ channel: text, t: list(number, 400), r: list(number, 400) }), 8),
  weak: list(v.looseObject({ parameters: list(text, 20), deviation: known }), 20),
  proposals: list(v.looseObject({ says: text, worst: known }), 8),
  heldOut: trials,
  notes: list(text, 40),
});

export const logSchema = v.looseObject({
  name: text,
  size: number,
  rows: number,
  /** First to last row, s. */
  duration: number,
  /** Said beside everything drawn from it. */
  invented: v.optional(v.boolean(), false),
  channels: list(v.looseObject({ channel: text, column: text, unit: text }), 40),
  notes: list(text, 60),
  marks: list(
    v.looseObject({ channel: text, outliers: number, stuck: number, beyond: number }),
    40,
  ),
  events: list(event, 40),
  /** Means over the spans worked on, and those spans; null until asked for. */
  means: v.nullable(v.looseObject({ spans: list(span, 20), levels })),
  fit: v.nullable(fitted),
  /** Why there is no fit. */
  refused: v.optional(v.nullable(text), null),
});

export type LogRecord = v.InferOutput<typeof logSchema>;
export type LogFit = NonNullable<LogRecord['fit']>;
export type LogLevels = NonNullable<LogRecord['means']>['levels'];
export type LogTrial = LogFit['heldOut'][number];
export type LogEventRecord = LogRecord['events'][number];
export type LogChange = LogEventRecord['changes'][number];
export type LogEstimate = LogFit['estimates'][number];
