/** Changes to a job. Each returns a new job; nothing typed is ever lost. */
import { checkTyped, copyTyped, sameTyped } from './check';
import { evaluate } from './evaluate';
import { FIELDS } from './fields';
import type { LogRecord } from './log/logRecord';
import { MOST_ASIDE } from './file/schema';
import type {
  Candidate,
  Entries,
  Entry,
  Job,
  OutcomeProblem,
  SideId,
  TitleKey,
  Typed,
} from './types';
import { checkPlusMinus } from './sure/halfWidths';
import { contextOf, own, resolve } from './values';

export interface Edited {
  readonly job: Job;
  /** Why the text was not accepted; it is kept as a draft. */
  readonly problem?: string;
  /** What the person must be told although it was: a unit assumed, a dash size interpreted. */
  readonly note?: string;
}

/**
 * Take what was typed into a field. Accepted: it becomes the value, and texts refused before are tried
 * again. Refused: the last accepted value stays, and the text is kept beside it with the reason.
 */
export function applyEdit(job: Job, side: SideId, path: string, typed: Typed): Edited {
  // An empty blank of the candidate means: as found.
  if (side === 'candidate' && typed === '') return clearField(job, side, path);
  const edited = tryEdit(job, side, path, typed);
  return edited.problem === undefined ? { ...edited, job: retryDrafts(edited.job) } : edited;
}

function tryEdit(job: Job, side: SideId, path: string, typed: Typed): Edited {
  const field = FIELDS.get(path);
  if (!field) return { job, problem: `There is no input called “${path}”.` };
  const checked = checkTyped(field, typed, contextOf(job, side));
  if (field.kind === 'text') {
    if (!checked.ok) return { job, problem: checked.message };
    return { job: setTitle(job, path.slice('title.'.length) as TitleKey, typed as string) };
  }
  if (!checked.ok) return refused(job, side, path, typed, checked.message);

  const accepted = withEntry(job, side, path, { is: copyTyped(checked.typed) });
  const fault = newFault(job, accepted);
  if (fault) return refused(job, side, path, typed, fault.message);
  return { job: accepted, ...(checked.note ? { note: checked.note } : {}) };
}

function refused(job: Job, side: SideId, path: string, typed: Typed, why: string): Edited {
  const next = withEntry(job, side, path, { draft: copyTyped(typed), why });
  return { job: next, problem: why };
}

/** A contradiction that `after` has and `before` had not, on either side. */
function newFault(before: Job, after: Job): OutcomeProblem | undefined {
  const was = evaluate(before);
  const is = evaluate(after);
  if (is.asFound.problem && !was.asFound.problem) return is.asFound.problem;
  const candidate = is.candidate?.problem;
  if (candidate && !was.candidate?.problem) {
    return { ...candidate, message: `In the candidate: ${candidate.message}` };
  }
  return undefined;
}

/** Try every refused text again, as often as one of them goes in. */
export function retryDrafts(job: Job): Job {
  let current = job;
  for (let progress = true; progress;) {
    progress = false;
    for (const side of ['asFound', 'candidate'] as const) {
      for (const [path, entry] of Object.entries(entriesOf(current, side))) {
        if (entry.draft === undefined) continue;
        const again = tryEdit(current, side, path, entry.draft);
        if (again.problem !== undefined) continue;
        current = again.job;
        progress = true;
      }
    }
  }
  return current;
}

const entriesOf = (job: Job, side: SideId): Entries =>
  side === 'asFound' ? job.asFound : (job.candidate?.changes ?? {});

/** Put `change` into an entry. A new value drops the draft; a draft leaves the value. */
function withEntry(job: Job, side: SideId, path: string, change: Entry): Job {
  const target = side === 'candidate' && !job.candidate ? startCandidate(job) : job;
  const entries = entriesOf(target, side);
  const { draft: _draft, why: _why, ...kept } = own(entries, path) ?? {};
  const entry: Entry = { ...kept, ...change };
  const asFound = own(target.asFound, path);
  // A candidate holds only what differs.
  const same =
    side === 'candidate' && change.is !== undefined && asFound && sameTyped(asFound.is, change.is);
  return withEntries(target, side, same ? without(entries, path) : { ...entries, [path]: entry });
}

function withEntries(job: Job, side: SideId, entries: Entries): Job {
  return side === 'asFound'
    ? { ...job, asFound: entries }
    : { ...job, candidate: { name: CANDIDATE_NAME, ...job.candidate, changes: entries } };
}

function without(entries: Entries, path: string): Entries {
  const { [path]: _gone, ...rest } = entries;
  return rest;
}

/** Take a field back to its default, or on the candidate to the value as found. */
export function clearField(job: Job, side: SideId, path: string): Edited {
  const entries = entriesOf(job, side);
  if (!Object.hasOwn(entries, path)) return { job };
  const cleared = withEntries(job, side, without(entries, path));
  const fault = newFault(job, cleared);
  return fault ? { job, problem: fault.message } : { job: retryDrafts(cleared) };
}

/** Forget the refused text of a field; the accepted value stays. */
export function dropDraft(job: Job, side: SideId, path: string): Job {
  const entry = own(entriesOf(job, side), path);
  if (entry?.draft === undefined) return job;
  const { draft: _draft, why: _why, ...kept } = entry;
  const entries = entriesOf(job, side);
  const empty = Object.keys(kept).length === 0;
  return withEntries(job, side, empty ? without(entries, path) : { ...entries, [path]: kept });
}

