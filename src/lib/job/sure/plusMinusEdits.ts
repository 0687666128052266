/** Changes to what kind of statement a ± is. Each returns a new job; nothing typed is lost. */
import { startCandidate } from '../edit';
import type { Entry, Job, SideId, Spread } from '../types';
import { own } from '../values';

/** Say how the ± of a field is to be read; 'normal' is what is taken where nothing is said. */
export const setSpread = (job: Job, side: SideId, path: string, spread: Spread): Job =>
  withWord(job, side, path, 'spread', spread === 'normal' ? undefined : spread);

/** Coverage factor of a calibration's ±, kept as typed; '' takes it away. */
export const setCoverage = (job: Job, side: SideId, path: string, text: string): Job =>
  withWord(job, side, path, 'k', text.trim() === '' ? undefined : text);

function withWord<K extends 'spread' | 'k'>(
  job: Job,
  side: SideId,
  path: string,
  key: K,
  word: Entry[K],
): Job {
  const target = side === 'candidate' ? startCandidate(job) : job;
  const entries = side === 'asFound' ? target.asFound : target.candidate!.changes;
  const { [key]: _old, ...kept } = own(entries, path) ?? {};
  const entry: Entry = word === undefined ? kept : { ...kept, [key]: word };
  const { [path]: _gone, ...others } = entries;
  const changed = Object.keys(entry).length === 0 ? others : { ...entries, [path]: entry };
  return side === 'asFound'
    ? { ...target, asFound: changed }
    : { ...target, candidate: { ...target.candidate!, changes: changed } };
}
