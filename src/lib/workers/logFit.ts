/** The page's end of the line to the thread that fits a log. */
import type { LogEdits } from '$lib/job/log/logEdits';
import type { LogFit } from '$lib/job/log/logRecord';
import type { Job } from '$lib/job/types';
import { forThread } from './forThread';
import type { FitAnswer, FitAsked, HandAsked } from './logFitMessages';

export type FitOutcome =
  | { readonly ok: true; readonly fit: LogFit }
  | { readonly ok: false; readonly message: string; readonly stopped?: true };

export interface FitRun {
  readonly outcome: Promise<FitOutcome>;
  stop(): void;
}

const started = () => new Worker(new URL('./logFitWorker.ts', import.meta.url), { type: 'module' });

/** Fit on a thread of its own, so that it can be ended in the middle of a step. */
export function fitInBackground(
  asked: Omit<FitAsked, 'kind'>,
  onStep: (steps: number) => void,
): FitRun {
  const worker = started();
  let settle: (outcome: FitOutcome) => void = () => {};
  const outcome = new Promise<FitOutcome>((resolve) => (settle = resolve)).finally(() =>
    worker.terminate(),
  );
  worker.addEventListener('message', ({ data }: MessageEvent<FitAnswer>) => {
    if (data.kind === 'step') onStep(data.steps);
    else if (data.kind === 'done') settle({ ok: true, fit: data.fit });
    else if (data.kind === 'refused') settle({ ok: false, message: data.message });
  });
  worker.addEventListener('error', () =>
    settle({ ok: false, message: 'The fit could not be made on this device.' }),
  );
  worker.postMessage({ kind: 'fit', ...asked, job: forThread(asked.job) } satisfies FitAsked);
  return {
    outcome,
    stop: () => settle({ ok: false, message: 'The fit was stopped.', stopped: true }),
  };
}

/** What the kept fit hands on; nothing where it cannot be worked out. The roots behind it take too long for the page. */
export function handInBackground(job: Job): Promise<LogEdits | null> {
  const worker = started();
  return new Promise<LogEdits | null>((resolve) => {
    worker.addEventListener('message', ({ data }: MessageEvent<FitAnswer>) =>
      resolve(data.kind === 'handed' ? data.edits : null),
    );
    worker.addEventListener('error', () => resolve(null));
    worker.postMessage({ kind: 'hand', job: forThread(job) } satisfies HandAsked);
  }).finally(() => worker.terminate());
}
