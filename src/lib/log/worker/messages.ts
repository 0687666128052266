/** What passes between the page and the thread that holds the log. */
import type { LogChannel } from '../channels';
import type { LogFacts, LogNote, LogProblem } from '../errors';
import type { EventGroup } from '../groups';

/** One column as read. */
export interface ColumnCard {
  /** Heading as written, and its unit. */
  readonly text: string;
  readonly name: string;
  readonly unit: string;
  readonly isTime: boolean;
  readonly holdsNumbers: boolean;
  readonly gaps: number;
  /** The first few numbers. */
  readonly sample: readonly number[];
}

/** Which column is which channel, in which unit. */
export interface Assigned {
  readonly channel: LogChannel;
  readonly column: number;
  readonly unit: string;
}

export interface OpenedLog {
  readonly name: string;
  readonly size: number;
  readonly rows: number;
  readonly columns: readonly ColumnCard[];
  readonly guesses: readonly (Omit<Assigned, 'unit'> & {
    readonly unit: string | null;
    readonly confidence: number;
  })[];
  readonly notes: readonly LogNote[];
}

export interface ChannelCard {
  readonly channel: LogChannel;
  readonly low: number;
  readonly high: number;
  readonly outliers: number;
  readonly beyond: number;
  /** Times between which it stands still, s. */
  readonly stuck: readonly (readonly [from: number, to: number])[];
  /** The first few outliers: time and reading. */
  readonly wild: readonly (readonly [t: number, x: number])[];
}

export interface MappedLog {
  readonly duration: number;
  readonly step: number;
  readonly channels: readonly ChannelCard[];
  readonly notes: readonly LogNote[];
}

/** A channel thinned for the eye. */
export interface Seen {
  readonly channel: LogChannel;
  readonly t: Float64Array;
  readonly x: Float64Array;
  /** Sum of MARK at each reading. */
  readonly flags: Uint8Array;
}

/** Mean, standard deviation and number of readings. */
export interface Level {
  readonly mean: number;
  readonly deviation: number;
  readonly count: number;
}
export type Levels = Partial<Record<LogChannel, Level>>;

export interface FoundEvent extends EventGroup {
  /** What every channel read afterwards. */
  readonly after: Levels;
}

export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** Channels at one pace over a stretch; NaN where nothing was read. */
export interface Paced {
  readonly t: Float64Array;
  readonly channels: Readonly<Partial<Record<LogChannel, Float64Array>>>;
  /** Means over the spans, each reading counted once. */
  readonly levels: Levels;
}

/** Each question with its answer. */
export interface Talk {
  open: {
    /** `size` as the file claims it. */
    ask: { file: Blob; name: string; size: number; withoutHeader: boolean };
    answer: OpenedLog;
  };
  map: { ask: { assigned: readonly Assigned[] }; answer: MappedLog };
  view: { ask: { from: number; to: number; pixels: number }; answer: readonly Seen[] };
  events: { ask: Record<never, never>; answer: readonly FoundEvent[] };
  pace: {
    ask: { spans: readonly Stretch[]; most: number; leaveOutMarked: boolean };
    answer: Paced;
  };
}
export type TalkName = keyof Talk;

export type Question = {
  [K in TalkName]: { readonly id: number; readonly kind: K; readonly ask: Talk[K]['ask'] };
}[TalkName];
export interface Stop {
  readonly id: number;
  readonly kind: 'stop';
}

export interface Failure {
  readonly code: LogProblem | 'fault';
  readonly message: string;
  readonly facts: LogFacts;
}

export type Answer =
  | {
      readonly id: number;
      readonly kind: 'progress';
      /** Bytes and rows while a file is read; else steps, and how many there are. */
      readonly done: number;
      readonly of: number;
    }
  | { readonly id: number; readonly kind: 'done'; readonly value: unknown }
  | { readonly id: number; readonly kind: 'failed'; readonly failure: Failure };
