/** From what a log's thread found to what the job keeps of it. */
import { LOG_CHANNELS, type LogChannel } from '$lib/log/channels';
import type { Assigned, FoundEvent, Levels, MappedLog, OpenedLog } from '$lib/log/worker/messages';
import type { LogLevels, LogRecord } from './logRecord';

/** Events kept. */
const MOST_EVENTS = 20;

export function keptLog(
  opened: OpenedLog,
  assigned: readonly Assigned[],
  mapped: MappedLog,
  events: readonly FoundEvent[],
  invented: boolean,
): LogRecord {
  return {
    name: opened.name.slice(0, 200),
    size: opened.size,
    rows: opened.rows,
    duration: mapped.duration,
    invented,
    channels: assigned.map(({ channel, column, unit }) => ({
      channel,
      column: opened.columns[column]!.text.slice(0, 200),
      unit,
    })),
    notes: [...opened.notes, ...mapped.notes]
      .map(({ message }) => message.slice(0, 400))
      .slice(0, 60),
    marks: mapped.channels
      .filter(({ outliers, stuck, beyond }) => outliers + stuck.length + beyond > 0)
      .map(({ channel, outliers, stuck, beyond }) => ({
        channel,
        outliers,
        stuck: stuck.length,
        beyond,
      })),
    events: events.slice(0, MOST_EVENTS).map((event) => ({
      changes: event.events
        .slice(0, 12)
        .map(({ channel, kind, at, earliest, latest, before, after, step }) => ({
          channel,
          kind,
          at,
          earliest,
          latest,
          before,
          after,
          step,
        })),
      first: event.first?.channel ?? null,
      lead: event.lead && [event.lead[0], event.lead[1]],
      after: keptLevels(event.after),
    })),
    means: null,
    fit: null,
    refused: null,
  };
}

export const keptLevels = (levels: Levels): LogLevels =>
  Object.fromEntries(
    Object.entries(levels).map(([channel, { mean, deviation, count }]) => [
      channel,
      { mean, deviation, count },
    ]),
  );

/** Name of a channel in a record; a file may hold one that this version does not know. */
export const channelName = (channel: string): string =>
  Object.hasOwn(LOG_CHANNELS, channel) ? LOG_CHANNELS[channel as LogChannel].name : channel;
