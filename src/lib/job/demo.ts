/** The job shown at the first visit. Its data are invented, and it says so. */
import demo from '../../../static/demo-job.json';
import { readJob } from './file/file';
import type { Job } from './types';

/** A fresh copy of the demonstration job; read like any other file. */
export function demoJob(): Job {
  const result = readJob(JSON.stringify(demo));
  if (!result.ok) throw new Error(`the demonstration job: ${result.message}`);
  return result.job;
}