/** State the uncertainty of a value, in its own unit or in per cent; '' takes it away. */
export function setPm(job: Job, side: SideId, path: string, text: string): Edited {
  const field = FIELDS.get(path);
  const { si } = resolve(job, side).values[path] ?? {};
  if (field?.kind !== 'quantity' || si === undefined) {
    return { job, problem: 'Only a value with a unit can have an uncertainty.' };
  }
  if (text.trim() === '') return { job: setWords(job, side, path, 'pm', undefined) };
  const checked = checkPlusMinus(field, text, si, job.header.units);
  return checked.ok
    ? { job: setWords(job, side, path, 'pm', checked.typed) }
    : { job: setWords(job, side, path, 'pm', text), problem: checked.message };
}

/** Say where a value came from; '' takes it away. */
export const setFrom = (job: Job, side: SideId, path: string, text: string): Job =>
  setWords(job, side, path, 'from', text.trim() === '' ? undefined : text);

function setWords(job: Job, side: SideId, path: string, key: 'pm' | 'from', text?: string): Job {
  const target = side === 'candidate' && !job.candidate ? startCandidate(job) : job;
  const entries = entriesOf(target, side);
  const { [key]: _old, ...kept } = own(entries, path) ?? {};
  const entry: Entry = text === undefined ? kept : { ...kept, [key]: text };
  const empty = Object.keys(entry).length === 0;
  return withEntries(target, side, empty ? without(entries, path) : { ...entries, [path]: entry });
}

export const setTitle = (job: Job, key: TitleKey, text: string): Job => ({
  ...job,
  header: { ...job.header, title: { ...job.header.title, [key]: text } },
});

export const setPaper = (job: Job, paper: Job['header']['paper']): Job => ({
  ...job,
  header: { ...job.header, paper },
});

/** Show the job in other units. Values stay what they are: a bare number is given its unit first. */
export function setUnits(job: Job, units: Job['header']['units']): Job {
  const complete = (of: Job, side: SideId): Entries =>
    Object.fromEntries(
      Object.entries(entriesOf(of, side)).map(([path, entry]) => {
        const field = FIELDS.get(path);
        if (!field || entry.is === undefined) return [path, entry];
        const checked = checkTyped(field, entry.is, contextOf(of, side));
        const changed = checked.ok && !sameTyped(checked.typed, entry.is);
        return [path, changed ? { ...entry, is: checked.typed } : entry];
      }),
    );
  const planned = (candidate: Candidate): Candidate => ({
    ...candidate,
    changes: complete({ ...job, candidate }, 'candidate'),
  });
  return {
    ...job,
    header: { ...job.header, units },
    asFound: complete(job, 'asFound'),
    candidate: job.candidate && planned(job.candidate),
    aside: job.aside.map(planned),
  };
}

/** Keep what was found in a log; null: forget it. */
export function setLog(job: Job, log: LogRecord | null): Job {
  const { log: _before, ...rest } = job;
  return log ? { ...rest, log } : rest;
}

export const setNote = (job: Job, key: string, text: string): Job => ({
  ...job,
  notes: { ...job.notes, [key]: text },
});

const CANDIDATE_NAME = 'Candidate';

/** Begin a candidate that changes nothing yet. */
export const startCandidate = (job: Job, name = CANDIDATE_NAME): Job =>
  job.candidate ? job : { ...job, candidate: { name, changes: {} } };

export const nameCandidate = (job: Job, name: string): Job =>
  job.candidate ? { ...job, candidate: { ...job.candidate, name } } : job;

export const dropCandidate = (job: Job): Job => ({ ...job, candidate: null });

/** Put the candidate aside: the sheets show the loop as found alone until another is taken up. */
export const putAside = (job: Job): Job =>
  job.candidate && job.aside.length < MOST_ASIDE
    ? { ...job, candidate: null, aside: [...job.aside, job.candidate] }
    : job;

/** Take up one that was put aside; the present candidate goes to its place. */
export function takeUp(job: Job, index: number): Job {
  const taken = job.aside[index];
  if (!taken) return job;
  const rest = job.candidate ? [job.candidate] : [];
  return {
    ...job,
    candidate: taken,
    aside: [...job.aside.slice(0, index), ...rest, ...job.aside.slice(index + 1)],
  };
}

/** Put a copy of the candidate aside and go on with the other: a variant begins from what is there. */
export function branchCandidate(job: Job): Job {
  if (!job.candidate || job.aside.length >= MOST_ASIDE) return job;
  const names = new Set([job.candidate, ...job.aside].map(({ name }) => name));
  let name = `${job.candidate.name}, variant`;
  for (let n = 2; names.has(name); n++) name = `${job.candidate.name}, variant ${n}`;
  return { ...job, candidate: { ...job.candidate, name }, aside: [...job.aside, job.candidate] };
}

export const dropAside = (job: Job, index: number): Job => ({
  ...job,
  aside: job.aside.filter((_, i) => i !== index),
});

/** The change was made on the vehicle: the candidate becomes the loop as found. */
export function promoteCandidate(job: Job): Job {
  if (!job.candidate) return job;
  const asFound: Record<string, Entry> = { ...job.asFound };
  for (const [path, change] of Object.entries(job.candidate.changes)) {
    asFound[path] = change.is === undefined ? { ...own(asFound, path), ...change } : change;
  }
  return retryDrafts({ ...job, asFound, candidate: null });
}
