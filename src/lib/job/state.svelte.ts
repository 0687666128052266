/** The open job as the screen sees it: one object in context, everything else derived from it. */
import { getContext, setContext } from 'svelte';
import {
  applyEdit,
  branchCandidate,
  clearField,
  dropAside,
  dropCandidate,
  dropDraft,
  nameCandidate,
  promoteCandidate,
  putAside,
  setFrom,
  setNote,
  setPaper,
  setPm,
  setUnits,
  startCandidate,
  takeUp,
  type Edited,
} from './edit';
import { evaluate } from './evaluate';
import { readJob, writeJob, type ReadResult } from './file/file';
import { emptyHistory, remember, stepBack, stepForward, type History } from './history';
import { photosShown } from './own/ownEdits';
import type { Photo } from './own/ownLines';
import { missingPhotos, PhotoKeep, withPhotos } from './own/photoKeep';
import { databasePhotos, memoryPhotos, type PhotoShelf, type PhotosKept } from './own/photoShelf';
import { jobIdOfKey, jobStore, memoryShelf, type JobCard, type JobStore } from './file/storage';
import { emptyJob, type Job, type SideId, type Typed } from './types';

/** Something to tell the person that belongs to no field. */
export interface Notice {
  readonly level: 'info' | 'watch';
  readonly message: string;
}

export class JobState {
  #job = $state.raw<Job>(emptyJob());
  #history = $state.raw<History<Job>>(emptyHistory);
  #id = $state.raw('');
  #cards = $state.raw<readonly JobCard[]>([]);
  #notice = $state.raw<Notice | null>(null);
  #revision = 0;
  /** A copy waits for the photographs. */
  #copying = false;
  /** Another window removed the job, and its photographs with it. */
  #removed = false;
  readonly #store: JobStore;
  readonly #photos: PhotoKeep;

