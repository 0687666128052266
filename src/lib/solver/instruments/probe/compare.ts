/** Several probes of one part in the same bath: the spread, and which to reject. */
import { InvalidInputError } from '../../errors';

/** A probe's deviation from the middle of its lot. */
export interface ProbeDeviation {
  /** Position in the list given. */
  readonly index: number;
  /** Reading, K. */
  readonly shown: number;
  /** From the median, K. */
  readonly from: number;
  /** Further from the median than the tolerance allows. */
  readonly reject: boolean;
  /** Stands apart from the others by their own spread, tolerance or not. */
  readonly apart: boolean;
}

export interface LotComparison {
  /** K */
  readonly median: number;
  /** Highest less lowest, K. */
  readonly spread: number;
  /** Median of the absolute deviations from the median, K. */
  readonly mad: number;
  readonly probes: readonly ProbeDeviation[];
}

/** A MAD of a normal lot times this is its standard deviation. */
export const MAD_TO_SIGMA = 1.4826;
/** Modified z-score beyond which a value stands apart. */
const APART = 3.5;
/** With fewer values their own spread says nothing about any of them. */
const LOT_AT_LEAST = 5;

/** Middle value; mean of the two middle ones of an even number. @throws InvalidInputError for none */
export function median(values: readonly number[]): number {
  if (values.length === 0) throw new InvalidInputError('probes', 'no reading was entered');
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}

/**
 * Compare readings of several probes taken in one bath.
 *
 * A probe is rejected when it lies further from the median than `tolerance`. From five probes on, one
 * that lies beyond 3.5 robust standard deviations is named too, whatever the tolerance.
 *
 * @param shown - readings, K
 * @param tolerance - allowed from the median, K
 * @throws {@link InvalidInputError} for no reading, or one that is not a number
 * @source Iglewicz & Hoaglin, How to Detect and Handle Outliers, ASQC 1993 (from memory)
 */
export function compareProbes(shown: readonly number[], tolerance: number): LotComparison {
  const bad = shown.find((value) => !Number.isFinite(value));
  if (bad !== undefined) throw new InvalidInputError('probes', 'a reading is not a number', bad);
  const middle = median(shown);
  const mad = median(shown.map((value) => Math.abs(value - middle)));
  const sigma = MAD_TO_SIGMA * mad;
  return {
    median: middle,
    spread: Math.max(...shown) - Math.min(...shown),
    mad,
    probes: shown.map((value, index) => {
      const from = value - middle;
      return {
        index,
        shown: value,
        from,
        reject: Math.abs(from) > tolerance,
        apart: shown.length >= LOT_AT_LEAST && sigma > 0 && Math.abs(from) > APART * sigma,
      };
    }),
  };
}
