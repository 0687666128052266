/** Events of a log, channel by channel, and those groups of them that are worth a word. */
import type { LogChannel } from '../channels';
import { findEvents, type LogEvent } from '../events';
import { groupEvents, type EventGroup } from '../groups';
import { MARK } from '../marks';
import { driven } from './driven';
import type { Channel, Searched, Steps } from './mapped';
import { ALONE, eventRules, TOGETHER } from './rules';

/**
 * Groups in which flow or volts fell or the amps rose, or in which a temperature rose that nothing in the
 * drive accounts for: in every pull temperatures rise.
 */
export function* searchedEvents({ axis, channels }: Searched): Steps<EventGroup[]> {
  const { t } = axis;
  const usual = (channel: LogChannel) => medianOf(withoutMarks(channels.get(channel)!));
  const rules = eventRules([...channels.keys()], usual);
  const found: LogEvent[] = [];
  for (const [i, rule] of rules.entries()) {
    const own = channels.get(rule.channel as LogChannel)!;
    const known = found.filter(
      ({ channel, kind }) => channel === rule.channel && kind === rule.kind,
    );
    found.push(...findEvents(t, withoutMarks(own), rule, known));
    yield { done: i + 1, of: rules.length };
  }
  const fell = found.filter(({ kind, channel }) => kind === 'drop' || channel === 'amps');
  const drive = driven({ axis, channels });
  return groupEvents(found, TOGETHER)
    .filter(({ events }) =>
      events.some((event) => fell.includes(event) || (event.change >= ALONE && !drive(event))),
    )
    .map(inOrderOfCause);
}

/** Amps answer to flow and volts at once: where both fell, their order is the one that tells. */
function inOrderOfCause(group: EventGroup): EventGroup {
  const has = (channel: LogChannel) => group.events.some((event) => event.channel === channel);
  if (!has('flow') || !has('volts')) return group;
  const [rest] = groupEvents(
    group.events.filter(({ channel }) => channel !== 'amps'),
    Infinity,
  );
  return rest!;
}

/** Outliers would make an event of themselves. */
function withoutMarks({ values, marks }: Channel): Float64Array {
  const clean = values.slice();
  for (let k = 0; k < clean.length; k++)
    if (marks.flags[k]! & (MARK.outlier | MARK.beyond)) clean[k] = NaN;
  return clean;
}

function medianOf(values: Float64Array): number {
  const stride = Math.max(1, Math.floor(values.length / 20_000));
  const some = values.filter((x, k) => k % stride === 0 && Number.isFinite(x)).sort();
  return some[some.length >> 1] ?? NaN;
}
