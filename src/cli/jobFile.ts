/** A job file named on the command line, and how a command refuses. */
import { readFileSync } from 'node:fs';
import { readJob, type ReadResult } from '../lib/job/file/file';

export type JobFileRead =
  | (ReadResult & { readonly ok: true; readonly text: string })
  | { readonly ok: false; readonly message: string };

/** Read and check a job file; a refusal names the file. */
export function readJobFile(path: string): JobFileRead {
  let text: string;
  try {
    text = readFileSync(path, 'utf8');
  } catch {
    return { ok: false, message: `${path}: there is no such file, or it cannot be read.` };
  }
  const read = readJob(text);
  return read.ok ? { ...read, text } : { ok: false, message: `${path}: ${read.message}` };
}

/** One line on standard error, exit code 1. */
export function fail(message: string): void {
  process.stderr.write(`${message.replace(/\s+/g, ' ')}\n`);
  process.exitCode = 1;
}
