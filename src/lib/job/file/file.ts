/** Reading and writing the job file. */
import * as v from 'valibot';
import { FIELDS } from '../fields';
import { migrate } from './migrations';
import { jobSchema, type JobFile } from './schema';
import {
  FORMAT_VERSION,
  TITLE_KEYS,
  type Candidate,
  type Entries,
  type Entry,
  type Job,
} from '../types';

export type ReadCode =
  | 'empty'
  | 'too-large'
  | 'truncated'
  | 'not-json'
  | 'not-a-job'
  | 'newer-version'
  | 'forbidden-key'
  | 'wrong-shape';

export type ReadResult =
  | { readonly ok: true; readonly job: Job; readonly notes: readonly string[] }
  | { readonly ok: false; readonly code: ReadCode; readonly message: string };

/** A job is tens of kilobytes and its photographs; beyond this it is something else. */
const LARGEST_FILE = 40_000_000;
const DEEPEST = 12;
const FORBIDDEN = new Set(['__proto__', 'constructor', 'prototype']);

/** Read the text of a job file. Never throws. */
export function readJob(text: string): ReadResult {
  const refuse = (code: ReadCode, message: string): ReadResult => ({ ok: false, code, message });
  if (text.length > LARGEST_FILE)
    return refuse('too-large', 'The file is larger than 40 MB: not a job file.');
  const trimmed = text.replace(/^\uFEFF/, '').trim();
  if (trimmed === '') return refuse('empty', 'The file is empty.');

  let raw: unknown;
  try {
    raw = JSON.parse(trimmed);
  } catch {
    return trimmed.startsWith('{') && isCutShort(trimmed)
      ? refuse(
          'truncated',
          'The file breaks off before its end: it was cut short in copying or saving.',
        )
      : refuse('not-json', 'This is not a job file: it is not JSON.');
  }
  if (!isRecord(raw) || !('soakline' in raw)) {
    return refuse('not-a-job', 'This is JSON, but not a job file: it lacks the mark "soakline".');
  }
  const version = raw.soakline;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    return refuse('not-a-job', 'The version of the file is not a whole number from 1.');
  }
  if (version > FORMAT_VERSION) {
    return refuse(
      'newer-version',
      `The file was written by a newer version (format ${version}; this one reads up to ${FORMAT_VERSION}).`,
    );
  }
  const bad = badKey(raw);
  if (bad) return refuse('forbidden-key', bad);

  const parsed = v.safeParse(jobSchema, migrate(raw, version));
  if (!parsed.success) {
    const issue = parsed.issues[0];
    const path = v.getDotPath(issue) ?? 'the file';
    return refuse('wrong-shape', `The file has the wrong shape at ${path}: ${issue.message}.`);
  }
  const job = jobOf(parsed.output);
  return { ok: true, job, notes: unknownParts(job) };
}

/** The text of a job file: stable order of keys, so that two versions can be compared line by line. */
export function writeJob(job: Job): string {
  const { header, asFound, candidate, aside, log, notes, folder, other } = job;
  const file = {
    soakline: FORMAT_VERSION,
    header: {
      title: Object.fromEntries(TITLE_KEYS.map((key) => [key, header.title[key]])),
      units: header.units,
      paper: header.paper,
      ...(header.invented === undefined ? {} : { invented: header.invented }),
    },
    asFound: ordered(asFound),
    candidate: candidate && written(candidate),
    aside: aside.map(written),
    ...(log === undefined ? {} : { log }),
    notes: byKey(notes),
    own: byKey(job.own),
    photos: byKey(job.photos),
    ...(folder === undefined ? {} : { folder }),
    revisions: job.revisions.map((revision) => ({
      ...revision,
      asFound: ordered(revision.asFound),
      candidate: revision.candidate && written(revision.candidate),
    })),
    ...other,
  };
  return `${JSON.stringify(file, null, 1)}\n`;
}

const written = ({ name, changes, parts }: Candidate) => ({
  name,
  changes: ordered(changes),
  ...(parts === undefined ? {} : { parts }),
});

const byKey = <T>(record: Readonly<Record<string, T>>): Record<string, T> =>
  Object.fromEntries(Object.entries(record).sort(([a], [b]) => (a < b ? -1 : 1)));

