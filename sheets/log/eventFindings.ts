/** What failed in the log, and what moved first. */
import { clock } from '$lib/job/log/logEdits';
import { channelName } from '$lib/job/log/logKeep';
import type { LogChange, LogEventRecord } from '$lib/job/log/logRecord';
import { q, say, type Finding, type Sentence } from '../types';
import type { Study } from './study';
import { channelQuantity, inSentence } from './words';

/** Events worded; the rest stand in the list. */
const WORDED = 3;

export const eventFindings = ({ record }: Study): Finding[] =>
  (record?.events ?? []).slice(0, WORDED).map((event, i) => ({
    code: `event-${i + 1}`,
    level: 'act',
    sentence: eventSentence(event),
  }));

/** One change: by how much, and by what share where that means something. */
export function changeWords({ channel, kind, before, after }: LogChange): Sentence {
  const quantity = channelQuantity(channel);
  const name = channel === 'flow' ? 'the pump’s flow' : inSentence(channelName(channel));
  if (quantity === 'temperature')
    return say`${name} rose by ${q(after - before, 'temperatureDifference')}`;
  return say`${name} ${kind === 'drop' ? 'fell' : 'rose'} by ${q(Math.abs(after / before - 1), 'percent')} (${q(before, quantity)} to ${q(after, quantity)})`;
}

function eventSentence({ changes, first, lead }: LogEventRecord): Sentence {
  const [one, ...others] = changes;
  const start = `At ${clock(one!.at)} `;
  const head: Sentence = [start, ...changeWords(one!)];
  const next = others[0];
  if (!next || lead === null) return [...head, '; nothing else moved with it.'];
  const rest = others.flatMap((change, i) => [i === 0 ? '' : ', ', ...changeWords(change)]);
  if (first === null)
    return [
      ...head,
      '; also ',
      ...rest,
      '. Which moved first this log cannot tell: its readings are too far apart or too noisy.',
    ];
  return [
    ...head,
    ', ',
    q(Math.max(0, lead[0]), 'time'),
    ' to ',
    q(lead[1], 'time'),
    ' before ',
    ...rest,
    `. ${MEANS[`${one!.channel} ${next.channel}`] ?? ''}`,
  ];
}

/** What the order speaks for (common practice, no source). */
const MEANS: Readonly<Record<string, string>> = {
  'flow volts':
    'Flow before volts speaks for the pump or the liquid: an impeller that binds, air, a starved inlet; the volts follow the amps.',
  'volts flow': 'Volts before flow speaks for the feed: relay, connector, ground, breaker.',
};
