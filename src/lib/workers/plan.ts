/** The page's end of the line to the thread that compares candidates. */
import type { Progress } from '$lib/job/upgrades/combine';
import type { Job } from '$lib/job/types';
import type { UpgradeStudy } from '$lib/job/upgrades/upgrades';
import type { PlanAnswer, PlanAsked } from './planMessages';

export interface PlanRun {
  /** Null: it cannot be worked out there. */
  readonly study: Promise<UpgradeStudy | null>;
  stop(): void;
}

/** Compare on a thread of its own, so that it can be ended in the middle of a drive. */
export function planInBackground(job: Job, onProgress: (progress: Progress) => void): PlanRun {
  if (typeof Worker === 'undefined') return { study: Promise.resolve(null), stop() {} };
  const worker = new Worker(new URL('./planWorker.ts', import.meta.url), { type: 'module' });
  let settle: (study: UpgradeStudy | null) => void = () => {};
  const study = new Promise<UpgradeStudy | null>((resolve) => (settle = resolve)).finally(() =>
    worker.terminate(),
  );
  worker.addEventListener('message', ({ data }: MessageEvent<PlanAnswer>) => {
    if (data.kind === 'progress') onProgress(data);
    else settle(data.kind === 'done' ? data.study : null);
  });
  worker.addEventListener('error', () => settle(null));
  worker.postMessage({ job } satisfies PlanAsked);
  // A run that was stopped is never heard of again.
  return { study, stop: () => worker.terminate() };
}
