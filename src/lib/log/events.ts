/** Flow drops, voltage drops, temperature rises: found in a log, and which moved first. */
import { onset, type Onset } from './onset';

export type EventKind = 'drop' | 'rise';

/** What counts as an event of a channel. */
export interface EventRule {
  /** Name by which it comes back. */
  readonly channel: string;
  readonly kind: EventKind;
  /** Least change, in the values' unit. */
  readonly least: number;
  /** Time over which levels before and after are compared, s. */
  readonly window: number;
}

export interface LogEvent extends Onset {
  readonly channel: string;
  readonly kind: EventKind;
  /** After less before. */
  readonly change: number;
  /** Of the level before; for temperatures it means nothing. */
  readonly share: number;
  /** Usual time between this channel's readings, s. */
  readonly step: number;
}

/** Changes this many standard deviations of the two means beyond chance are no chance. */
const SURE = 5;
/** Readings a window is thinned to. */
const MOST = 400;

/**
 * Every change of a channel that its rule asks for: windows before and after each row compared, the place
 * of the largest difference taken, its onset found there.
 *
 * @param t - s, rising; @param values - gaps are passed over
 */
export function findEvents(
  t: Float64Array,
  values: Float64Array,
  rule: EventRule,
): readonly LogEvent[] {
  const { times, reads } = readings(t, values);
  const n = times.length;
  if (n < 16) return [];
  const noise = noiseOf(reads);
  const step = medianStep(times);
  const sums = new Float64Array(n + 1);
  for (let i = 0; i < n; i++) sums[i + 1] = sums[i]! + reads[i]!;
  const sign = rule.kind === 'drop' ? -1 : 1;
  const events: LogEvent[] = [];
  let [low, high] = [0, 0];
  let best = { row: -1, size: 0 };
  const close = () => {
    if (best.row >= 0) {
      const event = eventAt(best.row);
      if (event) events.push(event);
    }
    best = { row: -1, size: 0 };
  };
  for (let i = 1; i < n; i++) {
    while (times[i]! - times[low]! > rule.window) low++;
    while (high < n && times[high]! - times[i]! < rule.window) high++;
    const [before, after] = [i - low, high - i];
    if (before < 4 || after < 4) continue;
    const difference = (sums[high]! - sums[i]!) / after - (sums[i]! - sums[low]!) / before;
    const size = sign * difference;
    const chance = SURE * noise * Math.sqrt(1 / before + 1 / after);
    // A ramp shows only half its change between the means of two windows.
    if (size > Math.max(0.5 * rule.least, chance)) {
      if (best.row >= 0 && times[i]! - times[best.row]! > rule.window) close();
      if (size > best.size) best = { row: i, size };
    } else if (best.row >= 0) close();
  }
  close();
  return events.filter(({ change }) => sign * change >= rule.least);

  function eventAt(row: number): LogEvent | null {
    let from = row;
    let to = row;
    while (from > 0 && times[row]! - times[from - 1]! <= 1.5 * rule.window) from--;
    while (to < n - 1 && times[to + 1]! - times[row]! <= rule.window) to++;
    const thin = Math.max(1, Math.ceil((to - from + 1) / MOST));
    const at: number[] = [];
    const x: number[] = [];
    for (let i = from; i <= to; i += thin) {
      at.push(times[i]!);
      x.push(reads[i]!);
    }
    const found = onset(at, x, Math.max(noise, 1e-12));
    if (!found) return null;
    const change = found.after - found.before;
    const { channel, kind } = rule;
    return { ...found, channel, kind, change, share: change / found.before, step: step * thin };
  }
}

/** Events that belong together, in the order in which they began. */
export interface EventGroup {
  readonly events: readonly LogEvent[];
  /** Which began first; null where the log is too coarse or too noisy to tell. */
  readonly first: LogEvent | null;
  /** How much later the next began, s: least and greatest. Null with one event. */
  readonly lead: readonly [least: number, greatest: number] | null;
}

/**
 * Group events of several channels that begin within `together` of each other. The first is told only
 * where its latest possible onset lies before the earliest of every other.
 */
export function groupEvents(events: readonly LogEvent[], together: number): readonly EventGroup[] {
  const sorted = [...events].sort((a, b) => a.at - b.at);
  const groups: LogEvent[][] = [];
  for (const event of sorted) {
    const group = groups.at(-1);
    if (group && event.at - group[0]!.at <= together) group.push(event);
    else groups.push([event]);
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

function readings(t: Float64Array, values: Float64Array) {
  const times = new Float64Array(t.length);
  const reads = new Float64Array(t.length);
  let n = 0;
  for (let k = 0; k < t.length; k++) {
    if (!Number.isFinite(values[k]!)) continue;
    times[n] = t[k]!;
    reads[n++] = values[k]!;
  }
  return { times: times.subarray(0, n), reads: reads.subarray(0, n) };
}

/** Standard deviation of a reading by second differences, a few wild ones notwithstanding. */
function noiseOf(x: Float64Array): number {
  const sizes: number[] = [];
  const stride = Math.max(1, Math.floor(x.length / 50_000));
  for (let i = 1; i < x.length - 1; i += stride)
    sizes.push(Math.abs(x[i - 1]! - 2 * x[i]! + x[i + 1]!));
  sizes.sort((a, b) => a - b);
  return (1.4826 * sizes[sizes.length >> 1]!) / Math.sqrt(6);
}

function medianStep(times: Float64Array): number {
  const steps = times.slice(1, 20_000).map((t, i) => t - times[i]!);
  steps.sort();
  return steps[steps.length >> 1]!;
}
