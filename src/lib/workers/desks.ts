/** Who is served by the other thread: one wish at a time for each task and side, the latest one next. */
import { forThread } from './forThread';
import type { TaskName } from './tasks';
import type { Answered, Asked } from './worker';

type Put = (key: string, value: unknown) => void;

interface Desk {
  /** Sent and not answered; null: idle. */
  sent: string | null;
  /** The latest wish while another is worked on: earlier ones have been overtaken by an edit. */
  waiting: Asked | null;
  readonly put: Put;
}

export class Desks {
  readonly #desks = new Map<string, Desk>();
  /** Could not be solved there: to be tried, and worded, where it is shown. */
  readonly #refused = new Set<string>();
  #worker: Worker | null = null;
  /** Without a second thread everything is worked out where it is shown. */
  #broken = typeof Worker === 'undefined';

  /** @param onChange - called after every answer */
  constructor(readonly onChange: () => void) {}

  /** True when asking is of no use: the work must be done where it is shown. */
  hopeless(task: TaskName, key: string): boolean {
    return this.#broken || this.#refused.has(`${task} ${key}`);
  }

  ask(wish: Asked, put: Put): void {
    const place = `${wish.task} ${wish.side}`;
    let desk = this.#desks.get(place);
    if (!desk) this.#desks.set(place, (desk = { sent: null, waiting: null, put }));
    if (desk.sent === null) this.#send(desk, wish);
    else desk.waiting = desk.sent === wish.key ? null : wish;
  }

  #send(desk: Desk, wish: Asked): void {
    desk.sent = wish.key;
    this.#started().postMessage({ ...wish, job: forThread(wish.job) } satisfies Asked);
  }

  #started(): Worker {
    if (this.#worker) return this.#worker;
    const worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
    worker.addEventListener('message', ({ data }: MessageEvent<Answered>) => this.#answered(data));
    worker.addEventListener('error', () => {
      this.#broken = true;
      this.onChange();
    });
    return (this.#worker = worker);
  }

  #answered(answer: Answered): void {
    const desk = this.#desks.get(`${answer.task} ${answer.side}`);
    if (!desk) return;
    if (answer.ok) desk.put(answer.key, answer.value);
    else this.#refused.add(`${answer.task} ${answer.key}`);
    const next = desk.waiting;
    desk.sent = desk.waiting = null;
    if (next) this.#send(desk, next);
    this.onChange();
  }
}
