import { describe, expect, it } from 'vitest';
import {
  chosenSheets,
  everySheet,
  moveSheet,
  noSheet,
  placeInFolder,
  planOf,
  putIn,
  setCoverWords,
} from '$lib/job/folder/folderEdits';
import { readJob, writeJob } from '$lib/job/file/file';
import { emptyJob, type Job } from '$lib/job/types';

const ALL = ['a', 'b', 'c', 'd'];
const of = (job: Job) => chosenSheets(job, ALL);
const without = (...out: string[]) =>
  out.reduce((job, slug) => putIn(job, ALL, slug, false), emptyJob());

describe('the plan of the folder', () => {
  it('is every sheet in its usual order until one is chosen', () => {
    expect(of(emptyJob())).toEqual(ALL);
    expect(placeInFolder(emptyJob(), ALL, 'c')).toEqual({ place: 3, of: 4 });
  });

  it('counts only the sheets that are in it', () => {
    const job = without('b');
    expect(of(job)).toEqual(['a', 'c', 'd']);
    expect(placeInFolder(job, ALL, 'c')).toEqual({ place: 2, of: 3 });
    expect(placeInFolder(job, ALL, 'b')).toEqual({ place: null, of: 3 });
  });

  it('takes a sheet back where it usually stands', () => {
    expect(of(putIn(without('b'), ALL, 'b', true))).toEqual(ALL);
    expect(of(putIn(without('d'), ALL, 'd', true))).toEqual(ALL);
  });

  it('moves a sheet by one place and not past the ends', () => {
    const moved = moveSheet(emptyJob(), ALL, 'c', -1);
    expect(of(moved)).toEqual(['a', 'c', 'b', 'd']);
    expect(of(moveSheet(moved, ALL, 'c', 1))).toEqual(ALL);
    const first = moveSheet(emptyJob(), ALL, 'a', -1);
    expect(of(first)).toEqual(ALL);
    expect(moveSheet(without('b'), ALL, 'b', 1)).toEqual(without('b'));
  });

  it('lets sheets of a later version in, as long as every sheet was wanted', () => {
    const later = [...ALL, 'e'];
    expect(chosenSheets(setCoverWords(emptyJob(), 'decisions', 'x'), later)).toEqual(later);
    expect(chosenSheets(everySheet(without('b')), later)).toEqual(later);
    expect(chosenSheets(without('b'), later)).toEqual(['a', 'c', 'd']);
  });

  it('passes over sheets that this version does not know, and keeps them', () => {
    const job: Job = {
      ...emptyJob(),
      folder: { sheets: ['z', 'b', 'b'], findings: '', decisions: '' },
    };
    expect(of(job)).toEqual(['b']);
  });

  it('can be empty', () => {
    expect(of(noSheet(emptyJob()))).toEqual([]);
    expect(of(putIn(noSheet(emptyJob()), ALL, 'c', true))).toEqual(['c']);
  });

  it('comes back from the file with its words', () => {
    let job = moveSheet(without('b'), ALL, 'd', -1);
    job = setCoverWords(job, 'findings', 'Hot tank.\nNo air.');
    job = setCoverWords(job, 'decisions', 'Fans first.');
    const read = readJob(writeJob(job));
    expect(read.ok && planOf(read.job)).toEqual(planOf(job));
    const plain = readJob(writeJob(emptyJob()));
    expect(plain.ok && plain.job.folder).toBeUndefined();
  });
});
