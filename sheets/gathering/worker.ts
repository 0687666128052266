/** The thread that works out every sheet of a job: one part after the other, null at the end. */
import { evaluate } from '$lib/job/evaluate';
import type { Job } from '$lib/job/types';
import { gather, type Gathered } from './gather';

const send = (part: Gathered | null) => postMessage(part);

addEventListener('message', ({ data }: MessageEvent<Job>) => {
  for (const part of gather(evaluate(data), true)) send(part);
  send(null);
});
