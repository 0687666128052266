/** What of the studies is there, under way, or stopped. One desk for the window: the thread stays warm. */
import type { Side } from '$lib/job/evaluate';
import { sidesOf, surenessKey } from '$lib/job/sure/sureness';
import type { Job } from '$lib/job/types';
import type { DutyId } from '$lib/solver/loop/types';
import { SureLine, type SureWish } from '$lib/workers/sure';
import type { SureAnswer } from '$lib/workers/sureMessages';
import { doubtKey, doubtStudies, studies } from './study';

interface Progress {
  readonly what: 'draws' | 'doubts';
  readonly share: number;
}

class SureDesk {
  readonly #line = new SureLine((answer) => this.#hear(answer));
  #asked = '';
  /** Counts answers: what is derived from the studies follows it. */
  #answers = $state(0);
  /** No other thread here: everything is worked out where it is shown, with fewer draws. */
  #alone = $state(false);
  progress = $state.raw<Progress | null>(null);
  /** What was asked when the reader stopped it; asked again only on request. */
  #stopped = $state.raw<string | null>(null);

  /** True when the draws of these sides are there, or must be made here. */
  drawn(sides: readonly Side[]): boolean {
    void this.#answers;
    return this.#alone || sides.every((side) => studies.has(surenessKey(side)));
  }

  doubted(sides: readonly Side[], duty: DutyId): boolean {
    void this.#answers;
    return (
      this.#alone || sides.every((side) => doubtStudies.has(doubtKey(surenessKey(side), duty)))
    );
  }

  /** See that all of a job is under way; the two compared on the sheet first. */
  ask(job: Job, duty: DutyId): void {
    const keys = sidesOf(job).map(surenessKey);
    const shown = keys.slice(0, job.candidate ? 2 : 1);
    const wish: SureWish = {
      job,
      draw: keys.filter((key) => !studies.has(key)),
      doubt: shown.filter((key) => !doubtStudies.has(doubtKey(key, duty))),
      duty,
    };
    if (wish.draw.length + wish.doubt.length === 0) return;
    const asked = JSON.stringify([duty, keys]);
    if (asked === this.#asked || asked === this.#stopped || this.#alone) return;
    this.#asked = asked;
    this.#stopped = null;
    this.progress = { what: wish.draw.length ? 'draws' : 'doubts', share: 0 };
    this.#line.ask(wish);
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

  resume(job: Job, duty: DutyId): void {
    this.#stopped = null;
    this.ask(job, duty);
  }

  #hear(answer: SureAnswer | null): void {
    if (answer?.kind === 'progress') {
      this.progress = { what: answer.what, share: answer.share };
      return;
    }
    if (answer?.kind === 'draws') studies.set(answer.key, answer.value);
    else if (answer?.kind === 'doubts')
      doubtStudies.set(doubtKey(answer.key, answer.duty), answer.value);
    else {
      this.progress = null;
      this.#asked = '';
      if (answer?.kind !== 'done') this.#alone = true;
    }
    this.#answers++;
  }
}

export const desk = new SureDesk();
