/**
 * Kept states of a job on the shelf, each by itself: they never change, and are many times as long as the
 * job that is written at every edit. Each is a job file of its own, so that it reads in later versions too.
 */
import { readJob, writeJob } from './file';
import type { Shelf } from './shelf';
import { emptyJob, type Job } from '../types';

type Revision = Job['revisions'][number];

const PREFIX = 'soakline.revision.';
const keyOf = (id: string, mark: string) => `${PREFIX}${id}.${mark}`;

export const withoutRevisions = (job: Job): Job =>
  job.revisions.length === 0 ? job : { ...job, revisions: [] };

export class RevisionKeep {
  readonly #shelf: Shelf;
  /** By job and mark: what stands on the shelf, as this window wrote or read it last. */
  readonly #kept = new Map<string, Map<string, Revision>>();

  constructor(shelf: Shelf) {
    this.#shelf = shelf;
  }

  /** Write what is not there yet. @throws what the shelf throws when it is full */
  write(id: string, revisions: readonly Revision[]): void {
    const kept = this.#of(id);
    for (const revision of revisions) {
      if (kept.get(revision.mark) === revision) continue;
      this.#shelf.setItem(
        keyOf(id, revision.mark),
        writeJob({ ...emptyJob(), revisions: [revision] }),
      );
      kept.set(revision.mark, revision);
    }
  }

  /** Take away what the job holds no more; after the job itself was written. */
  sweep(id: string, marks: readonly string[]): void {
    const kept = this.#of(id);
    for (const mark of kept.keys()) {
      if (marks.includes(mark)) continue;
      this.#shelf.removeItem(keyOf(id, mark));
      kept.delete(mark);
    }
  }

  /** @returns the states that could be read, and what must be said of those that could not */
  read(id: string, marks: readonly string[]): { revisions: Revision[]; notes: string[] } {
    const kept = new Map<string, Revision>();
    this.#kept.set(id, kept);
    const notes: string[] = [];
    for (const mark of marks) {
      const text = this.#shelf.getItem(keyOf(id, mark));
      const result = text === null ? null : readJob(text);
      const revision = result?.ok ? result.job.revisions[0] : undefined;
      if (revision) kept.set(mark, revision);
      else
        notes.push(`Revision ${mark} could not be read and is left out; the job itself is whole.`);
    }
    return { revisions: [...kept.values()], notes };
  }

  remove(id: string, marks: readonly string[]): void {
    for (const mark of marks) this.#shelf.removeItem(keyOf(id, mark));
    this.#kept.delete(id);
  }

  #of(id: string): Map<string, Revision> {
    let kept = this.#kept.get(id);
    if (!kept) this.#kept.set(id, (kept = new Map()));
    return kept;
  }
}
