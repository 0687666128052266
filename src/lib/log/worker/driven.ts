/** Whether the drive accounts for a temperature that rose. */
import type { LogChannel } from '../channels';
import { firstAt } from '../downSample';
import type { LogEvent } from '../events';
import { noiseOf } from '../noise';
import type { Searched } from './mapped';

/** What heats or cools the loop from without. */
const DRIVERS: readonly LogChannel[] = [
  'chargeAirIn',
  'airFlow',
  'manifold',
  'engineSpeed',
  'vehicleSpeed',
  'heat',
  'ambient',
];
/** A driver moved: its mean changes by this share of what it ranges over in the log, tenth to ninetieth in the hundred. */
const MOVED = 0.25;
/** Time before and after an onset over which a driver is compared: a tank follows its load by a minute or so, s. */
const BEFORE = 90;
const AFTER = 60;
/** Without a driver in the log: share of the rise that must last, over how long. A pull is over by then, s. */
const LASTS = 0.7;
const LASTING = [60, 180] as const;

/** A pull lasts seconds: drivers are compared over stretches as short, s. */
const PIECE = 10;
/** Noise does not move a mean by so many of its standard deviations. */
const SURE = 5;

interface Mean {
  readonly mean: number;
  readonly count: number;
}

/** For each event: whether some driver moved about its onset; without any logged, whether the rise passed. */
export function driven({ axis: { t }, channels }: Searched): (event: LogEvent) => boolean {
  const present = DRIVERS.flatMap((channel) => {
    const values = channels.get(channel)?.values;
    return values ? [{ values, range: rangeOf(values), noise: noiseOf(values) }] : [];
  });
  const over = (values: Float64Array, from: number, to: number): Mean => {
    let [sum, count] = [0, 0];
    for (let k = firstAt(t, from); k < t.length && t[k]! <= to; k++) {
      if (!Number.isFinite(values[k]!)) continue;
      sum += values[k]!;
      count++;
    }
    return { mean: sum / count, count };
  };
  return ({ at, channel, until, before, change }) => {
    if (present.length === 0) {
      const own = channels.get(channel as LogChannel)!.values;
      const later = over(own, until + LASTING[0], until + LASTING[1]).mean;
      return !(later - before >= LASTS * change);
    }
    const start = Math.max(0, at - BEFORE);
    return present.some(({ values, range, noise }) => {
      const earlier = over(values, start - BEFORE, start);
      const usual = earlier.count > 0 ? earlier : over(values, start, start + PIECE);
      for (let from = start; from < at + AFTER; from += PIECE) {
        const now = over(values, from, from + PIECE);
        const chance = SURE * noise * Math.sqrt(1 / now.count + 1 / usual.count);
        if (Math.abs(now.mean - usual.mean) > Math.max(MOVED * range, chance)) return true;
      }
      return false;
    });
  };
}

/** From the tenth to the ninetieth in the hundred, of a sample. */
function rangeOf(values: Float64Array): number {
  const stride = Math.max(1, Math.floor(values.length / 20_000));
  const some = values.filter((x, k) => k % stride === 0 && Number.isFinite(x)).sort();
  const at = (share: number) => some[Math.floor(share * some.length)] ?? NaN;
  return at(0.9) - at(0.1);
}
