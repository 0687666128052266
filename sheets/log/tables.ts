/** Rows of the sheet's tables: what the fit found, where it was tried, what an event changed. */
import { clock } from '$lib/job/log/logEdits';
import { channelName } from '$lib/job/log/logKeep';
import type { LogEventRecord, LogRecord } from '$lib/job/log/logRecord';
import type { DataRow } from '$lib/kit/dataTable';
import { difference, differenceOf, shown, spreadText, worded } from '$lib/kit/format';
import type { UnitSystem } from '$lib/kit/types';
import type { Quantity } from '$lib/solver/quantity';
import { channelQuantity, parameterName, parameterOf, readName } from './words';

/** A half width with its unit, two digits of it. */
const spreadWords = (half: number, quantity: Quantity, system: UnitSystem): string => {
  const { unit } = shown(half, differenceOf(quantity), system);
  const text = spreadText(half, differenceOf(quantity), system);
  return unit ? `${text}\u00a0${unit}` : text;
};

export function estimateRows({ fit }: LogRecord, system: UnitSystem): DataRow[] {
  if (!fit) return [];
  const found = fit.estimates
    .filter(({ name }) => !name.endsWith('Start'))
    .map(({ name, value, low, high, entered, instruments }): DataRow => {
      const quantity = parameterOf(name)?.quantity ?? 'ratio';
      const half = low !== null && high !== null ? 0.5 * (high - low) : null;
      return {
        key: name,
        head: parameterName(name),
        cells: [
          worded(value, quantity, system),
          half === null ? 'not held' : spreadWords(half, quantity, system),
          instruments === null || half === null ? '' : spreadWords(instruments, quantity, system),
          entered === null ? '' : worded(entered, quantity, system),
        ],
      };
    });
  const left = fit.channels.map(({ channel, rms, count }): DataRow => ({
    key: `left ${channel}`,
    head: `Left of ${readName(channel).toLowerCase()}, root mean square`,
    cells: [worded(rms, 'temperatureDifference', system), `${count} readings`, '', ''],
    weight: 'soft',
  }));
  return [...found, ...left];
}

/** Channels that any stretch was tried on, in their order. */
export const triedChannels = ({ fit }: LogRecord): string[] => [
  ...new Set((fit?.heldOut ?? []).flatMap(({ channels }) => channels.map((c) => c.channel))),
];

export function trialRows(record: LogRecord, system: UnitSystem): DataRow[] {
  const tried = triedChannels(record);
  return (record.fit?.heldOut ?? []).map(({ from, to, overSeen, overNoise, channels }) => ({
    key: `${from} ${to}`,
    head: `${clock(from)} to ${clock(to)}`,
    cells: [
      worded(overSeen, 'ratio', system),
      worded(overNoise, 'ratio', system),
      ...tried.map((name) => {
        const own = channels.find(({ channel }) => channel === name);
        return own ? worded(own.unseen, 'temperatureDifference', system) : '';
      }),
    ],
  }));
}

export const changeRows = ({ changes }: LogEventRecord, system: UnitSystem): DataRow[] =>
  changes.map(({ channel, at, earliest, latest, before, after }) => {
    const quantity = channelQuantity(channel);
    const { text, unit } = difference(before, after, quantity, system);
    return {
      key: `${channel} ${at}`,
      head: channelName(channel),
      cells: [
        worded(at, 'time', system),
        `± ${spreadWords(0.5 * (latest - earliest), 'time', system)}`,
        worded(before, quantity, system),
        worded(after, quantity, system),
        `${text} ${unit}`,
      ],
    };
  });

export const eventTitle = ({ changes, first }: LogEventRecord, i: number): string => {
  const order =
    changes.length === 1
      ? 'nothing else moved with it'
      : first
        ? `${channelName(first)} moved first`
        : 'this log cannot tell which moved first';
  return `Event ${i + 1} at ${clock(changes[0]!.at)}: ${order}`;
};
