/** Flow drops, voltage drops, temperature rises: found in a log, and which moved first. */
import { medianStep, noiseOf } from './noise';
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
  /** Level from which it must start; a channel that was off before has no event. */
  readonly from?: number;
  /** Least change as a share of the level before. */
  readonly share?: number;
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
  /** End of the stretch over which it changed, s. */
  readonly until: number;
}

/** Changes this many standard deviations of the two means beyond chance are no chance. */
const SURE = 5;
/** Readings a window is thinned to. */
const MOST = 4000;
/** Share of a change that, taken back, ends it. */
const BACK = 0.15;
/** A fit this many standard deviations of chance worse than noise is of the wrong shape. */
const MISFIT = 2;
/** Share of it that is kept then, on either side of the onset. */
const SHORTER = 0.7;
/** Rows on either side that are always kept. */
const SHORTEST = 8;

/** Rows that a change is sought in: where windows before and after differ, and where they do most. */
interface Run {
  readonly from: number;
  to: number;
  row: number;
  size: number;
}

/**
 * Every change of a channel that its rule asks for: windows before and after each row compared; where they
 * differ without a break is one change, however slow. Its onset is found there.
 *
 * @param t - s, rising; @param values - gaps are passed over
 * @param known - events of the channel found already by a rule for quicker ones; each comes once
 */
export function findEvents(
  t: Float64Array,
  values: Float64Array,
  rule: EventRule,
  known: readonly LogEvent[] = [],
): readonly LogEvent[] {
  const { times, reads } = readings(t, values);
  const n = times.length;
  if (n < 16) return [];
  const noise = noiseOf(reads);
  const step = medianStep(times);
  const sums = new Float64Array(n + 1);
  for (let i = 0; i < n; i++) sums[i + 1] = sums[i]! + reads[i]!;
  const mean = (from: number, end: number) => (sums[end]! - sums[from]!) / (end - from);
  const sign = rule.kind === 'drop' ? -1 : 1;
  const events: LogEvent[] = [];
  const again = (from: number, until: number) =>
    known.some((event) => event.earliest <= until && from <= event.until);
  for (const run of runs()) {
    if (again(times[run.row]!, times[run.row]!)) continue;
    const event = eventAt(run);
    if (event && asked(event) && !again(event.earliest, event.until)) events.push(event);
  }
  return events;

  function asked({ before, change }: LogEvent): boolean {
    const { least, from = -Infinity, share = 0 } = rule;
    return before >= from && sign * change >= Math.max(least, share * Math.abs(before));
  }

  function runs(): Run[] {
    const list: Run[] = [];
    let run: Run | null = null;
    let [low, high] = [0, 0];
    for (let i = 1; i < n; i++) {
      while (times[i]! - times[low]! > rule.window) low++;
      while (high < n && times[high]! - times[i]! < rule.window) high++;
      const [before, after] = [i - low, high - i];
      if (before < 4 || after < 4) continue;
      const size = sign * (mean(i, high) - mean(low, i));
      const chance = SURE * noise * Math.sqrt(1 / before + 1 / after);
      // A ramp shows only half its change between the means of two windows.
      if (!(size > Math.max(0.5 * rule.least, chance))) continue;
      // Readings that fall below the limit for a moment do not end a change.
      if (!run || times[i]! - times[run.to]! > 0.5 * rule.window) {
        run = { from: i, to: i, row: i, size };
        list.push(run);
      }
      run.to = i;
      if (size > run.size) [run.row, run.size] = [i, size];
    }
    return list;
  }

  function eventAt(run: Run): LogEvent | null {
    let from = run.from;
    while (from > 0 && times[run.from]! - times[from - 1]! <= rule.window) from--;
    let end = run.to + 1;
    while (end < n && times[end]! - times[run.to]! <= rule.window) end++;
    end = turned(run.row, end);
    const thin = Math.max(1, Math.ceil((end - from) / MOST));
    const at: number[] = [];
    const x: number[] = [];
    for (let i = from; i < end; i += thin) {
      at.push(times[i]!);
      x.push(reads[i]!);
    }
    const whole = onset(at, x, noise);
    if (!whole) return null;
    const found = wellFitted(whole, at, x);
    const change = whole.after - found.before;
    const { channel, kind } = rule;
    const until = times[end - 1]!;
    return {
      ...found,
      channel,
      kind,
      change,
      share: change / found.before,
      step: step * thin,
      until,
    };
  }

  /** What lies far before or after follows no one shape: it is left out bit by bit until the rest does. */
  function wellFitted(whole: Onset, at: readonly number[], x: readonly number[]): Onset {
    let best = whole;
    let [from, end] = [0, at.length];
    while (best.misfit > 1 + MISFIT * Math.sqrt(2 / (end - from))) {
      const begun = at.findIndex((time) => time > best.at);
      from = begun - Math.floor(SHORTER * (begun - from));
      end = begun + Math.floor(SHORTER * (end - begun));
      if (begun - from < SHORTEST || end - begun < SHORTEST) break;
      const next = onset(at.slice(from, end), x.slice(from, end), noise);
      if (!next) break;
      best = next;
    }
    return best;
  }

  /** Where a change from `row` on is at its most, if it is taken back before `end`; else `end`. */
  function turned(row: number, end: number): number {
    const width = Math.max(2, Math.round((0.25 * rule.window) / step));
    const before = mean(Math.max(0, row - 4 * width), row);
    let [most, at] = [-Infinity, end];
    for (let i = row; i + width <= end; i++) {
      const size = sign * (mean(i, i + width) - before);
      if (size > most) [most, at] = [size, i + width];
      else if (most - size > Math.max(BACK * most, (SURE * noise) / Math.sqrt(width))) return at;
    }
    return end;
  }
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
