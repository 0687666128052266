/** The thread that fits a log: one question, its steps, one answer. To stop it, end the thread. */
import { evaluate } from '$lib/job/evaluate';
import { fitLog } from '$lib/job/logFit';
import { problemOf } from '$lib/job/problem';
import type { DutyId } from '$lib/solver/loop/types';
import type { MassesSought } from '$lib/solver/loop/fromLog/types';
import type { FitAnswer, FitAsked } from './logFitMessages';

const send = (answer: FitAnswer) => postMessage(answer);

addEventListener('message', ({ data }: MessageEvent<FitAsked>) => {
  const { job, paced, spans } = data;
  const { prepared, values } = evaluate(job).asFound;
  if (!prepared.ok) {
    send({ kind: 'refused', message: prepared.problem.message });
    return;
  }
  let steps = 0;
  try {
    const fit = fitLog(
      prepared.value,
      values['view.duty']!.choice as DutyId,
      paced,
      spans,
      values['log.masses']!.choice as MassesSought,
      () => send({ kind: 'step', steps: ++steps }),
    );
    send({ kind: 'done', fit });
  } catch (thrown) {
    send({ kind: 'refused', message: problemOf(thrown, job.header.units).message });
  }
});