  readonly evaluated = $derived(evaluate(this.#job));
  readonly canUndo = $derived(this.#history.past.length > 0);
  readonly canRedo = $derived(this.#history.future.length > 0);

  /**
   * Open the job that was open last; `first` when none is kept.
   * @param keeps - false where the browser keeps nothing (a private window): the person is told
   */
  constructor(
    store: JobStore,
    first: () => Job,
    keeps = true,
    photos: PhotoShelf = memoryPhotos(),
  ) {
    this.#store = store;
    this.#photos = new PhotoKeep(photos, (message) => {
      this.#notice = { level: 'watch', message };
    });
    const id = store.current();
    const loaded = id === null ? null : store.load(id);
    if (id !== null && loaded?.ok) this.#show(id, loaded.job, loaded.revision);
    else {
      this.#begin(first());
      if (loaded && !loaded.ok && loaded.code === 'damaged') {
        this.#notice = { level: 'watch', message: loaded.message };
      }
    }
    if (!keeps) {
      const message = 'This browser keeps nothing between visits: save the job as a file.';
      this.#notice = { level: 'watch', message };
    }
  }

  get job(): Job {
    return this.#job;
  }
  get id(): string {
    return this.#id;
  }
  get units() {
    return this.#job.header.units;
  }
  get paper() {
    return this.#job.header.paper;
  }
  get notice(): Notice | null {
    return this.#notice;
  }
  /** Settled once the photographs of the job are there; they come after the job. */
  get photosReady(): Promise<void> {
    return this.#photos.ready;
  }
  /** The jobs kept here, latest first. */
  get cards(): readonly JobCard[] {
    return this.#cards;
  }

  edit(path: string, typed: Typed, side: SideId = 'asFound'): Edited {
    return this.#change((job) => applyEdit(job, side, path, typed));
  }
  clear(path: string, side: SideId = 'asFound'): Edited {
    return this.#change((job) => clearField(job, side, path));
  }
  dropDraft(path: string, side: SideId = 'asFound'): void {
    this.#change((job) => ({ job: dropDraft(job, side, path) }));
  }
  setPm(path: string, text: string, side: SideId = 'asFound'): Edited {
    return this.#change((job) => setPm(job, side, path, text));
  }
  setFrom(path: string, text: string, side: SideId = 'asFound'): void {
    this.#change((job) => ({ job: setFrom(job, side, path, text) }));
  }
  setNote(key: string, text: string): void {
    this.#change((job) => ({ job: setNote(job, key, text) }));
  }
  /** Several edits that belong together: one step to undo. */
  revise(work: (job: Job) => Job): void {
    this.#change((job) => ({ job: work(job) }));
  }
  /** Keep a photograph; only then may a line show it. */
  keepPhoto(id: string, photo: Photo): Promise<PhotosKept> {
    return this.#photos.ahead(this.#id, id, photo);
  }
  setUnits(units: Job['header']['units']): void {
    this.#change((job) => ({ job: setUnits(job, units) }));
  }
  setPaper(paper: Job['header']['paper']): void {
    this.#change((job) => ({ job: setPaper(job, paper) }));
  }
  startCandidate(name?: string): void {
    this.#change((job) => ({ job: startCandidate(job, name) }));
  }
  nameCandidate(name: string): void {
    this.#change((job) => ({ job: nameCandidate(job, name) }));
  }
  dropCandidate(): void {
    this.#change((job) => ({ job: dropCandidate(job) }));
  }
  putAside(): void {
    this.#change((job) => ({ job: putAside(job) }));
  }
  takeUp(index: number): void {
    this.#change((job) => ({ job: takeUp(job, index) }));
  }
  branchCandidate(): void {
    this.#change((job) => ({ job: branchCandidate(job) }));
  }
  dropAside(index: number): void {
    this.#change((job) => ({ job: dropAside(job, index) }));
  }
  promoteCandidate(): void {
    this.#change((job) => ({ job: promoteCandidate(job) }));
  }

  undo(): void {
    this.#travel(stepBack(this.#history, this.#job));
  }
  redo(): void {
    this.#travel(stepForward(this.#history, this.#job));
  }

  /** Begin another job; the present one stays kept. */
  create(job: Job = emptyJob(this.units)): void {
    this.#begin(job);
  }
  duplicate(): void {
    // A copy of what has not come yet would lack it.
    if (missingPhotos(this.#job).length > 0 && !this.#copying) {
      this.#copying = true;
      void this.photosReady.then(() => this.duplicate()).finally(() => (this.#copying = false));
      return;
    }
    const { title } = this.#job.header;
    const copy = { ...title, job: title.job === '' ? 'Copy' : `${title.job} (copy)` };
    this.#begin({ ...this.#job, header: { ...this.#job.header, title: copy } });
  }
  /** Open a job kept here. */
  open(id: string): void {
    const loaded = this.#store.load(id);
    if (loaded.ok) this.#show(id, loaded.job, loaded.revision);
    else this.#notice = { level: 'watch', message: loaded.message };
    this.#cards = this.#store.list();
  }
  /** Open the text of a job file as a job of its own; a bad file changes nothing. */
  openFile(text: string): ReadResult {
    const result = readJob(text);
    if (result.ok) {
      this.#begin(result.job);
      if (result.notes.length > 0)
        this.#notice = { level: 'info', message: result.notes.join(' ') };
    } else this.#notice = { level: 'watch', message: result.message };
    return result;
  }
  /** Text and name of the file to download. */
  file(): { name: string; text: string } {
    const { job, vehicle } = this.#job.header.title;
    const words = [job, vehicle]
      .join(' ')
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-');
    const name = words.replace(/^-+|-+$/g, '').slice(0, 60) || 'job';
    return { name: `${name}.json`, text: writeJob(this.#job) };
  }
  /** Remove a job kept here; the open one gives way to the latest of the others. */
  remove(id: string): void {
    this.#store.remove(id);
    this.#photos.remove(id);
    this.#cards = this.#store.list();
    if (id !== this.#id) return;
    const next = this.#cards[0];
    if (next) this.open(next.id);
    else this.#begin(emptyJob(this.units));
  }
  dismiss(): void {
    this.#notice = null;
  }

  /** Another tab wrote: take its job when it is the one open here. For the window's `storage` event. */
  onStorage(key: string | null): void {
    const id = jobIdOfKey(key);
    if (id === null) return;
    this.#cards = this.#store.list();
    if (id !== this.#id) return;
    const loaded = this.#store.load(id);
    if (loaded.ok && loaded.revision > this.#revision) this.#adopt(loaded.job, loaded.revision);
    this.#removed ||= !loaded.ok && loaded.code === 'missing';
  }

  #change(work: (job: Job) => Edited): Edited {
    const before = this.#job;
    const edited = work(before);
    if (edited.job === before) return edited;
    const saved = this.#store.save(this.#id, edited.job, this.#revision);
    if (!saved.ok && saved.code === 'newer') {
      // Another tab was faster: its job first, then this edit on top of it.
      this.#adopt(saved.newer.job, saved.newer.revision);
      return this.#change(work);
    }
    this.#history = remember(this.#history, before);
    this.#job = edited.job;
    this.#settle(saved);
    this.#keepPhotosOf(before);
    return edited;
  }

  #travel(step: { present: Job; history: History<Job> } | null): void {
    if (!step) return;
    const saved = this.#store.save(this.#id, step.present, this.#revision);
    if (!saved.ok && saved.code === 'newer') {
      this.#adopt(saved.newer.job, saved.newer.revision);
      this.#notice = {
        level: 'info',
        message: 'The job was changed in another window; nothing was undone.',
      };
      return;
    }
    const before = this.#job;
    this.#job = step.present;
    this.#history = step.history;
    this.#settle(saved);
    this.#keepPhotosOf(before);
    this.#fetchPhotos();
  }

  /** Write the photographs that came with a step away from `before`. */
  #keepPhotosOf(before: Job): void {
    this.#photos.follow(this.#id, this.#removed ? {} : before.photos, this.#job.photos);
    this.#removed = false;
  }

  /** Bring the photographs that the job shows and does not hold yet, into its past as well. */
  #fetchPhotos(): void {
    const id = this.#id;
    this.#photos.fetch(id, missingPhotos(this.#job), (found) => {
      if (id !== this.#id) return;
      const filled = (job: Job) => withPhotos(job, found);
      this.#job = filled(this.#job);
      const { past, future } = this.#history;
      this.#history = { past: past.map(filled), future: future.map(filled) };
    });
  }

  #settle(saved: ReturnType<JobStore['save']>): void {
    if (saved.ok) this.#revision = saved.revision;
    else if (saved.code !== 'newer') this.#notice = { level: 'watch', message: saved.message };
  }

  /** The past of this window stays: undo may go back across what the other one did. */
  #adopt(job: Job, revision: number): void {
    this.#history = remember(this.#history, this.#job);
    this.#job = withPhotos(job, this.#job.photos);
    this.#revision = revision;
    this.#fetchPhotos();
  }

  #begin(job: Job): void {
    const id = this.#store.newId();
    const saved = this.#store.save(id, job, 0);
    this.#show(id, job, 0);
    this.#settle(saved);
  }

  #show(id: string, job: Job, revision: number): void {
    this.#id = id;
    this.#job = job;
    this.#revision = revision;
    this.#history = emptyHistory;
    this.#notice = null;
    this.#store.setCurrent(id);
    this.#cards = this.#store.list();
    this.#removed = false;
    this.#photos.follow(id, {}, job.photos);
    this.#photos.tidy(id, photosShown(job), Date.now());
    this.#fetchPhotos();
  }
}

const KEY = Symbol('job');

export const setJob = (state: JobState): JobState => setContext(KEY, state);
export const getJob = (): JobState => getContext<JobState>(KEY);

/** The state for this browser: jobs on its shelf, or in memory where it has none. */
export function browserJobState(first: () => Job): JobState {
  const shelf = browserShelf();
  const photos = shelf && browserPhotos();
  return new JobState(jobStore(shelf ?? memoryShelf()), first, shelf !== null, photos ?? undefined);
}

function browserPhotos(): PhotoShelf | null {
  try {
    return databasePhotos(indexedDB);
  } catch {
    return null;
  }
}

function browserShelf(): Storage | null {
  try {
    const probe = 'soakline.probe';
    localStorage.setItem(probe, '1');
    localStorage.removeItem(probe);
    return localStorage;
  } catch {
    return null;
  }
}
