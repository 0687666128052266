/**
 * Keeps jobs in the browser, written at every edit and in one step, so that a crash loses nothing.
 * Each job carries a revision: whoever saves must know the latest, so a second tab cannot overwrite.
 * Photographs are not in it: see photoShelf.ts; nor are its kept states: see revisionKeep.ts.
 */
import type { Shelf } from './shelf';
import { readJob, writeJob } from './file';
import { RevisionKeep, withoutRevisions } from './revisionKeep';
import { withoutPhotos } from '../own/photoKeep';
import type { Job } from '../types';

export type { Shelf };

/** What a list of jobs shows. */
export interface JobCard {
  readonly id: string;
  readonly job: string;
  readonly vehicle: string;
  /** Milliseconds since 1970. */
  readonly saved: number;
  readonly revision: number;
}

export interface Loaded {
  readonly ok: true;
  readonly job: Job;
  readonly revision: number;
  readonly notes: readonly string[];
}

export type LoadResult =
  Loaded | { readonly ok: false; readonly code: 'missing' | 'damaged'; readonly message: string };

export type SaveResult =
  | { readonly ok: true; readonly revision: number }
  /** Another tab saved first: take its job, then edit that. */
  | { readonly ok: false; readonly code: 'newer'; readonly newer: Loaded }
  | { readonly ok: false; readonly code: 'full' | 'unavailable'; readonly message: string };

export interface JobStore {
  list(): JobCard[];
  current(): string | null;
  setCurrent(id: string): void;
  load(id: string): LoadResult;
  /** Save what was edited from `revision` (0 for a new job). */
  save(id: string, job: Job, revision: number): SaveResult;
  remove(id: string): void;
  newId(): string;
}

const JOB = 'soakline.job.';
const ASIDE = 'soakline.aside.';
const CURRENT = 'soakline.current';

interface Stored {
  readonly revision: number;
  readonly saved: number;
  readonly file: string;
  /** Marks of the states kept beside it; absent where the file holds them itself. */
  readonly revisions?: readonly string[];
}

/** A store of jobs on a shelf. `now` is a parameter so that tests can fix the time. */
export function jobStore(shelf: Shelf, now: () => number = Date.now): JobStore {
  /** What was written last: the open job, found unchanged at nearly every edit. */
  let latest: { readonly text: string; readonly stored: Stored } | null = null;
  const states = new RevisionKeep(shelf);
  const read = (id: string): Stored | 'missing' | 'damaged' => {
    const text = shelf.getItem(JOB + id);
    if (text === null) return 'missing';
    if (text === latest?.text) return latest.stored;
    return parseStored(text) ?? 'damaged';
  };

  /** A damaged job is never deleted: it is put under another key, whole, and left for rescue. */
  const setAside = (id: string): string => {
    const key = `${ASIDE}${id}.${now()}`;
    const text = shelf.getItem(JOB + id)!;
    try {
      shelf.setItem(key, text);
    } catch {
      return JOB + id; // No room for a second copy: it stays where it is.
    }
    shelf.removeItem(JOB + id);
    return key;
  };

  const load = (id: string): LoadResult => {
    const stored = read(id);
    if (stored === 'missing')
      return { ok: false, code: 'missing', message: 'This job is no longer kept here.' };
    const result = stored === 'damaged' ? null : readJob(stored.file);
    if (stored !== 'damaged' && result?.ok) {
      const { job, notes } = result;
      const kept = states.read(id, stored.revisions ?? []);
      return {
        ok: true,
        job: stored.revisions ? { ...job, revisions: kept.revisions } : job,
        revision: stored.revision,
        notes: [...notes, ...kept.notes],
      };
    }
    const reason = result && !result.ok ? ` ${result.message}` : '';
    return {
      ok: false,
      code: 'damaged',
      message: `The job kept here could not be read.${reason} It was set aside unchanged as ${setAside(id)}.`,
    };
  };

  return {
    load,
    list() {
      const cards: JobCard[] = [];
      for (const key of keysOf(shelf)) {
        if (!key.startsWith(JOB)) continue;
        const id = key.slice(JOB.length);
        const stored = read(id);
        if (typeof stored === 'string') continue;
        const result = readJob(stored.file);
        if (!result.ok) continue;
        const { job, vehicle } = result.job.header.title;
        cards.push({ id, job, vehicle, saved: stored.saved, revision: stored.revision });
      }
      return cards.sort((a, b) => b.saved - a.saved);
    },
    current: () => shelf.getItem(CURRENT),
    setCurrent(id) {
      try {
        shelf.setItem(CURRENT, id);
      } catch {
        // Which job was open last is a convenience; the job itself is saved apart.
      }
    },
    save(id, job, revision) {
      const stored = read(id);
      if (typeof stored !== 'string' && stored.revision > revision) {
        const newer = load(id);
        if (newer.ok) return { ok: false, code: 'newer', newer };
      }
      if (stored === 'damaged') setAside(id);
      const next = revision + 1;
      const marks = job.revisions.map(({ mark }) => mark);
      const record: Stored = {
        revision: next,
        saved: now(),
        file: writeJob(withoutRevisions(withoutPhotos(job))),
        revisions: marks,
      };
      const text = JSON.stringify(record);
      try {
        // The job names them, so they are there before it.
        states.write(id, job.revisions);
        shelf.setItem(JOB + id, text);
        latest = { text, stored: record };
        states.sweep(id, marks);
        return { ok: true, revision: next };
      } catch (thrown) {
        return isQuota(thrown)
          ? {
              ok: false,
              code: 'full',
              message: 'The browser has no room left for this job: save it as a file.',
            }
          : {
              ok: false,
              code: 'unavailable',
              message: 'The browser does not keep jobs here: save it as a file.',
            };
      }
    },
    remove(id) {
      const stored = read(id);
      shelf.removeItem(JOB + id);
      states.remove(id, typeof stored === 'string' ? [] : (stored.revisions ?? []));
    },
    newId() {
      for (let n = 1; ; n++) {
        const id = `${now().toString(36)}-${n}`;
        if (shelf.getItem(JOB + id) === null) return id;
      }
    },
  };
}

/** The job a storage event of another tab is about; null when it is about something else. */
export const jobIdOfKey = (key: string | null): string | null =>
  key?.startsWith(JOB) ? key.slice(JOB.length) : null;

function parseStored(text: string): Stored | null {
  try {
    const raw = JSON.parse(text) as Partial<Stored> | null;
    const whole = typeof raw?.revision === 'number' && typeof raw.file === 'string';
    if (!whole) return null;
    const marks = raw.revisions;
    return {
      revision: raw.revision!,
      saved: Number(raw.saved) || 0,
      file: raw.file!,
      ...(Array.isArray(marks) && { revisions: marks.map(String) }),
    };
  } catch {
    return null;
  }
}

function keysOf(shelf: Shelf): string[] {
  const keys: string[] = [];
  for (let i = 0; i < shelf.length; i++) keys.push(shelf.key(i)!);
  return keys;
}

/** Browsers name a full store differently. */
const isQuota = (thrown: unknown) =>
  thrown instanceof Error && /quota/i.test(`${thrown.name} ${thrown.message}`);

/** A shelf that lasts as long as the page: for tests, and where the browser keeps nothing. */
export function memoryShelf(): Shelf {
  const map = new Map<string, string>();
  return {
    get length() {
      return map.size;
    },
    key: (i) => [...map.keys()][i] ?? null,
    getItem: (key) => map.get(key) ?? null,
    setItem: (key, value) => void map.set(key, value),
    removeItem: (key) => void map.delete(key),
  };
}
