/** One log held open: its columns as channels, seen, paced and searched. Runs anywhere. */
import { inSI, LOG_CHANNELS, type LogChannel } from '../channels';
import { firstAt, plotRows } from '../downSample';
import { LogError } from '../errors';
import { guessChannels } from '../guess';
import { MARK, markReadings } from '../marks';
import type { Log } from '../reader';
import { evenTimes, meanAt } from '../resample';
import { timeAxis, type TimeAxis } from '../timeAxis';
import { logScale } from '../units';
import type {
  Assigned,
  ChannelCard,
  FoundEvent,
  Level,
  Levels,
  MappedLog,
  OpenedLog,
  Paced,
  Seen,
  Stretch,
} from './messages';
import type { Channel, Searched, Steps } from './mapped';
import { AFTERWARDS, markOptions } from './rules';
import { searchedEvents } from './search';

function finished<T>(steps: Steps<T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** Wild readings told one by one; the rest by their number. */
const TOLD = 5;
const SAMPLE = 3;

/** The log's columns as channels on its time. */
interface Mapped extends Searched {
  readonly axis: TimeAxis;
  /** Rows of the axis that follow a gap in time. */
  readonly gaps: Int32Array;
}

export class LogSession {
  private mapped: Mapped | null = null;
  /** Marked, but not searched for events yet: where that is stopped, what was mapped before stays. */
  private next: Mapped | null = null;

  constructor(
    private readonly log: Log,
    private readonly file: { readonly name: string; readonly size: number },
  ) {}

  opened(): OpenedLog {
    const { columns, rows, notes } = this.log;
    return {
      ...this.file,
      rows,
      notes,
      columns: columns.map(({ heading, form, values, empty, text }) => ({
        text: heading.text,
        name: heading.name,
        unit: heading.unit,
        isTime: form === 'clock' || form === 'date',
        holdsNumbers: form !== null,
        gaps: empty + text,
        sample: Array.from(values.subarray(0, 400)).filter(Number.isFinite).slice(0, SAMPLE),
      })),
      guesses: guessChannels(columns).map(({ channel, column, unit, confidence }) => ({
        channel,
        column,
        unit,
        confidence,
      })),
    };
  }

  /** @throws as {@link mapping} */
  map(assigned: readonly Assigned[]): MappedLog {
    return finished(this.mapping(assigned));
  }

  /**
   * Channel by channel, telling after each how far it is: a million rows take a moment.
   * @throws {@link LogError} for a time that does not run; what was mapped before then stays
   */
  *mapping(assigned: readonly Assigned[]): Steps<MappedLog> {
    const timed = assigned.find(({ channel }) => channel === 'time');
    if (!timed) throw new LogError('no-time', 'Say which column is the time.');
    const column = this.log.columns[timed.column]!;
    const form = column.form ?? 'number';
    const factor = form === 'number' ? (logScale(timed.unit, 'time')?.factor ?? 1) : 1;
    const seconds = factor === 1 ? column.values : column.values.map((x) => x * factor);
    const axis = timeAxis(seconds, form);
    yield { done: 1, of: assigned.length };
    const channels = new Map<LogChannel, Channel>();
    for (const { channel, column: j, unit } of assigned) {
      if (channel === 'time') continue;
      const raw = this.log.columns[j]!;
      const si = inSI(raw.values, unit, channel);
      if (!si)
        throw new LogError(
          'no-numbers',
          `${raw.heading.text}: “${unit}” is no unit of ${LOG_CHANNELS[channel].name.toLowerCase()}.`,
          { column: raw.heading.text, value: unit },
        );
      const values =
        axis.rows.length === si.length ? si : Float64Array.from(axis.rows, (row) => si[row]!);
      channels.set(channel, { values, marks: markReadings(values, markOptions(channel)) });
      yield { done: 1 + channels.size, of: assigned.length };
    }
    const { t } = axis;
    const leaps = axis.breaks.filter(({ kind }) => kind === 'gap');
    const gaps = Int32Array.from(leaps, ({ row }) => firstAt(axis.rows, row));
    this.next = { axis, gaps, channels };
    return {
      duration: t.at(-1)!,
      step: axis.step,
      notes: axis.notes,
      channels: [...channels].map(([channel, own]) => cardOf(channel, own, t)),
    };
  }

  view(from: number, to: number, pixels: number): Seen[] {
    const { axis, gaps, channels } = this.current();
    const { t } = axis;
    return [...channels].map(([channel, { values, marks }]) => {
      const rows = plotRows(t, values, { from, to, pixels, gaps });
      return {
        channel,
        t: Float64Array.from(rows, (row) => t[Math.abs(row)]!),
        x: Float64Array.from(rows, (row) => (row < 0 ? NaN : values[row]!)),
        flags: Uint8Array.from(rows, (row) => (row < 0 ? MARK.none : marks.flags[row]!)),
      };
    });
  }

  events(): FoundEvent[] {
    return finished(this.searching());
  }

  /** Rule by rule. At its end what was mapped last takes the place of what was mapped before. */
  *searching(): Steps<FoundEvent[]> {
    const mapped = this.next ?? this.current();
    const groups = yield* searchedEvents(mapped);
    [this.mapped, this.next] = [mapped, null];
    return groups.map((group) => {
      const begun = Math.max(...group.events.map(({ latest }) => latest));
      return {
        ...group,
        after: levelsOf(mapped, [{ from: begun + AFTERWARDS[0], to: begun + AFTERWARDS[1] }]),
      };
    });
  }

  /**
   * Channels at one pace from the first span to the last, at most `most` rows.
   * @throws {@link LogError} without a span
   */
  pace(spans: readonly Stretch[], most: number, leaveOutMarked: boolean): Paced {
    const mapped = this.current();
    const { axis, channels } = mapped;
    const from = Math.max(0, Math.min(...spans.map((s) => s.from)));
    const to = Math.min(axis.t.at(-1)!, Math.max(...spans.map((s) => s.to)));
    if (!(to > from)) throw new LogError('no-time', 'These spans hold no time of this log.');
    const step = Math.max(axis.step, (to - from) / (most - 1));
    const at = evenTimes(from, to, step);
    const paced = [...channels].map(([channel, { values, marks }]) => {
      const skip = leaveOutMarked
        ? (row: number) => marks.flags[row] !== MARK.none
        : (row: number) => (marks.flags[row]! & MARK.beyond) !== 0;
      return [channel, meanAt(axis.t, values, at, step, skip)] as const;
    });
    return { t: at, channels: Object.fromEntries(paced), levels: levelsOf(mapped, spans) };
  }

  private current(): Mapped {
    const mapped = this.mapped ?? this.next;
    if (!mapped) throw new LogError('no-time', 'Say which column is the time.');
    return mapped;
  }
}

/** Marked readings do not count. */
function levelsOf({ axis, channels }: Mapped, spans: readonly Stretch[]): Levels {
  const levels: Levels = {};
  for (const [channel, { values, marks }] of channels) {
    const level = levelOf(axis.t, values, marks.flags, spans);
    if (level.count > 0) levels[channel] = level;
  }
  return levels;
}

function cardOf(channel: LogChannel, { values, marks }: Channel, t: Float64Array): ChannelCard {
  let [low, high] = [Infinity, -Infinity];
  const wild: [number, number][] = [];
  for (let k = 0; k < values.length; k++) {
    const x = values[k]!;
    if (x < low) low = x;
    if (x > high) high = x;
    if (wild.length < TOLD && marks.flags[k]! & (MARK.outlier | MARK.beyond)) wild.push([t[k]!, x]);
  }
  return {
    channel,
    low,
    high,
    outliers: marks.outliers,
    beyond: marks.beyond,
    stuck: marks.stuck.map(({ from, to }) => [t[from]!, t[to]!]),
    wild,
  };
}

function levelOf(
  t: Float64Array,
  values: Float64Array,
  flags: Uint8Array,
  spans: readonly Stretch[],
): Level {
  let [count, sum, squares] = [0, 0, 0];
  const origin = values.find(Number.isFinite) ?? 0; // small numbers keep their digits in the squares
  for (const { from, to } of spans) {
    for (let k = firstAt(t, from); k < t.length && t[k]! <= to; k++) {
      if (!Number.isFinite(values[k]!) || flags[k] !== MARK.none) continue;
      const x = values[k]! - origin;
      count++;
      sum += x;
      squares += x * x;
    }
  }
  const mean = sum / count;
  const variance = count > 1 ? Math.max(0, (squares - count * mean * mean) / (count - 1)) : 0;
  return { mean: origin + mean, deviation: Math.sqrt(variance), count };
}
