/** Events that belong together, and which of them began first. */
import type { LogEvent } from './events';

/** Events that belong together, in the order in which they began. */
export interface EventGroup {
  readonly events: readonly LogEvent[];
  /** Which began first; null where the log is too coarse or too noisy to tell. */
  readonly first: LogEvent | null;
  /** How much later the next began, s: least and greatest. Null with one event. */
  readonly lead: readonly [least: number, greatest: number] | null;
}

/**
 * Group events of several channels that begin within `together` of each other, each channel once. The first
 * is told only where its latest possible onset lies before the earliest of every other.
 */
export function groupEvents(events: readonly LogEvent[], together: number): readonly EventGroup[] {
  const sorted = [...events].sort((a, b) => a.at - b.at);
  const groups: LogEvent[][] = [];
  for (const event of sorted) {
    const group = groups.at(-1);
    // A slow change is known to begin within a stretch only: its earliest counts.
    const near = group && event.earliest - group[0]!.latest <= together;
    if (!near) groups.push([event]);
    else if (!group.some(({ channel }) => channel === event.channel)) group.push(event);
    else if (event.at - group[0]!.at > together) groups.push([event]);
  }
  return groups.map((list): EventGroup => {
    const [a, b] = list;
    if (!b) return { events: list, first: a!, lead: null };
    const rest = list.slice(1);
    const next = rest.reduce((x, y) => (y.earliest < x.earliest ? y : x));
    const told = a!.latest < next.earliest;
    return {
      events: list,
      first: told ? a! : null,
      lead: [b.earliest - a!.latest, b.latest - a!.earliest],
    };
  });
}
