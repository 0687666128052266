/** The page's end of the line to the thread that fits a log. */
import type { LogFit } from '$lib/job/logRecord';
import type { FitAnswer, FitAsked } from './logFitMessages';

export type FitOutcome =
  | { readonly ok: true; readonly fit: LogFit }
  | { readonly ok: false; readonly message: string; readonly stopped?: true };

export interface FitRun {
  readonly outcome: Promise<FitOutcome>;
  stop(): void;
}

/** Fit on a thread of its own, so that it can be ended in the middle of a step. */
export function fitInBackground(asked: FitAsked, onStep: (steps: number) => void): FitRun {
  const worker = new Worker(new URL('./logFitWorker.ts', import.meta.url), { type: 'module' });
  let settle: (outcome: FitOutcome) => void = () => {};
  const outcome = new Promise<FitOutcome>((resolve) => (settle = resolve)).finally(() =>
    worker.terminate(),
  );
  worker.addEventListener('message', ({ data }: MessageEvent<FitAnswer>) => {
    if (data.kind === 'step') onStep(data.steps);
    else if (data.kind === 'done') settle({ ok: true, fit: data.fit });
    else settle({ ok: false, message: data.message });
  });
  worker.addEventListener('error', () =>
    settle({ ok: false, message: 'The fit could not be made on this device.' }),
  );
  worker.postMessage(asked);
  return {
    outcome,
    stop: () => settle({ ok: false, message: 'The fit was stopped.', stopped: true }),
  };
}
