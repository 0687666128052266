/** The thread that solves for a target: one question at a time; to stop it, end the thread. */
import { evaluate } from '$lib/job/evaluate';
import { invert } from '$lib/job/invert/invert';
import type { SearchAnswer, SearchAsked } from './searchMessages';

/** Between two reports of progress, ms. */
const SPELL = 60;

const send = (answer: SearchAnswer) => postMessage(answer);

addEventListener('message', ({ data: { job, wanted } }: MessageEvent<SearchAsked>) => {
  try {
    const sides = evaluate(job);
    wanted.forEach(({ side, key }, i) => {
      const of = sides[side];
      if (!of) return;
      let told = performance.now();
      const value = invert(of, (done, about) => {
        if (performance.now() - told < SPELL) return;
        told = performance.now();
        send({ kind: 'progress', done: i * about + done, about: wanted.length * about });
      });
      send({ kind: 'answer', key, value });
    });
    send({ kind: 'done' });
  } catch {
    // A fault of the program is met again, and worded, where the answer is shown.
    send({ kind: 'refused' });
  }
});
