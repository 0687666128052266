/** The plan of the folder changed: which sheets, in which order, and the words of its cover. */
import type { FolderPlan } from './folderRecord';
import { LONGEST_NOTE } from '../file/limits';
import type { Job } from '../types';

const NOTHING: FolderPlan = { findings: '', decisions: '' };

export const planOf = (job: Job): FolderPlan => job.folder ?? NOTHING;

/** Sheets of the folder in its order. `all` are the sheets there are, in their usual order. */
export function chosenSheets(job: Job, all: readonly string[]): readonly string[] {
  const { sheets } = planOf(job);
  return sheets ? [...new Set(sheets)].filter((slug) => all.includes(slug)) : all;
}

/** Position of a sheet in the folder, from 1, and how many there are; null where it is not in it. */
export function placeInFolder(job: Job, all: readonly string[], slug: string) {
  const chosen = chosenSheets(job, all);
  const at = chosen.indexOf(slug);
  return { place: at < 0 ? null : at + 1, of: chosen.length };
}

/** Put a sheet into the folder, ahead of the first that usually comes after it; or take it out. */
export function putIn(job: Job, all: readonly string[], slug: string, wanted: boolean): Job {
  const chosen = chosenSheets(job, all);
  if (chosen.includes(slug) === wanted || !all.includes(slug)) return job;
  if (!wanted)
    return withSheets(
      job,
      all,
      chosen.filter((other) => other !== slug),
    );
  const later = chosen.findIndex((other) => all.indexOf(other) > all.indexOf(slug));
  const at = later < 0 ? chosen.length : later;
  return withSheets(job, all, chosen.toSpliced(at, 0, slug));
}

/** Move a sheet of the folder one place: -1 forward, 1 back. At the end it stays. */
export function moveSheet(job: Job, all: readonly string[], slug: string, by: 1 | -1): Job {
  const chosen = chosenSheets(job, all);
  const from = chosen.indexOf(slug);
  const to = from + by;
  if (from < 0 || to < 0 || to >= chosen.length) return job;
  return withSheets(job, all, chosen.toSpliced(from, 1).toSpliced(to, 0, slug));
}

/** Every sheet in its usual order: sheets that a later version brings will be in it too. */
export function everySheet(job: Job): Job {
  const { sheets: _gone, ...words } = planOf(job);
  return { ...job, folder: words };
}

/** No sheet: the folder is its cover, until sheets are put in. */
export const noSheet = (job: Job): Job => ({ ...job, folder: { ...planOf(job), sheets: [] } });

function withSheets(job: Job, all: readonly string[], sheets: readonly string[]): Job {
  const usual = sheets.length === all.length && sheets.every((slug, i) => slug === all[i]);
  return usual ? everySheet(job) : { ...job, folder: { ...planOf(job), sheets: [...sheets] } };
}

/** The reader's own words on the cover. */
export const setCoverWords = (job: Job, part: 'findings' | 'decisions', text: string): Job => ({
  ...job,
  folder: { ...planOf(job), [part]: text.slice(0, LONGEST_NOTE) },
});
