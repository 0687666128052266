/** The thread that fits a log, or works out what a fit hands on: one question, one answer. To stop it, end the thread. */
import { evaluate } from '$lib/job/evaluate';
import { fitWish } from '$lib/job/log/fitWish';
import { fitLog } from '$lib/job/log/logFit';
import { measuredEdits, type LogEdits } from '$lib/job/log/logEdits';
import { problemOf } from '$lib/job/problem';
import type { DutyId } from '$lib/solver/loop/types';
import type { FitAnswer, FitAsked, HandAsked } from './logFitMessages';

const send = (answer: FitAnswer) => postMessage(answer);

addEventListener('message', ({ data }: MessageEvent<FitAsked | HandAsked>) => {
  const { job } = data;
  try {
    if (data.kind === 'fit') fit(data);
    else send({ kind: 'handed', edits: handed(data) });
  } catch (thrown) {
    send({ kind: 'refused', message: problemOf(thrown, job.header.units).message });
  }
});

function fit({ job, paced, spans }: FitAsked): void {
  const { prepared, values } = evaluate(job).asFound;
  if (!prepared.ok) {
    send({ kind: 'refused', message: prepared.problem.message });
    return;
  }
  let steps = 0;
  const found = fitLog(
    prepared.value,
    values['view.duty']!.choice as DutyId,
    paced,
    spans,
    fitWish(values),
    () => send({ kind: 'step', steps: ++steps }),
  );
  send({ kind: 'done', fit: found });
}

function handed({ job }: HandAsked): LogEdits {
  const { prepared } = evaluate(job).asFound;
  const { log } = job;
  if (!prepared.ok || !log?.fit) return { edits: [], left: [] };
  return measuredEdits(
    prepared.value,
    log.fit,
    job.header.units,
    log.means?.levels.volts?.mean ?? null,
  );
}
