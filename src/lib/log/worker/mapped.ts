/** A log as channels on one time, and long work on it. */
import type { LogChannel } from '../channels';
import type { Marks } from '../marks';
import type { TimeAxis } from '../timeAxis';

export interface Channel {
  /** SI, at the rows of the axis. */
  readonly values: Float64Array;
  readonly marks: Marks;
}

/** What is searched for events. */
export interface Searched {
  readonly axis: Pick<TimeAxis, 't'>;
  readonly channels: ReadonlyMap<LogChannel, Channel>;
}

/** Long work in steps, so that its thread can tell of them and be stopped between two. */
export type Steps<T> = Generator<{ readonly done: number; readonly of: number }, T, void>;
