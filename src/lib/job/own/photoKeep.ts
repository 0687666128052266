/** Photographs of the open job on their way between the job and the shelf they are kept on. */
import { photosShown } from './ownEdits';
import type { Photo } from './ownLines';
import type { Photos, PhotoShelf, PhotosKept } from './photoShelf';
import type { Job } from '../types';

/** Long enough that no window still open can undo the removal of an older one. */
const UNDO_LASTS_MS = 7 * 24 * 3600 * 1000;

/** A job as it is kept: its photographs stand elsewhere. */
export const withoutPhotos = (job: Job): Job =>
  Object.keys(job.photos).length === 0 ? job : { ...job, photos: {} };

/** Photographs that lines of the job show and that it does not hold (yet). */
export const missingPhotos = (job: Job): readonly string[] =>
  [...photosShown(job)].filter((id) => !Object.hasOwn(job.photos, id));

/** The job with those of `photos` that its lines show and that it lacks. */
export function withPhotos(job: Job, photos: Photos): Job {
  const found = missingPhotos(job).filter((id) => Object.hasOwn(photos, id));
  if (found.length === 0) return job;
  const added = Object.fromEntries(found.map((id) => [id, photos[id]!]));
  return { ...job, photos: { ...job.photos, ...added } };
}

/** What `after` holds and `before` did not. */
function appeared(before: Photos, after: Photos): Photos {
  if (before === after) return {};
  return Object.fromEntries(Object.entries(after).filter(([id]) => !Object.hasOwn(before, id)));
}

export class PhotoKeep {
  readonly #shelf: PhotoShelf;
  readonly #tell: (message: string) => void;
  /** Written ahead of the line that shows it. */
  #ahead = new Set<string>();
  #reading: Promise<void> = Promise.resolve();

  constructor(shelf: PhotoShelf, tell: (message: string) => void) {
    this.#shelf = shelf;
    this.#tell = tell;
  }

  /** Settled once the photographs last asked for are there. */
  get ready(): Promise<void> {
    return this.#reading;
  }

  /** Write one before any line shows it, so that another window never looks for it in vain. */
  async ahead(job: string, id: string, photo: Photo): Promise<PhotosKept> {
    const kept = await this.#shelf.write(job, { [id]: photo });
    if (!kept.ok) return kept;
    this.#ahead.add(id);
    if (!this.#shelf.lasting) {
      this.#tell('This browser keeps no photos between visits: save the job as a file.');
    }
    return kept;
  }

  /** Write what an edit, or going back to an earlier state, brought. */
  follow(job: string, before: Photos, after: Photos): void {
    const fresh = appeared(before, after);
    const left = Object.entries(fresh).filter(([id]) => !this.#ahead.delete(id));
    if (left.length > 0) void this.#write(job, Object.fromEntries(left));
  }

  /** Read those of `ids` and hand them over. */
  fetch(job: string, ids: readonly string[], hand: (photos: Photos) => void): void {
    if (ids.length === 0) return;
    this.#reading = this.#shelf.read(job, ids).then(hand, () => {
      this.#tell('The photos of this job could not be read in this browser.');
    });
  }

  /** A job was opened: let go what nothing shows any more. */
  tidy(job: string, shown: ReadonlySet<string>, now: number): void {
    this.#shelf.tidy(job, shown, now - UNDO_LASTS_MS).catch(() => undefined);
  }

  remove(job: string): void {
    this.#shelf.remove(job).catch(() => undefined);
  }

  async #write(job: string, photos: Photos): Promise<void> {
    const kept = await this.#shelf.write(job, photos);
    if (!kept.ok) this.#tell(kept.message);
  }
}
