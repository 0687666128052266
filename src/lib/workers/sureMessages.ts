/** What passes between the page and the thread that draws loops. */
import type { Doubts, Sureness } from '$lib/job/sure/sureness';
import type { Job } from '$lib/job/types';
import type { DutyId } from '$lib/solver/loop/types';

/** Sides of a job in their order: as found, the candidate in hand, those put aside. */
export interface SureAsked {
  readonly kind: 'study';
  /** Counts up; only the latest question is worked on. */
  readonly number: number;
  readonly job: Job;
  /** Keys of the sides still to be drawn. */
  readonly draw: readonly string[];
  /** Keys of the sides whose doubts are to be looked into, in this duty. */
  readonly doubt: readonly string[];
  readonly duty: DutyId;
}

export interface SureStop {
  readonly kind: 'stop';
}

export type SureAnswer = { readonly number: number } & (
  | { readonly kind: 'progress'; readonly what: 'draws' | 'doubts'; readonly share: number }
  | { readonly kind: 'draws'; readonly key: string; readonly value: Sureness | null }
  | {
      readonly kind: 'doubts';
      readonly key: string;
      readonly duty: DutyId;
      readonly value: Doubts | null;
    }
  | { readonly kind: 'done' }
  | { readonly kind: 'refused' }
);
