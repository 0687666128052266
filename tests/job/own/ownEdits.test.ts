import { describe, expect, it } from 'vitest';
import { readJob, writeJob } from '$lib/job/file/file';
import { addOwn, addPhoto, changeOwn, moveOwn, ownOf, removeOwn } from '$lib/job/own/ownEdits';
import { MOST_LINES, MOST_PHOTOS, type Photo } from '$lib/job/own/ownLines';
import { emptyJob, type Job } from '$lib/job/types';

const PHOTO: Photo = { type: 'image/png', width: 2, height: 1, data: 'iVBORw0KGgo=' };
const A = 'loop-balance';
const B = 'pump-feed';
const ids = (job: Job, slug = A) => ownOf(job, slug).map(({ id }) => id);
const built = (...steps: ((job: Job) => Job)[]) =>
  steps.reduce((job, step) => step(job), emptyJob());

describe('lines of the reader', () => {
  it('are added at the end of their sheet, written in place, moved and removed', () => {
    const job = built(
      (j) => addOwn(j, A, 'text'),
      (j) => addOwn(j, A, 'calculation'),
      (j) => addPhoto(j, A, 'p1', PHOTO),
      (j) => addOwn(j, B, 'text'),
    );
    expect(ownOf(job, A).map(({ kind }) => kind)).toEqual(['text', 'calculation', 'photo']);
    expect(ids(job, B)).toHaveLength(1);
    const [text, sum, photo] = ids(job) as [string, string, string];
    const written = changeOwn(job, A, sum, 'expression', '2 * Q');
    expect(ownOf(written, A)[1]).toMatchObject({ expression: '2 * Q', symbol: '' });
    expect(ids(moveOwn(job, A, photo, -1))).toEqual([text, photo, sum]);
    expect(ids(moveOwn(job, A, text, 1))).toEqual([sum, text, photo]);
    expect(ids(removeOwn(job, A, sum))).toEqual([text, photo]);
  });

  it('give the same job where nothing changes', () => {
    const job = built((j) => addOwn(j, A, 'text'));
    const [id] = ids(job) as [string];
    expect(changeOwn(job, A, id, 'text', '')).toBe(job);
    expect(changeOwn(job, A, id, 'unit', 'W')).toBe(job); // words have no unit
    expect(changeOwn(job, A, 'nobody', 'text', 'x')).toBe(job);
    expect(moveOwn(job, A, id, -1)).toBe(job);
    expect(moveOwn(job, A, id, 1)).toBe(job);
    expect(removeOwn(job, A, 'nobody')).toBe(job);
    expect(removeOwn(job, 'constructor', 'x')).toBe(job);
  });

  it('never share an id, whatever was removed', () => {
    let job = built(
      (j) => addOwn(j, A, 'text'),
      (j) => addOwn(j, A, 'text'),
      (j) => addOwn(j, A, 'text'),
    );
    job = addOwn(removeOwn(job, A, ids(job)[0]!), A, 'text');
    expect(new Set(ids(job)).size).toBe(3);
  });

  it('leave no empty list of a sheet behind', () => {
    const job = built((j) => addOwn(j, A, 'text'));
    expect(removeOwn(job, A, ids(job)[0]!).own).toEqual({});
  });

  it('are no more, and no longer, than a file can hold', () => {
    let job = emptyJob();
    for (let i = 0; i < MOST_LINES + 5; i++) job = addOwn(job, A, 'calculation');
    expect(ownOf(job, A)).toHaveLength(MOST_LINES);
    job = changeOwn(job, A, ids(job)[0]!, 'expression', '1'.repeat(1_000_000));
    for (let i = 0; i < MOST_PHOTOS + 5; i++) job = addPhoto(job, B, `p${i}`, PHOTO);
    expect(Object.keys(job.photos)).toHaveLength(MOST_PHOTOS);
    expect(readJob(writeJob(job)).ok).toBe(true);
  });
});

describe('a photo', () => {
  it('goes with the last line that shows it, not before', () => {
    const once = built((j) => addPhoto(j, A, 'p1', PHOTO));
    const line = { id: 'own-1', kind: 'photo', photo: 'p1', caption: '' } as const;
    const twice: Job = { ...once, own: { ...once.own, [B]: [line] } };
    const less = removeOwn(twice, A, ids(twice)[0]!);
    expect(Object.keys(less.photos)).toEqual(['p1']);
    expect(removeOwn(less, B, 'own-1').photos).toEqual({});
  });

  it('travels in the file and comes back the same', () => {
    const job = built(
      (j) => addPhoto(j, A, 'p1', PHOTO),
      (j) => addOwn(j, A, 'calculation'),
    );
    const read = readJob(writeJob(job));
    expect(read.ok && { own: read.job.own, photos: read.job.photos }).toEqual({
      own: job.own,
      photos: { p1: PHOTO },
    });
  });
});
