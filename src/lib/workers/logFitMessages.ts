/** What passes between the page and the thread that fits a log. */
import type { Span } from '$lib/job/logFit';
import type { LogFit } from '$lib/job/logRecord';
import type { Job } from '$lib/job/types';
import type { Paced } from '$lib/log/worker/messages';

export interface FitAsked {
  readonly job: Job;
  readonly paced: Paced;
  readonly spans: readonly Span[];
}

export type FitAnswer =
  | { readonly kind: 'step'; readonly steps: number }
  | { readonly kind: 'done'; readonly fit: LogFit }
  | { readonly kind: 'refused'; readonly message: string };
