/** What the demonstration job keeps of its invented log: found in it as the sheet finds it. */
import { evaluate, type Side } from '$lib/job/evaluate';
import { FIT_ROWS, fitLog, type FitWish, type Span } from '$lib/job/log/logFit';
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

/** What the demonstration job says of masses and instruments. */
const wishOf = (values: Side['values']): FitWish => ({
  masses: values['log.masses']!.choice as FitWish['masses'],
  errors: {
    temperature: values['log.temperatureError']!.si!,
    flow: values['log.flowError']!.si!,
  },
});

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
  const { prepared, values } = evaluate(job).asFound;
  if (!prepared.ok) throw new Error(prepared.problem.message);
  const fitted = SPANS.filter(({ use }) => use === 'fit').map(({ from, to }) => ({ from, to }));
  return {
    ...keptLog(opened, assigned, mapped, session.events(), true),
    means: { spans: fitted, levels: keptLevels(session.pace(fitted, 2, true).levels) },
    fit: fitLog(
      prepared.value,
      'cruise',
      session.pace(SPANS, FIT_ROWS, true),
      SPANS,
      wishOf(values),
    ),
  };
}
