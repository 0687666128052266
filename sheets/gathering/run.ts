/** Every sheet of a job worked out beside the page: on a thread of its own, else in small pieces. */
import { evaluate } from '$lib/job/evaluate';
import type { Job } from '$lib/job/types';
import { gather, type Gathered } from './gather';

export interface Run {
  readonly job: Job;
  stop(): void;
}

/** @param tell - called with each part as it comes, and with null at the end */
export function startRun(job: Job, tell: (part: Gathered | null) => void): Run {
  if (typeof Worker === 'undefined') return inPieces(job, tell);
  const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  let other: Run | null = null;
  worker.addEventListener('message', ({ data }: MessageEvent<Gathered | null>) => {
    if (data === null) worker.terminate();
    tell(data);
  });
  worker.addEventListener('error', () => {
    worker.terminate();
    other ??= inPieces(job, tell);
  });
  worker.postMessage(withoutWords(job));
  return {
    job,
    stop() {
      worker.terminate();
      other?.stop();
    },
  };
}

/** No sheet's result hangs on these, and photographs are heavy. */
const withoutWords = (job: Job): Job => ({ ...job, notes: {}, own: {}, photos: {}, revisions: [] });

function inPieces(job: Job, tell: (part: Gathered | null) => void): Run {
  const parts = gather(evaluate(job));
  let timer = setTimeout(step);
  function step() {
    const next = parts.next();
    if (!next.done) timer = setTimeout(step);
    tell(next.done ? null : next.value);
  }
  return { job, stop: () => clearTimeout(timer) };
}

/** Whether two jobs lead to the same results: titles, notes and the folder's plan do not count. */
export const sameResults = (a: Job, b: Job): boolean =>
  a.asFound === b.asFound &&
  a.candidate === b.candidate &&
  a.aside === b.aside &&
  a.log === b.log &&
  a.header.units === b.header.units;
