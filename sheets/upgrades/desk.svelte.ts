/** The study of the open job on the page: asked for when looked at, told how far, stopped on request. */
import type { Progress } from '$lib/job/upgrades/combine';
import type { Job } from '$lib/job/types';
import { upgradesKey } from '$lib/job/upgrades/upgrades';
import { planInBackground, type PlanRun } from '$lib/workers/plan';
import { isKnown, keep } from './study';

/** Milliseconds without an edit: what is typed is not worked out letter by letter. */
const PAUSE = 250;

export class PlanDesk {
  /** How far the present run is; null: nothing runs. */
  progress = $state.raw<Progress | null>(null);
  /** The person stopped the run of the present state. */
  stopped = $state.raw(false);
  /** Counts what has come in, so that the page looks again. */
  arrived = $state.raw(0);

  #key = '';
  #run: PlanRun | null = null;
  #pause: ReturnType<typeof setTimeout> | undefined;

  /** Take the job as it is now; a run for another state is dropped. */
  follow(job: Job): void {
    const key = upgradesKey(job);
    if (key === this.#key) return;
    this.#drop();
    this.#key = key;
    this.stopped = false;
    if (isKnown(job)) return;
    this.progress = { done: 0, of: 1 };
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
    const run = planInBackground(job, (progress) => (this.progress = progress));
    this.#run = run;
    void run.study.then((study) => {
      if (this.#run !== run) return;
      if (study) keep(job, study);
      else this.stopped = true;
      this.#run = null;
      this.progress = null;
      this.arrived++;
    });
  }

  #drop(): void {
    clearTimeout(this.#pause);
    this.#run?.stop();
    this.#run = null;
    this.progress = null;
  }
}
