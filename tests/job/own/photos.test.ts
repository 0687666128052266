import { describe, expect, it } from 'vitest';
import { addPhoto, ownOf, removeOwn } from '$lib/job/own/ownEdits';
import type { Photo } from '$lib/job/own/ownLines';
import { memoryPhotos, type PhotoShelf } from '$lib/job/own/photoShelf';
import { JobState } from '$lib/job/state.svelte';
import { jobStore, memoryShelf, type Shelf } from '$lib/job/file/storage';
import { emptyJob } from '$lib/job/types';

const LARGE = 'A'.repeat(400_000);
const photo = (mark = 'AAAA'): Photo => ({
  type: 'image/jpeg',
  width: 1600,
  height: 1200,
  data: mark + LARGE,
});
const SHEET = 'loop-balance';

/** A clock that never stands still: ids of jobs are made of it. */
let time = 0;
const tab = (shelf: Shelf = memoryShelf(), photos: PhotoShelf = memoryPhotos()) =>
  new JobState(
    jobStore(shelf, () => ++time),
    () => emptyJob('US'),
    true,
    photos,
  );

/** As the sheet does it: kept first, shown then. */
async function add(state: JobState, id: string, one = photo()): Promise<void> {
  const kept = await state.keepPhoto(id, one);
  if (kept.ok) state.revise((job) => addPhoto(job, SHEET, id, one));
}
const shownIn = (state: JobState) => Object.keys(state.job.photos);
const removeFirst = (state: JobState) =>
  state.revise((job) => removeOwn(job, SHEET, ownOf(job, SHEET)[0]!.id));
const settled = () => new Promise((resolve) => setTimeout(resolve));

/** Bytes written since it was asked last. */
function weighed(): { shelf: Shelf; written: () => number } {
  const shelf = memoryShelf();
  let size = 0;
  const set = shelf.setItem.bind(shelf);
  shelf.setItem = (key, value) => {
    size += value.length;
    set(key, value);
  };
  return {
    shelf,
    written() {
      const before = size;
      size = 0;
      return before;
    },
  };
}

