/**
 * Results worked out on another thread, so that typing is never held up. A sheet asks on every change
 * whether its result is there; while it is not, it says so and goes on showing the rest.
 */
import type { Side } from '$lib/job/evaluate';
import type { Job } from '$lib/job/types';
import { Desks } from './desks';
import type { TaskName, TaskResult } from './tasks';

/** What a sheet keeps of one task: whether a side's result is there, and where to put it. */
export interface Keeping<K extends TaskName> {
  readonly task: K;
  /** What the result depends on, as text; the same text gives the same result. */
  keyOf(side: Side): string;
  known(key: string): boolean;
  keep(key: string, value: TaskResult[K]): void;
}

let answers = $state(0);
const answered = () => void answers++;
const plain = new Desks(answered);
/** Bands have a thread of their own: what a sheet cannot do without is not kept waiting by them. */
const ofBands = new Desks(answered);

/** True when the result of `side` is there (or must be worked out here); else it is asked for. */
export function ready<K extends TaskName>(of: Keeping<K>, job: Job, side: Side): boolean {
  void answers;
  const { task } = of;
  const key = of.keyOf(side);
  const desks = task.startsWith('band ') ? ofBands : plain;
  if (of.known(key) || desks.hopeless(task, key)) return true;
  desks.ask({ task, key, job, side: side.id }, (k, value) => of.keep(k, value as TaskResult[K]));
  return false;
}
