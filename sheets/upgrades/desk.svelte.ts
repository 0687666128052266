/** The study of the open job on the page: asked for when looked at, told how far, stopped on request. */
import { evaluate } from '$lib/job/evaluate';
import type { Progress } from '$lib/job/upgrades/combine';
import type { Job } from '$lib/job/types';
import { planInBackground, type PlanRun } from '$lib/workers/plan';
import type { PlanAnswer } from '$lib/workers/planMessages';
import { studies } from '../how-sure/study';
import { drives, isDrawn } from './draws';
import { drawsKey, isKnown, keep, studyOf } from './study';

/** Milliseconds without an edit: what is typed is not worked out letter by letter. */
const PAUSE = 250;

/** What is worked out now: the comparison, or the ± of what it says. */
export type Stage = 'study' | 'draws';

export class PlanDesk {
  /** How far the present run is; null: nothing runs. */
  progress = $state.raw<(Progress & { readonly what: Stage }) | null>(null);
  /** The person stopped the run of the present state. */
  stopped = $state.raw(false);
  /** Counts what has come in, so that the page looks again. */
  arrived = $state.raw(0);

  #key = '';
  #run: PlanRun | null = null;
  #pause: ReturnType<typeof setTimeout> | undefined;

  /** Take the job as it is now; a run for another state is dropped. */
  follow(job: Job): void {
    const key = drawsKey(job);
    if (key === this.#key) return;
    this.#drop();
    this.#key = key;
    this.stopped = false;
    if (isComplete(job)) return;
    this.progress = { what: isKnown(job) ? 'draws' : 'study', done: 0, of: 1 };
    this.#pause = setTimeout(() => this.#begin(job), PAUSE);
  }

  stop(): void {
    this.#drop();
    this.stopped = true;
  }

  resume(job: Job): void {
    this.#key = '';
    this.follow(job);
  }

  close(): void {
    this.#drop();
    this.#key = '';
  }

  #begin(job: Job): void {
    const known = isKnown(job) ? studyOf(evaluate(job)) : null;
    const run: PlanRun = planInBackground(
      { job, study: known, drawn: studies.keys(), driven: drives.keys() },
      (answer) => {
        if (this.#run === run) this.#hear(job, answer);
      },
    );
    this.#run = run;
  }

  #hear(job: Job, answer: PlanAnswer): void {
    switch (answer.kind) {
      case 'progress':
        this.progress = answer;
        return;
      case 'study':
        keep(job, answer.study);
        this.progress = { what: 'draws', done: 0, of: 1 };
        break;
      case 'drawn':
        studies.set(answer.key, answer.value);
        return;
      case 'settled':
        break;
      case 'driven':
        drives.set(answer.key, answer.value);
        return;
      default:
        // Done, or refused.
        this.stopped = answer.kind === 'refused';
        this.#run = null;
        this.progress = null;
    }
    this.arrived++;
  }

  #drop(): void {
    clearTimeout(this.#pause);
    this.#run?.stop();
    this.#run = null;
    this.progress = null;
  }
}

/** The comparison and every ± of it are there. */
const isComplete = (job: Job): boolean => {
  if (!isKnown(job)) return false;
  const all = evaluate(job);
  return isDrawn(all, studyOf(all));
};
