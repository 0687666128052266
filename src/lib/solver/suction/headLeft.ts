/** What a short suction head leaves of the pump's head. */
import { requireWithin, type Interval } from '../errors';

/** Share of the head that is gone where the suction head available equals NPSH3: its definition. */
export const LOST_AT_NPSH3 = 0.03;
/**
 * How steeply the head goes below that point. Our choice, no source: a tenth is gone at 0.94 of NPSH3,
 * half at 0.79, nearly all at 0.5; above 1.1 less than a third of a percent.
 */
export const FALL_EXPONENT = 6;

/**
 * Suction head over NPSH3 that keeps every bubble away: NPSH3 is not where cavitation starts.
 * An average; single pumps differ widely.
 * @source Budris, WaterWorld, June 2009 (read as an excerpt)
 */
export const SUPPRESSION_RATIO = 4;

/** Enforced by {@link headLeft}; wide, to catch a NaN or a wrong unit. */
export const HEAD_LEFT_RANGE = {
  available: [-1e5, 1e5],
  required: [0, 1e4],
} as const satisfies Record<string, Interval>;

/**
 * Share of the pump's head that is left at a suction head: smooth, never falling as the suction head
 * grows, 0.97 by definition where it equals NPSH3, one for all purposes from 1.3 times that on, nothing
 * where the liquid boils ahead of the impeller. Between those points the shape is a stated guess: makers
 * of small pumps do not publish it.
 *
 * @formula x = 1 - 0.03^(max(0, NPSH_A / NPSH_R)^6)
 * @symbol NPSH_A - suction head available, m
 * @symbol NPSH_R - suction head required (NPSH3), m; 0: the pump needs none
 * @returns 0 to 1
 * @throws {@link OutOfRangeError} outside {@link HEAD_LEFT_RANGE}, NaN included
 * @source NPSH3 after ISO 9906:2012; shape our own, no source
 * @example headLeft({ available: 2, required: 2 }) // 0.97
 */
export function headLeft(suction: { readonly available: number; readonly required: number }) {
  requireWithin('head left', HEAD_LEFT_RANGE, suction);
  const { available, required } = suction;
  if (!(available > 0)) return 0;
  if (required === 0) return 1;
  return -Math.expm1(Math.log(LOST_AT_NPSH3) * (available / required) ** FALL_EXPONENT);
}
