/** What the demonstration job keeps of its invented log: found in it as the sheet finds it. */
import { evaluate } from '$lib/job/evaluate';
import { fitWish } from '$lib/job/log/fitWish';
import { FIT_ROWS, fitLog, type Span } from '$lib/job/log/logFit';
import { keptLevels, keptLog } from '$lib/job/log/logKeep';
import type { LogRecord } from '$lib/job/log/logRecord';
import type { Job } from '$lib/job/types';
import { readLog } from '$lib/log';
import { LogSession } from '$lib/log/worker/session';

/** Cruise with the first pull; the second is set aside, to be foretold. */
export const SPANS: readonly Span[] = [
  { from: 215, to: 550, use: 'fit' },
  { from: 590, to: 800, use: 'hold-out' },
];

export function openDemo(text: string): LogSession {
  const bytes = new TextEncoder().encode(text);
  return new LogSession(readLog(bytes), { name: 'demo-log.csv', size: bytes.length });
}

export function demoRecord(job: Job, text: string, spans: readonly Span[] = SPANS): LogRecord {
  const session = openDemo(text);
  const opened = session.opened();
  const assigned = opened.guesses.map(({ channel, column, unit }) => ({
    channel,
    column,
    unit: unit!,
  }));
  const mapped = session.map(assigned);
  const { prepared, values } = evaluate(job).asFound;
  if (!prepared.ok) throw new Error(prepared.problem.message);
  const fitted = spans.filter(({ use }) => use === 'fit').map(({ from, to }) => ({ from, to }));
  return {
    ...keptLog(opened, assigned, mapped, session.events(), true),
    means: { spans: fitted, levels: keptLevels(session.pace(fitted, 2, true).levels) },
    fit: fitLog(
      prepared.value,
      'cruise',
      session.pace(spans, FIT_ROWS, true),
      spans,
      fitWish(values),
    ),
  };
}