const ENTRY_KEYS = ['is', 'pm', 'spread', 'k', 'from', 'draft', 'why'] as const;
const KNOWN_PARTS = new Set([
  'soakline',
  'header',
  'asFound',
  'candidate',
  'aside',
  'log',
  'notes',
  'own',
  'photos',
  'folder',
  'revisions',
]);

function jobOf(file: JobFile): Job {
  const { header, candidate, aside, log, folder } = file;
  const read = ({ name, changes, parts }: JobFile['aside'][number]): Candidate => ({
    name,
    changes: changes as Entries,
    ...(parts === undefined ? {} : { parts }),
  });
  const other = Object.fromEntries(Object.entries(file).filter(([key]) => !KNOWN_PARTS.has(key)));
  return {
    header: {
      title: Object.fromEntries(
        TITLE_KEYS.map((key) => [key, header.title[key] ?? '']),
      ) as Job['header']['title'],
      units: header.units,
      paper: header.paper,
      ...(header.invented === undefined ? {} : { invented: header.invented }),
    },
    asFound: file.asFound as Entries,
    candidate: candidate && read(candidate),
    aside: aside.map(read),
    ...(log === undefined ? {} : { log }),
    notes: file.notes,
    own: file.own,
    photos: file.photos,
    ...(folder === undefined ? {} : { folder }),
    revisions: file.revisions.map((revision) => ({
      ...revision,
      asFound: revision.asFound as Entries,
      candidate: revision.candidate && read(revision.candidate),
    })),
    other,
  };
}

/** Fields in the order of the list of inputs, then the unknown ones by name. */
function ordered(entries: Entries): Record<string, Entry> {
  const order = [...FIELDS.keys()].filter((path) => Object.hasOwn(entries, path));
  const unknown = Object.keys(entries)
    .filter((path) => !FIELDS.has(path))
    .sort();
  return Object.fromEntries(
    [...order, ...unknown].map((path) => [path, tidyEntry(entries[path]!)]),
  );
}

function tidyEntry(entry: Entry): Entry {
  const known = ENTRY_KEYS.filter((key) => entry[key] !== undefined).map((key) => [
    key,
    entry[key],
  ]);
  const rest = Object.entries(entry).filter(([key]) => !ENTRY_KEYS.some((k) => k === key));
  return Object.fromEntries([...known, ...rest]);
}

function unknownParts(job: Job): string[] {
  const planned = [...(job.candidate ? [job.candidate] : []), ...job.aside];
  const paths = [job.asFound, ...planned.map(({ changes }) => changes)].flatMap(Object.keys);
  const unknown = [
    ...new Set(paths.filter((path) => !FIELDS.has(path))),
    ...Object.keys(job.other),
  ];
  return unknown.map((name) => `“${name}” is not known to this version; it is kept as it is.`);
}

const isRecord = (x: unknown): x is Record<string, unknown> =>
  typeof x === 'object' && x !== null && !Array.isArray(x);

/** Brackets still open at the end, or a text that was never closed. */
function isCutShort(text: string): boolean {
  let depth = 0;
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const c = text[i];
    if (quoted) {
      if (c === '\\') i++;
      else if (c === '"') quoted = false;
    } else if (c === '"') quoted = true;
    else if (c === '{' || c === '[') depth++;
    else if (c === '}' || c === ']') depth--;
  }
  return quoted || depth > 0;
}

/** Keys that could reach an object's prototype, and nesting no job has; checked without recursion. */
function badKey(root: unknown): string | null {
  const open: { value: unknown; depth: number }[] = [{ value: root, depth: 0 }];
  for (let next = open.pop(); next; next = open.pop()) {
    const { value, depth } = next;
    if (typeof value !== 'object' || value === null) continue;
    if (depth > DEEPEST) return 'The file is nested too deep to be a job.';
    for (const key of Object.keys(value)) {
      if (FORBIDDEN.has(key)) return `The file holds the key “${key}”, which no job may hold.`;
      open.push({ value: (value as Record<string, unknown>)[key], depth: depth + 1 });
    }
  }
  return null;
}
