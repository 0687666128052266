/** Results and findings of every sheet of the open job, followed beside the page. */
import { evaluate } from '$lib/job/evaluate';
import type { Job } from '$lib/job/types';
import { gather, partsOf, type Gathered } from './gather';
import { sameResults, startRun, type Run } from './run';

/** Milliseconds without an edit: what is typed is not worked out letter by letter. */
const PAUSE = 500;

export interface Whole {
  readonly job: Job;
  readonly parts: readonly Gathered[];
}

export class LiveGathering {
  /** What is there; parts of the state before stay until theirs is worked out again. */
  parts = $state.raw<readonly Gathered[]>([]);
  /** Parts worked out of the present state, and how many there are. */
  count = $state.raw(0);
  of = $state.raw(1);
  done = $state.raw(false);

  #job: Job | null = null;
  #run: Run | null = null;
  #pause: ReturnType<typeof setTimeout> | undefined;
  #waiting: ((whole: Whole) => void)[] = [];

  /** Take the job as it is now; what is under way for an older state is dropped. */
  follow(job: Job): void {
    const before = this.#job;
    this.#job = job;
    if (before && sameResults(before, job)) return;
    this.#drop();
    this.done = false;
    this.count = 0;
    this.of = partsOf({ candidate: job.candidate && evaluate(job).candidate });
    const begin = () => (this.#run = startRun(job, (part) => this.#tell(job, part)));
    if (before) this.#pause = setTimeout(begin, PAUSE);
    else begin();
  }

  /** The next state that is worked out whole: the present one, or one edited since. */
  whole(): Promise<Whole> {
    if (this.done && this.#job) return Promise.resolve({ job: this.#job, parts: this.parts });
    return new Promise((resolve) => this.#waiting.push(resolve));
  }

  /** Everything at once, for paper: the page waits. */
  now(job: Job): readonly Gathered[] {
    return this.done ? this.parts : [...gather(evaluate(job))];
  }

  stop(): void {
    this.#drop();
    this.#job = null;
  }

  #tell(job: Job, part: Gathered | null): void {
    if (part) {
      this.parts = replaced(this.parts, part);
      this.count++;
      return;
    }
    if (!job.candidate) this.parts = this.parts.filter(({ side }) => side === 'asFound');
    this.done = true;
    this.#run = null;
    for (const resolve of this.#waiting.splice(0)) resolve({ job, parts: this.parts });
  }

  #drop(): void {
    clearTimeout(this.#pause);
    this.#run?.stop();
    this.#run = null;
  }
}

function replaced(parts: readonly Gathered[], part: Gathered): readonly Gathered[] {
  const at = parts.findIndex(({ sheet, side }) => sheet === part.sheet && side === part.side);
  return at < 0 ? [...parts, part] : parts.with(at, part);
}
