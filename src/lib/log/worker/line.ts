/** The page's end of the line to the log's thread. */
import { LogError } from '../errors';
import type { Answer, Failure, Question, Talk, TalkName } from './messages';

/** Bytes and rows while a file is read; else steps, and how many there are. */
type Progress = (done: number, of: number) => void;

interface Open {
  readonly done: (value: unknown) => void;
  readonly failed: (failure: Failure) => void;
  readonly progress?: Progress;
}

export interface Asking<K extends TalkName> {
  readonly answer: Promise<Talk[K]['answer']>;
  stop(): void;
}

export class LogLine {
  #worker: Worker | null = null;
  #last = 0;
  readonly #open = new Map<number, Open>();

  ask<K extends TalkName>(kind: K, ask: Talk[K]['ask'], progress?: Progress): Asking<K> {
    const id = ++this.#last;
    const worker = this.#started();
    const answer = new Promise<Talk[K]['answer']>((resolve, reject) => {
      this.#open.set(id, {
        done: (value) => resolve(value as Talk[K]['answer']),
        failed: ({ code, message, facts }) =>
          reject(code === 'fault' ? new Error(message) : new LogError(code, message, facts)),
        progress,
      });
    });
    worker.postMessage({ id, kind, ask } as Question);
    return { answer, stop: () => worker.postMessage({ id, kind: 'stop' }) };
  }

  #started(): Worker {
    if (this.#worker) return this.#worker;
    const worker = new Worker(new URL('./logWorker.ts', import.meta.url), { type: 'module' });
    worker.addEventListener('message', ({ data }: MessageEvent<Answer>) => {
      const open = this.#open.get(data.id);
      if (data.kind === 'progress') open?.progress?.(data.done, data.of);
      else {
        this.#open.delete(data.id);
        if (data.kind === 'done') open?.done(data.value);
        else open?.failed(data.failure);
      }
    });
    worker.addEventListener('error', () => {
      for (const { failed } of this.#open.values())
        failed({ code: 'fault', message: 'The log could not be worked on.', facts: {} });
      this.#open.clear();
    });
    return (this.#worker = worker);
  }
}
