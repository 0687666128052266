import { InvalidInputError, requireWithin, type Interval } from '../errors';
import { copperTemperatureFactor, resistancePerMetre } from './copper';
import { type WireSize } from './gauge';
import { ISO_6722_LARGEST_RESISTANCE } from './iso6722Table';

/** A run of wire, out and back. */
export interface WireRun {
  readonly size: WireSize;
  /** From the source to the pump, m; the ground path is as long and as thick. */
  readonly lengthOneWay: number;
  /** Of the copper, K. */
  readonly temperature: number;
}

/** What a feed run may be: ours, to catch a length in the wrong unit. */
export const RUN_RANGE = {
  lengthOneWay: [0, 50],
  current: [0, 500],
  dropMax: [1e-3, 50],
} as const satisfies Record<string, Interval>;

/**
 * Resistance of the copper out and back.
 *
 * @formula R = 2 * L * r
 * @symbol L - length one way, m
 * @symbol r - resistance of one metre, ohm/m
 * @returns R, ohm
 * @throws {@link OutOfRangeError} for length, size or temperature outside its range
 * @source Definition
 * @example wireResistance({ size: { by: 'awg', awg: 14 }, lengthOneWay: 4.2672, temperature: 333.15 }) // 0.081828
 */
export function wireResistance({ size, lengthOneWay, temperature }: WireRun): number {
  requireWithin('wire run', { lengthOneWay: RUN_RANGE.lengthOneWay }, { lengthOneWay });
  return 2 * lengthOneWay * resistancePerMetre(size, temperature);
}

/**
 * Largest resistance of one metre that ISO 6722 lets a cable of this nominal area have, ohm/m, taken to
 * temperature as copper. From memory: see the table.
 * @throws {@link InvalidInputError} for an area that is not a nominal size of the table
 */
export function largestResistance(nominalArea: number, T: number): number {
  const row = ISO_6722_LARGEST_RESISTANCE.find(
    ([mm2]) => Math.abs(mm2 * 1e-6 - nominalArea) < 1e-9 * mm2,
  );
  if (!row) {
    throw new InvalidInputError('wire.area', 'not a nominal size of ISO 6722', nominalArea);
  }
  return row[1] * copperTemperatureFactor({ T });
}

/** What a wire has to do. */
export interface DropLimit {
  readonly lengthOneWay: number;
  readonly current: number;
  readonly temperature: number;
  /** Largest drop allowed in the copper out and back, V. */
  readonly dropMax: number;
}

/** A wire chosen, and what it loses. */
export interface WireChoice {
  readonly size: WireSize;
  readonly drop: number;
}

/** Thinnest wire offered by {@link thinnestGauge}: thinner breaks by handling. Common practice, no source. */
export const THINNEST_FEED_GAUGE = 22;

function thinnest(sizes: readonly WireSize[], limit: DropLimit): WireChoice | null {
  const { lengthOneWay, current, temperature, dropMax } = limit;
  requireWithin('wire run', RUN_RANGE, { lengthOneWay, current, dropMax });
  for (const size of sizes) {
    const drop = current * wireResistance({ size, lengthOneWay, temperature });
    if (drop <= dropMax) return { size, drop };
  }
  return null;
}

/**
 * Thinnest gauge that keeps the drop; null when even 4/0 loses more. Drop only: check the ampacity too.
 * `evenOnly` keeps to what is sold: even numbers, and every size from 1/0 up (common practice).
 * @throws {@link OutOfRangeError} outside {@link RUN_RANGE}
 */
export function thinnestGauge(limit: DropLimit, evenOnly = false): WireChoice | null {
  const sizes: WireSize[] = [];
  for (let awg = THINNEST_FEED_GAUGE; awg >= -3; awg--) {
    if (!evenOnly || awg % 2 === 0 || awg <= 0) sizes.push({ by: 'awg', awg });
  }
  return thinnest(sizes, limit);
}

/**
 * Thinnest nominal metric size that keeps the drop; null when even the thickest of the table loses more.
 * Copper of the nominal area, as for gauges; a cable at the largest resistance allowed loses up to 14 % more.
 * @throws {@link OutOfRangeError} outside {@link RUN_RANGE}
 */
export function thinnestArea(limit: DropLimit): WireChoice | null {
  return thinnest(
    ISO_6722_LARGEST_RESISTANCE.map(([mm2]) => ({ by: 'area', area: mm2 * 1e-6 })),
    limit,
  );
}
