/** The thread that compares candidates: one job, one study. To stop it, end the thread. */
import { upgradeStudy } from '$lib/job/upgrades/upgrades';
import type { PlanAnswer, PlanAsked } from './planMessages';

/** Between two words about how far it is, ms. */
const TELL_EVERY = 100;

const send = (answer: PlanAnswer) => postMessage(answer);

addEventListener('message', ({ data }: MessageEvent<PlanAsked>) => {
  try {
    let told = 0;
    const work = upgradeStudy(data.job);
    for (let step = work.next(); ; step = work.next()) {
      if (step.done) return send({ kind: 'done', study: step.value });
      if (performance.now() - told < TELL_EVERY) continue;
      told = performance.now();
      send({ kind: 'progress', ...step.value });
    }
  } catch {
    // What cannot be solved is worded where it is shown.
    send({ kind: 'refused' });
  }
});
