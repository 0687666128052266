/** The page's end of the line to the thread that solves for a target. */
import { forThread } from './forThread';
import type { SearchAnswer, SearchAsked } from './searchMessages';

export class SearchLine {
  #worker: Worker | null = null;
  #busy = false;

  /** @param onAnswer - null: there is no other thread here */
  constructor(readonly onAnswer: (answer: SearchAnswer | null) => void) {}

  /** Ask; what is still being worked on is given up. An idle thread stays, warm for the next edit. */
  ask(wish: SearchAsked): void {
    if (typeof Worker === 'undefined') return this.onAnswer(null);
    if (this.#busy) this.stop();
    this.#busy = true;
    this.#started().postMessage({ ...wish, job: forThread(wish.job) } satisfies SearchAsked);
  }

  stop(): void {
    this.#worker?.terminate();
    this.#worker = null;
    this.#busy = false;
  }

  #started(): Worker {
    if (this.#worker) return this.#worker;
    const worker = new Worker(new URL('./searchWorker.ts', import.meta.url), { type: 'module' });
    worker.addEventListener('message', ({ data }: MessageEvent<SearchAnswer>) => {
      if (worker !== this.#worker) return;
      if (data.kind === 'done' || data.kind === 'refused') this.#busy = false;
      this.onAnswer(data);
    });
    worker.addEventListener('error', () => worker === this.#worker && this.onAnswer(null));
    return (this.#worker = worker);
  }
}
