/** A job: one file that holds a vehicle's loop as found, candidate changes, and the words around them. */
import type { UnitSystem } from '$lib/units';
import type { Candidate, Entries } from './entries';
import type { FolderPlan, Revision } from './folder/folderRecord';
import type { LogRecord } from './log/logRecord';
import type { OwnLine, Photo } from './own/ownLines';

export * from './entries';

/** Version of the file format this program writes. */
export const FORMAT_VERSION = 3;

export type Paper = 'A4' | 'Letter';

/** The two states of the loop. */
export type SideId = 'asFound' | 'candidate';

export const TITLE_KEYS = ['job', 'vehicle', 'customer', 'by', 'checkedBy', 'date'] as const;
export type TitleKey = (typeof TITLE_KEYS)[number];

export interface Header {
  readonly title: Readonly<Record<TitleKey, string>>;
  readonly units: UnitSystem;
  readonly paper: Paper;
  /** Said on every sheet of a job whose data are made up. */
  readonly invented?: string;
}

export interface Job {
  readonly header: Header;
  readonly asFound: Entries;
  /** The one that stands beside the loop as found on every sheet. */
  readonly candidate: Candidate | null;
  /** Candidates put aside, in the order they were. */
  readonly aside: readonly Candidate[];
  /** What was found in a log; its rows stay in their own file. */
  readonly log?: LogRecord;
  /** Free words, by sheet or under `job`. */
  readonly notes: Readonly<Record<string, string>>;
  /** Lines the reader added, by sheet. */
  readonly own: Readonly<Record<string, readonly OwnLine[]>>;
  /** Photographs that the lines show, by their id. */
  readonly photos: Readonly<Record<string, Photo>>;
  /** How the folder is put together; absent: every sheet in its order. */
  readonly folder?: FolderPlan;
  /** States of the job that were kept, oldest first. */
  readonly revisions: readonly Revision[];
  /** Parts of the file this version does not know: kept and written back. */
  readonly other: Readonly<Record<string, unknown>>;
}

/** Something wrong at a field. */
export interface Problem {
  readonly path: string;
  readonly message: string;
}

/** A result, or why there is none. */
export type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problem: OutcomeProblem };

export interface OutcomeProblem {
  readonly code: string;
  readonly message: string;
  readonly path?: string;
}

/** A job with nothing entered. */
export function emptyJob(units: UnitSystem = 'US'): Job {
  const title = { job: '', vehicle: '', customer: '', by: '', checkedBy: '', date: '' };
  const paper = units === 'US' ? 'Letter' : 'A4';
  return {
    header: { title, units, paper },
    asFound: {},
    candidate: null,
    aside: [],
    notes: {},
    own: {},
    photos: {},
    revisions: [],
    other: {},
  };
}
