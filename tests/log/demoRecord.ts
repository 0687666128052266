/** What the demonstration job keeps of its invented log: found in it as the sheet finds it. */
import { evaluate } from '$lib/job/evaluate';
import { FIT_ROWS, fitLog, type Span } from '$lib/job/logFit';
import { keptLevels, keptLog } from '$lib/job/logKeep';
import type { LogRecord } from '$lib/job/logRecord';
import type { Job } from '$lib/job/types';
import { readLog } from '$lib/log';
import { LogSession } from '$lib/log/worker/session';

/** Cruise: one air flow through both cores, so that one conductance each can hold. */
export const SPANS: readonly Span[] = [
  { from: 215, to: 380, use: 'fit' },
  { from: 380, to: 445, use: 'hold-out' },
];

export function openDemo(text: string): LogSession {
  const bytes = new TextEncoder().encode(text);
  return new LogSession(readLog(bytes), { name: 'demo-log.csv', size: bytes.length });
}

export function demoRecord(job: Job, text: string): LogRecord {
  const session = openDemo(text);
  const opened = session.opened();
  const assigned = opened.guesses.map(({ channel, column, unit }) => ({
    channel,
    column,
    unit: unit!,
  }));
  const mapped = session.map(assigned);
  const { prepared } = evaluate(job).asFound;
  if (!prepared.ok) throw new Error(prepared.problem.message);
  const fitted = SPANS.filter(({ use }) => use === 'fit').map(({ from, to }) => ({ from, to }));
  return {
    ...keptLog(opened, assigned, mapped, session.events(), true),
    means: { spans: fitted, levels: keptLevels(session.pace(fitted, 2, true).levels) },
    fit: fitLog(prepared.value, 'cruise', session.pace(SPANS, FIT_ROWS, true), SPANS, 'reservoir'),
  };
}
