/** The page's end of the line to the thread that compares candidates. */
import { forThread } from './forThread';
import type { PlanAnswer, PlanAsked } from './planMessages';

export interface PlanRun {
  stop(): void;
}

/**
 * Compare on a thread of its own, so that it can be ended in the middle of a drive. Ends with `done`, or
 * with `refused` where it cannot be worked out there; a run that was stopped is never heard of again.
 */
export function planInBackground(asked: PlanAsked, hear: (answer: PlanAnswer) => void): PlanRun {
  if (typeof Worker === 'undefined') {
    queueMicrotask(() => hear({ kind: 'refused' }));
    return { stop() {} };
  }
  const worker = new Worker(new URL('./planWorker.ts', import.meta.url), { type: 'module' });
  const end = (answer: PlanAnswer) => {
    if (answer.kind === 'done' || answer.kind === 'refused') worker.terminate();
    hear(answer);
  };
  worker.addEventListener('message', ({ data }: MessageEvent<PlanAnswer>) => end(data));
  worker.addEventListener('error', () => end({ kind: 'refused' }));
  worker.postMessage({ ...asked, job: forThread(asked.job) } satisfies PlanAsked);
  return { stop: () => worker.terminate() };
}
