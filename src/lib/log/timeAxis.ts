/** A rising time in seconds out of a log's time column, with what was wrong with it. */
import { LogError, type LogNote } from './errors';
import { counted, times } from './plural';

export interface TimeAxis {
  /** From 0 at the first row that has a time; rising throughout. */
  readonly t: Float64Array;
  /** Rows of the log that `t` belongs to: those with a time. */
  readonly rows: Int32Array;
  /** Usual time between rows, s. */
  readonly step: number;
  /** Places where time does not simply go on; row numbers count from 0. */
  readonly breaks: readonly TimeBreak[];
  readonly notes: readonly LogNote[];
}

export interface TimeBreak {
  readonly kind: 'gap' | 'clock-back' | 'clock-ahead' | 'midnight';
  readonly row: number;
  /** Time the log jumps by there, s. */
  readonly by: number;
}

const DAY = 86400;
/** So many usual steps make a gap; so long a leap ahead within steady logging is a clock that was set. */
const GAP_STEPS = 5;
const CLOCK_SET = 1800;
/** Share of steps that may go back; more, and the column is not a time, or it runs backwards. */
const BACK_SHARE = 0.02;

/**
 * @param values - the time column in seconds
 * @throws {@link LogError} `no-time` where it holds none, `time-backwards` where it mostly falls or jumps about
 */
export function timeAxis(values: Float64Array, form: 'number' | 'clock' | 'date'): TimeAxis {
  const rows = rowsWithTime(values);
  if (rows.length < 2) throw new LogError('no-time', 'The time column holds fewer than two times.');
  const { step, tick } = usualStep(values, rows);
  const t = new Float64Array(rows.length);
  const breaks: TimeBreak[] = [];
  let standing = 0;
  for (let i = 1; i < rows.length; i++) {
    const row = rows[i]!;
    let by = values[row]! - values[rows[i - 1]!]!;
    if (form === 'clock' && by < -0.9 * DAY) {
      breaks.push({ kind: 'midnight', row, by });
      by += DAY;
    }
    if (by < 0) breaks.push({ kind: 'clock-back', row, by });
    else if (by > CLOCK_SET && form !== 'number') breaks.push({ kind: 'clock-ahead', row, by });
    else if (by > GAP_STEPS * tick) breaks.push({ kind: 'gap', row, by });
    if (by === 0) standing++;
    // A clock that was set tells nothing of the time that passed: the usual step is put in.
    const passed = by < 0 || (by > CLOCK_SET && form !== 'number') ? step : by;
    t[i] = t[i - 1]! + passed;
  }
  requireForward(breaks, values, rows);
  if (standing > 0) spread(t, step);
  return { t, rows, step, breaks, notes: notesOf(breaks, standing, values.length - rows.length) };
}

function rowsWithTime(values: Float64Array): Int32Array {
  const rows = new Int32Array(values.length);
  let count = 0;
  for (let k = 0; k < values.length; k++) if (Number.isFinite(values[k]!)) rows[count++] = k;
  return rows.slice(0, count);
}

/** Median of the steps ahead (`tick`) and the time a row takes (`step`), from a sample of them where there are many. */
function usualStep(values: Float64Array, rows: Int32Array): { step: number; tick: number } {
  const steps: number[] = [];
  let stride = Math.max(1, Math.floor(rows.length / 20_000));
  // No divisor in common with the ten or hundred rows that may share a time.
  while (stride > 1 && (stride % 2 === 0 || stride % 5 === 0)) stride++;
  // Counted from the first step ahead to the last: the rows before and after share a time in part only.
  let looked = 0;
  let standing = 0;
  for (let i = stride; i < rows.length; i += stride) {
    const by = values[rows[i]!]! - values[rows[i - 1]!]!;
    if (by === 0 && steps.length > 0) looked++;
    if (by > 0) {
      if (steps.length > 0) standing = looked;
      steps.push(by);
    }
  }
  if (steps.length === 0) {
    const falls = values[rows.at(-1)!]! < values[rows[0]!]!;
    throw falls
      ? new LogError(
          'time-backwards',
          'Time runs backwards from row to row. Sort the log by time, oldest first.',
        )
      : new LogError('no-time', 'The time column stands still: every row has the same time.');
  }
  steps.sort((a, b) => a - b);
  const tick = steps[steps.length >> 1]!;
  // Times written more coarsely than rows come: each is shared by several rows.
  return {
    tick,
    step: steps.length > 1 ? (tick * (steps.length - 1)) / (steps.length - 1 + standing) : tick,
  };
}

function requireForward(
  breaks: readonly TimeBreak[],
  values: Float64Array,
  rows: Int32Array,
): void {
  const back = breaks.filter(({ kind }) => kind === 'clock-back');
  if (back.length <= Math.max(3, BACK_SHARE * rows.length)) return;
  const { row } = back[0]!;
  const before = values[rows[rows.indexOf(row) - 1]!]!;
  throw new LogError(
    'time-backwards',
    `Time goes backwards at ${counted(back.length, 'row')}, first at row ${row + 1} of the numbers (${before} to ${values[row]}). Choose another column as time, or sort the log.`,
    { row, value: values[row] },
  );
}

/** Rows that share one time are spread evenly up to the next. */
function spread(t: Float64Array, step: number): void {
  let i = 0;
  while (i < t.length) {
    let end = i + 1;
    while (end < t.length && t[end] === t[i]) end++;
    const next = end < t.length ? t[end]! : t[i]! + step * (end - i);
    const width = Math.min(next - t[i]!, step * (end - i) * 1.5);
    for (let k = i + 1; k < end; k++) t[k] = t[i]! + (width * (k - i)) / (end - i);
    i = end;
  }
}

function notesOf(breaks: readonly TimeBreak[], standing: number, without: number): LogNote[] {
  const notes: LogNote[] = [];
  const count = (kind: TimeBreak['kind']) => breaks.filter((b) => b.kind === kind).length;
  const say = (code: string, n: number, message: string) =>
    n > 0 && notes.push({ code, count: n, message, row: breaks.find((b) => b.kind === code)?.row });
  say('gap', count('gap'), `Gaps in time: ${count('gap')}.`);
  say(
    'clock-back',
    count('clock-back'),
    `The clock was set back ${times(count('clock-back'))}; the log goes on at its usual pace there.`,
  );
  say(
    'clock-ahead',
    count('clock-ahead'),
    `The clock leaps ahead ${times(count('clock-ahead'))}; the log goes on at its usual pace there.`,
  );
  say('midnight', count('midnight'), 'The log runs past midnight.');
  say(
    'shared-times',
    standing,
    `${counted(standing, 'row shares', 'rows share')} the time of the row before; spread evenly.`,
  );
  say(
    'rows-without-time',
    without,
    `${counted(without, 'row has no time and is', 'rows have no time and are')} left out.`,
  );
  return notes;
}
