/** What is in view as groups of curves, one for each kind of quantity; and residuals as charts. */
import { LOG_CHANNELS, type LogChannel } from '$lib/log/channels';
import type { Seen } from '$lib/log/worker/messages';
import type { LogRecord } from '$lib/job/log/logRecord';
import type { Chart } from '$lib/kit/plot/chart';
import type { TimeFlag, TimeGroup, TimeSpan } from '$lib/kit/timePlot/types';
import type { Value } from '$lib/job/values';
import { readName } from './words';

interface Kind {
  readonly id: string;
  readonly title: string;
  readonly channels: readonly LogChannel[];
}

/** Liquid and air apart: a pull would press the liquid's curves flat. */
const KINDS: readonly Kind[] = [
  {
    id: 'liquid',
    title: 'Liquid',
    channels: ['reservoir', 'chargeCoolerOut', 'frontIn', 'frontOut'],
  },
  { id: 'air', title: 'Charge air', channels: ['chargeAirIn', 'chargeAirOut'] },
  { id: 'flow', title: 'Flow of the liquid', channels: ['flow'] },
  { id: 'volts', title: 'Volts at the pump', channels: ['volts'] },
  { id: 'amps', title: 'Amps of the pump', channels: ['amps'] },
  { id: 'speed', title: 'Vehicle speed', channels: ['vehicleSpeed'] },
  { id: 'engine', title: 'Engine speed', channels: ['engineSpeed'] },
  { id: 'pressure', title: 'Manifold pressure', channels: ['manifold'] },
  { id: 'airflow', title: 'Charge-air flow', channels: ['airFlow'] },
  { id: 'ambient', title: 'Ambient air', channels: ['ambient'] },
  { id: 'heat', title: 'Heat into the loop', channels: ['heat'] },
];

export function groupsOf(seen: readonly Seen[]): TimeGroup[] {
  return KINDS.flatMap(({ id, title, channels }) => {
    const own = channels.flatMap((channel) => seen.filter((s) => s.channel === channel));
    return own.length === 0
      ? []
      : [
          {
            id,
            title,
            quantity: LOG_CHANNELS[own[0]!.channel].quantity,
            curves: own.map(({ channel, t, x, flags }) => ({
              id: channel,
              name: LOG_CHANNELS[channel].name,
              t,
              x,
              doubt: flags,
            })),
          },
        ];
  });
}

export interface ChosenSpan {
  readonly from: number;
  readonly to: number;
  readonly use: 'fit' | 'hold-out';
}

export const chosenSpans = (value: Value): ChosenSpan[] =>
  (value.rows ?? []).map(({ from, to, use }) => ({
    from: from as number,
    to: to as number,
    use: use === 'hold-out' ? 'hold-out' : 'fit',
  }));

export const timeSpans = (spans: readonly ChosenSpan[]): TimeSpan[] =>
  spans.map(({ from, to, use }) => ({
    from,
    to,
    label: use === 'fit' ? 'fit' : 'held out',
    kind: use === 'fit' ? 'first' : 'second',
  }));

export const flagsOf = (record: LogRecord | null): TimeFlag[] =>
  (record?.events ?? []).map(({ changes }, i) => ({ t: changes[0]!.at, label: `event ${i + 1}` }));

/** What the fit leaves of each channel, kept with the job. */
export function residualCharts(record: LogRecord | null): { title: string; chart: Chart }[] {
  const { fit } = record ?? {};
  if (!fit) return [];
  return fit.residuals.map(({ channel, t, r }) => ({
    title: `Left by the fit: ${readName(channel)}`,
    chart: {
      x: { name: 'Time', quantity: 'time' },
      y: { name: 'Predicted less read', quantity: 'temperatureDifference', zero: true },
      dots: [
        {
          label: readName(channel),
          points: t.map((time, i) => [time, r[i]!] as const),
        },
      ],
      limits: [{ axis: 'y', at: 0, label: 'as read', level: 'info' }],
      stretches: setAside(record).map(({ from, to }) => ({
        axis: 'x' as const,
        from,
        to,
        label: 'set aside',
        kind: 'span' as const,
      })),
    },
  }));
}

/** Stretches tried that the fit as it stands has not seen. */
const setAside = (record: LogRecord | null) =>
  (record?.fit?.heldOut ?? []).filter(
    ({ from, to }) => !record!.fit!.spans.some((span) => span.from < to && span.to > from),
  );
