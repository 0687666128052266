/** What passes between the page and the thread that compares candidates. */
import type { Job } from '$lib/job/types';
import type { Sureness } from '$lib/job/sure/sureness';
import type { Progress } from '$lib/job/upgrades/combine';
import type { Driven } from '$lib/job/upgrades/driven';
import type { UpgradeStudy } from '$lib/job/upgrades/upgrades';

export interface PlanAsked {
  readonly job: Job;
  /** Where it is there already. */
  readonly study: UpgradeStudy | null;
  /** Keys of sides already drawn, and of those whose drives are. */
  readonly drawn: readonly string[];
  readonly driven: readonly string[];
}

/** The study first; then, side by side, what its ± come from. */
export type PlanAnswer =
  | ({ readonly kind: 'progress'; readonly what: 'study' | 'draws' } & Progress)
  | { readonly kind: 'study'; readonly study: UpgradeStudy }
  | { readonly kind: 'drawn'; readonly key: string; readonly value: Sureness | null }
  /** Every settled loop is drawn: what is said of cruise has its ±. */
  | { readonly kind: 'settled' }
  | { readonly kind: 'driven'; readonly key: string; readonly value: Driven | null }
  | { readonly kind: 'done' }
  | { readonly kind: 'refused' };