describe('photos of the open job', () => {
  it('are there again at the next visit, after the job', async () => {
    const [shelf, photos] = [memoryShelf(), memoryPhotos()];
    await add(tab(shelf, photos), 'p1');
    const next = tab(shelf, photos);
    await next.photosReady;
    expect(next.job.photos).toEqual({ p1: photo() });
  });

  it('cost an edit of a number nothing', async () => {
    const { shelf, written } = weighed();
    const state = tab(shelf);
    state.edit('pump.volts', '12 V');
    written();
    state.edit('pump.volts', '11 V');
    const without = written();
    for (let i = 0; i < 5; i++) await add(state, `p${i}`);
    written();
    state.edit('pump.volts', '10 V');
    // Five lines that show them, of a hundred characters or so.
    expect(written()).toBeLessThan(without + 1500);
    expect(state.file().text.length).toBeGreaterThan(5 * LARGE.length);
  });

  it('come back when their removal is undone, at the next visit too', async () => {
    const [shelf, photos] = [memoryShelf(), memoryPhotos()];
    const state = tab(shelf, photos);
    await add(state, 'p1');
    removeFirst(state);
    expect(shownIn(state)).toEqual([]);
    expect(state.file().text).not.toContain(LARGE);
    state.undo();
    expect(state.job.photos).toEqual({ p1: photo() });
    const next = tab(shelf, photos);
    await next.photosReady;
    expect(next.job.photos).toEqual({ p1: photo() });
    state.redo();
    expect(shownIn(state)).toEqual([]);
  });

  it('are in the past as well, when it was made before they had come', async () => {
    const [shelf, photos] = [memoryShelf(), memoryPhotos()];
    await add(tab(shelf, photos), 'p1');
    const next = tab(shelf, photos);
    removeFirst(next); // ahead of the photo
    next.undo();
    await next.photosReady;
    await settled();
    expect(next.job.photos).toEqual({ p1: photo() });
  });

  it('are in the file that is saved, and the file brings them into another browser', async () => {
    const state = tab();
    await add(state, 'p1');
    const [shelf, photos] = [memoryShelf(), memoryPhotos()];
    const other = tab(shelf, photos);
    expect(other.openFile(state.file().text).ok).toBe(true);
    expect(other.job.photos).toEqual({ p1: photo() });
    await settled();
    const next = tab(shelf, photos);
    await next.photosReady;
    expect(next.job.photos).toEqual({ p1: photo() });
  });

  it('belong to their job: a copy keeps its own when the first is removed', async () => {
    const [shelf, photos] = [memoryShelf(), memoryPhotos()];
    const state = tab(shelf, photos);
    await add(state, 'p1');
    const first = state.id;
    state.duplicate();
    await settled();
    expect(state.id).not.toBe(first);
    state.remove(first);
    await settled();
    expect(await photos.read(first, ['p1'])).toEqual({});
    const next = tab(shelf, photos);
    await next.photosReady;
    expect(next.job.photos).toEqual({ p1: photo() });
  });

  it('are copied too when a copy is asked for before they have come', async () => {
    const [shelf, photos] = [memoryShelf(), memoryPhotos()];
    await add(tab(shelf, photos), 'p1');
    const next = tab(shelf, photos);
    const first = next.id;
    next.duplicate();
    await settled();
    expect(next.id).not.toBe(first);
    expect(shownIn(next)).toEqual(['p1']);
  });

  it('say so when the browser has no room, and add nothing', async () => {
    const photos = memoryPhotos();
    const message = 'The browser has no room left for this photo: save the job as a file.';
    photos.write = () => Promise.resolve({ ok: false, code: 'full', message });
    const state = tab(memoryShelf(), photos);
    expect(await state.keepPhoto('p1', photo())).toMatchObject({ ok: false, message });
    expect(state.job.own).toEqual({});
    // A file that brings some is open all the same, and the person is told.
    const other = tab();
    await add(other, 'p1');
    state.openFile(other.file().text);
    await settled();
    expect(shownIn(state)).toEqual(['p1']);
    expect(state.notice).toMatchObject({ level: 'watch', message });
  });

  it('leave the job usable when they cannot be read', async () => {
    const [shelf, photos] = [memoryShelf(), memoryPhotos()];
    await add(tab(shelf, photos), 'p1');
    photos.read = () => Promise.reject(new Error('broken'));
    const next = tab(shelf, photos);
    await next.photosReady;
    expect(next.notice?.message).toMatch(/could not be read/);
    expect(next.edit('pump.volts', '12 V').problem).toBeUndefined();
    expect(ownOf(next.job, SHEET)).toHaveLength(1);
  });
});

describe('photos and two tabs', () => {
  it('the second tab gets the photo with the line that shows it', async () => {
    const [shelf, photos] = [memoryShelf(), memoryPhotos()];
    const [first, second] = [tab(shelf, photos), tab(shelf, photos)];
    await add(first, 'p1');
    second.onStorage(`soakline.job.${first.id}`);
    await second.photosReady;
    expect(second.job.photos).toEqual({ p1: photo() });
  });

  it('an edit of the second loses neither photo', async () => {
    const [shelf, photos] = [memoryShelf(), memoryPhotos()];
    const [first, second] = [tab(shelf, photos), tab(shelf, photos)];
    await add(first, 'p1', photo('BBBB'));
    await add(second, 'p2', photo('CCCC')); // finds the first one's job only now
    await second.photosReady;
    expect(shownIn(second).sort()).toEqual(['p1', 'p2']);
    first.onStorage(`soakline.job.${first.id}`);
    await first.photosReady;
    expect(first.job.photos).toEqual(second.job.photos);
  });

  it('a job removed in the other tab is kept whole by the next edit here', async () => {
    const [shelf, photos] = [memoryShelf(), memoryPhotos()];
    const [first, second] = [tab(shelf, photos), tab(shelf, photos)];
    await add(first, 'p1');
    second.onStorage(`soakline.job.${first.id}`);
    await second.photosReady;
    const { id } = first;
    second.remove(id);
    await settled();
    first.onStorage(`soakline.job.${id}`);
    first.edit('pump.volts', '12 V');
    await settled();
    expect(Object.keys(await photos.read(id, ['p1']))).toEqual(['p1']);
  });
});
