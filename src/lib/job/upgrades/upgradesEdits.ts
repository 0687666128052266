/** Taking up a combination as the candidate in hand. */
import { together, type Move } from './moves';
import { MOST_ASIDE } from '../file/schema';
import type { Candidate, Job } from '../types';

const LONGEST_NAME = 80;

/**
 * The moves become the candidate in hand, their parts lists together; the one that was there goes aside.
 * Nothing happens where there is no room left aside.
 */
export function takeUpMoves(job: Job, moves: readonly Move[]): Job {
  if (moves.length === 0) return job;
  const candidate = named(job, together(moves));
  if (!job.candidate) return { ...job, candidate };
  if (job.aside.length >= MOST_ASIDE) return job;
  return { ...job, candidate, aside: [...job.aside, job.candidate] };
}

/** A name that no other candidate has, short enough for its blank. */
function named(job: Job, candidate: Candidate): Candidate {
  const taken = new Set(
    [...(job.candidate ? [job.candidate] : []), ...job.aside].map((c) => c.name),
  );
  const { name } = candidate;
  const cut = name.length > LONGEST_NAME ? `${name.slice(0, LONGEST_NAME - 1).trimEnd()}…` : name;
  if (!taken.has(cut)) return { ...candidate, name: cut };
  for (let n = 2; ; n++) {
    const other = `${cut.slice(0, LONGEST_NAME - 5).trimEnd()} (${n})`;
    if (!taken.has(other)) return { ...candidate, name: other };
  }
}
