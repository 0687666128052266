/** What passes between the page and the thread that fits a log. */
import type { LogEdits } from '$lib/job/log/logEdits';
import type { Span } from '$lib/job/log/logFit';
import type { LogFit } from '$lib/job/log/logRecord';
import type { Job } from '$lib/job/types';
import type { Paced } from '$lib/log/worker/messages';

export interface FitAsked {
  readonly kind: 'fit';
  readonly job: Job;
  readonly paced: Paced;
  readonly spans: readonly Span[];
}

/** The edits that make the loop as measured of the fit the job keeps. */
export interface HandAsked {
  readonly kind: 'hand';
  readonly job: Job;
}

export type FitAnswer =
  | { readonly kind: 'step'; readonly steps: number }
  | { readonly kind: 'done'; readonly fit: LogFit }
  | { readonly kind: 'handed'; readonly edits: LogEdits }
  | { readonly kind: 'refused'; readonly message: string };
