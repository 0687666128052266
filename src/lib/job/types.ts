/** A job: one file that holds a vehicle's loop as found, candidate changes, and the words around them. */
import type { UnitSystem } from '$lib/units';
import type { FolderPlan, Revision } from './folder/folderRecord';
import type { LogRecord } from './log/logRecord';
import type { OwnLine, Photo } from './own/ownLines';
import type { Part } from './file/parts';

/** Version of the file format this program writes. */
export const FORMAT_VERSION = 3;

export type Paper = 'A4' | 'Letter';

/** The two states of the loop. */
export type SideId = 'asFound' | 'candidate';

export type Row = readonly string[];

/** What is typed into a field: one text (or the value of a choice), or the rows of a table. */
export type Typed = string | readonly Row[];

/** What the job knows about one field. Text as typed is the truth; SI values are derived. */
export interface Entry {
  /** Accepted. Without it the field uses its default. */
  readonly is?: Typed;
  /** Half width of the uncertainty, as typed. */
  readonly pm?: string;
  /** What kind of statement the ± is; absent: normal, the ± two standard deviations. */
  readonly spread?: Spread;
  /** Coverage factor of a calibration's ±, as typed; absent: 2. */
  readonly k?: string;
  /** Where the value came from. */
  readonly from?: string;
  /** Typed last but refused; kept so that nothing typed is lost. */
  readonly draft?: Typed;
  /** Why `draft` was refused. */
  readonly why?: string;
}

/** Kinds of a ±. `calibration` is a certificate's expanded uncertainty with its coverage factor. */
export const SPREADS = ['normal', 'interval', 'triangular', 'calibration'] as const;
export type Spread = (typeof SPREADS)[number];

export type Entries = Readonly<Record<string, Entry>>;

export const TITLE_KEYS = ['job', 'vehicle', 'customer', 'by', 'checkedBy', 'date'] as const;
export type TitleKey = (typeof TITLE_KEYS)[number];

export interface Header {
  readonly title: Readonly<Record<TitleKey, string>>;
  readonly units: UnitSystem;
  readonly paper: Paper;
  /** Said on every sheet of a job whose data are made up. */
  readonly invented?: string;
}

export interface Candidate {
  readonly name: string;
  /** Only what differs from the loop as found. */
  readonly changes: Entries;
  /** What must be bought or made for it; absent: nothing listed. */
  readonly parts?: readonly Part[];
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
