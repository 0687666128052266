/** What a thread needs of a job: crossing copies it, and photographs and kept states are most of it. */
import type { Job } from '$lib/job/types';

/** The job without what no result depends on. */
export const forThread = (job: Job): Job => ({
  ...job,
  notes: {},
  own: {},
  photos: {},
  revisions: [],
});
