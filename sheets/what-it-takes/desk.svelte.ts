/** What of the answers is there, under way, or stopped. One desk for the window: the thread stays warm. */
import { invertKey } from '$lib/job/invert/invert';
import type { Side } from '$lib/job/evaluate';
import type { Job } from '$lib/job/types';
import { SearchLine } from '$lib/workers/search';
import type { SearchAnswer } from '$lib/workers/searchMessages';
import { isKnown, keep } from './study';

class SearchDesk {
  readonly #line = new SearchLine((answer) => this.#hear(answer));
  #asked = '';
  /** Counts answers: what is derived from them follows it. */
  #answers = $state(0);
  /** No other thread here, or it failed: worked out where it is shown. */
  #alone = $state(false);
  /** Share of the work done; null: nothing under way. */
  progress = $state<number | null>(null);
  /** What was asked when the reader stopped it; asked again only on request. */
  #stopped = $state.raw<string | null>(null);

  /** True when the answers of these sides are there, or must be worked out here. */
  ready(sides: readonly Side[]): boolean {
    void this.#answers;
    return this.#alone || sides.every(isKnown);
  }

  /** See that the answers of these sides are under way. */
  ask(job: Job, sides: readonly Side[]): void {
    const wanted = sides
      .filter((side) => !isKnown(side))
      .map((side) => ({ side: side.id, key: invertKey(side) }));
    // Of all sides, so that an answer that arrives does not look like another question.
    const asked = JSON.stringify(sides.map(invertKey));
    if (wanted.length === 0 || this.#alone || asked === this.#asked || asked === this.#stopped)
      return;
    this.#asked = asked;
    this.#stopped = null;
    this.progress = 0;
    this.#line.ask({ job, wanted });
  }

  get stopped(): boolean {
    return this.#stopped !== null;
  }

  stop(): void {
    this.#line.stop();
    this.#stopped = this.#asked;
    this.#asked = '';
    this.progress = null;
  }

  resume(job: Job, sides: readonly Side[]): void {
    this.#stopped = null;
    this.ask(job, sides);
  }

  #hear(answer: SearchAnswer | null): void {
    if (answer?.kind === 'progress') {
      this.progress = answer.done / answer.about;
      return;
    }
    if (answer?.kind === 'answer') keep(answer.key, answer.value);
    else {
      this.progress = null;
      this.#asked = '';
      if (answer?.kind !== 'done') this.#alone = true;
    }
    this.#answers++;
  }
}

export const desk = new SearchDesk();
