/** What passes between the page and the thread that solves for a target. */
import type { Inversion } from '$lib/job/invert/inversion';
import type { Job, SideId } from '$lib/job/types';

/** One side of a job, by the key its answer is kept under. */
export interface Wanted {
  readonly side: SideId;
  readonly key: string;
}

export interface SearchAsked {
  readonly job: Job;
  readonly wanted: readonly Wanted[];
}

export type SearchAnswer =
  /** Loops solved, of about so many, over all sides wanted. */
  | { readonly kind: 'progress'; readonly done: number; readonly about: number }
  | { readonly kind: 'answer'; readonly key: string; readonly value: Inversion }
  | { readonly kind: 'done' }
  | { readonly kind: 'refused' };
