/** Changes to the lines the reader adds to a sheet. Each returns a new job; what changes nothing returns the same. */
import { LONGEST_NOTE, LONGEST_TEXT } from '../file/limits';
import { MOST_LINES, MOST_PHOTOS, type OwnLine, type Photo } from './ownLines';
import type { Job } from '../types';

/** The reader's lines on a sheet. */
export const ownOf = (job: Job, slug: string): readonly OwnLine[] =>
  Object.hasOwn(job.own, slug) ? job.own[slug]! : NONE;
const NONE: readonly OwnLine[] = [];

export const hasRoomForLine = (job: Job, slug: string): boolean =>
  ownOf(job, slug).length < MOST_LINES;
export const hasRoomForPhoto = (job: Job): boolean => Object.keys(job.photos).length < MOST_PHOTOS;

/** An empty line of words or of calculation at the end of a sheet. */
export function addOwn(job: Job, slug: string, kind: 'text' | 'calculation'): Job {
  const id = freeId(ownOf(job, slug));
  const line: OwnLine =
    kind === 'text'
      ? { id, kind, text: '' }
      : { id, kind, statement: '', symbol: '', expression: '', unit: '' };
  return appended(job, slug, line);
}

/** A line that shows `photo`, kept under `photoId`. */
export function addPhoto(job: Job, slug: string, photoId: string, photo: Photo): Job {
  if (!hasRoomForPhoto(job)) return job;
  const id = freeId(ownOf(job, slug));
  const line: OwnLine = { id, kind: 'photo', photo: photoId, caption: '' };
  const added = appended(job, slug, line);
  return added === job ? job : { ...added, photos: { ...job.photos, [photoId]: photo } };
}

/** What can be written of a line. */
export type OwnText = 'text' | 'caption' | 'statement' | 'symbol' | 'expression' | 'unit';

/** Write `text` into a part of a line; what a file could not hold is cut. */
export function changeOwn(job: Job, slug: string, id: string, part: OwnText, text: string): Job {
  const cut = text.slice(0, part === 'text' ? LONGEST_NOTE : LONGEST_TEXT);
  return withLines(
    job,
    slug,
    ownOf(job, slug).map((line) =>
      line.id === id && part in line && line[part as keyof OwnLine] !== cut
        ? { ...line, [part]: cut }
        : line,
    ),
  );
}

/** Move a line up (−1) or down (+1); at the end of the list nothing happens. */
export function moveOwn(job: Job, slug: string, id: string, by: -1 | 1): Job {
  const lines = ownOf(job, slug);
  const from = lines.findIndex((line) => line.id === id);
  const to = from + by;
  if (from < 0 || to < 0 || to >= lines.length) return job;
  const moved = lines.filter((_, i) => i !== from);
  moved.splice(to, 0, lines[from]!);
  return withLines(job, slug, moved);
}

/** Remove a line; a photograph that no line shows any more goes with it. */
export function removeOwn(job: Job, slug: string, id: string): Job {
  const kept = ownOf(job, slug).filter((line) => line.id !== id);
  const removed = withLines(job, slug, kept);
  if (removed === job) return job;
  const used = photosShown(removed);
  const photos = Object.entries(job.photos).filter(([photo]) => used.has(photo));
  return photos.length === Object.keys(job.photos).length
    ? removed
    : { ...removed, photos: Object.fromEntries(photos) };
}

/** Ids of the photographs that lines show. */
export function photosShown(job: Job): ReadonlySet<string> {
  const shown = new Set<string>();
  for (const lines of Object.values(job.own)) {
    for (const line of lines) if (line.kind === 'photo') shown.add(line.photo);
  }
  return shown;
}

function appended(job: Job, slug: string, line: OwnLine): Job {
  return hasRoomForLine(job, slug) ? withLines(job, slug, [...ownOf(job, slug), line]) : job;
}

function withLines(job: Job, slug: string, lines: readonly OwnLine[]): Job {
  const before = ownOf(job, slug);
  if (lines.length === before.length && lines.every((line, i) => line === before[i])) return job;
  const { [slug]: _, ...others } = job.own;
  return { ...job, own: lines.length === 0 ? others : { ...others, [slug]: lines } };
}

function freeId(lines: readonly OwnLine[]): string {
  const taken = new Set(lines.map(({ id }) => id));
  for (let n = lines.length + 1; ; n++) if (!taken.has(`own-${n}`)) return `own-${n}`;
}
