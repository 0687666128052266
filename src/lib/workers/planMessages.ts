/** What passes between the page and the thread that compares candidates. */
import type { Job } from '$lib/job/types';
import type { Progress } from '$lib/job/upgrades/combine';
import type { UpgradeStudy } from '$lib/job/upgrades/upgrades';

export interface PlanAsked {
  readonly job: Job;
}

export type PlanAnswer =
  | ({ readonly kind: 'progress' } & Progress)
  | { readonly kind: 'done'; readonly study: UpgradeStudy }
  | { readonly kind: 'refused' };
