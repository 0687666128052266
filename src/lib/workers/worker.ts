/** The other thread: a job comes in, one task's result goes out. */
import { evaluate } from '$lib/job/evaluate';
import type { Job, SideId } from '$lib/job/types';
import { TASKS, type TaskName } from './tasks';

export interface Asked {
  readonly task: TaskName;
  readonly key: string;
  readonly job: Job;
  readonly side: SideId;
}

export type Answered = Pick<Asked, 'task' | 'key' | 'side'> &
  ({ readonly ok: true; readonly value: unknown } | { readonly ok: false });

addEventListener('message', ({ data }: MessageEvent<Asked>) => {
  const { job, ...asked } = data;
  let answer: Answered;
  try {
    const { asFound, candidate } = evaluate(job);
    const side = asked.side === 'asFound' ? asFound : candidate;
    const sides = candidate ? [asFound, candidate] : [asFound];
    answer = side
      ? { ...asked, ok: true, value: TASKS[asked.task]!(side, sides) }
      : { ...asked, ok: false };
  } catch {
    // What cannot be solved is worded where it is shown; there the attempt is made again and fails at once.
    answer = { ...asked, ok: false };
  }
  postMessage(answer);
});
