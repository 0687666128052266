/** The page's end of the line to the thread that draws loops. */
import { forThread } from './forThread';
import type { SureAnswer, SureAsked } from './sureMessages';

export type SureWish = Omit<SureAsked, 'kind' | 'number'>;

export class SureLine {
  #worker: Worker | null = null;
  #number = 0;

  /** @param onAnswer - of the latest question only; null: there is no other thread here */
  constructor(readonly onAnswer: (answer: SureAnswer | null) => void) {}

  /** Ask; what was asked before is dropped. The thread stays, warm for the next edit. */
  ask(wish: SureWish): void {
    if (typeof Worker === 'undefined') return this.onAnswer(null);
    this.#started().postMessage({
      kind: 'study',
      number: ++this.#number,
      ...wish,
      job: forThread(wish.job),
    } satisfies SureAsked);
  }

  stop(): void {
    this.#number++;
    this.#worker?.postMessage({ kind: 'stop' });
  }

  #started(): Worker {
    if (this.#worker) return this.#worker;
    const worker = new Worker(new URL('./sureWorker.ts', import.meta.url), { type: 'module' });
    worker.addEventListener('message', ({ data }: MessageEvent<SureAnswer>) => {
      if (data.number === this.#number) this.onAnswer(data);
    });
    worker.addEventListener('error', () => this.onAnswer(null));
    return (this.#worker = worker);
  }
}
