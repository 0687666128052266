/** How much of a vehicle somebody has entered: a sheet of usual values must not pass for its own. */
import { own } from './values';
import { FIELDS } from './fields';
import { OF_THE_LOOP } from './fields/ofTheLoop';
import type { Job } from './types';

/** A loop told by fewer inputs than this is mostly a usual one (ours). */
const FEW = 20;

/** Inputs of the loop as found that were entered. */
export const enteredOf = ({ asFound }: Job): number =>
  [...FIELDS.keys()].filter(
    (path) => OF_THE_LOOP.test(path) && own(asFound, path)?.is !== undefined,
  ).length;

/** One sentence where little or nothing was entered; null where the job is told well enough. */
export function littleEntered(job: Job): string | null {
  const n = enteredOf(job);
  if (n >= FEW) return null;
  if (n === 0)
    return 'Nothing of this vehicle is entered yet: every value is a usual one, marked assumed, and what is said here is of a usual loop.';
  return `Only ${n} ${n === 1 ? 'input' : 'inputs'} of this loop ${n === 1 ? 'is' : 'are'} entered; the rest are usual values, marked assumed, and so is much of what is said here.`;
}
