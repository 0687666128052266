/** Draws of a curve, point by point, as the band that holds most of them. */
import { spread } from './propagate';

/** A place on the curve, the ends between which 95 of 100 draws lie there, and their middle. */
export type BandPoint = readonly [x: number, low: number, high: number, middle: number];

/**
 * The probabilistically symmetric 95 % interval at each place of a curve. Places where fewer than
 * `least` of the draws have an answer are left out: a band of the rest would be a band of something else.
 * @param draws - for each place, all draws; NaN without an answer
 * @source JCGM 101:2008, 7.7, at each place by itself
 */
export function bandOf(
  x: ArrayLike<number>,
  draws: readonly Float64Array[],
  least = 0.95,
): BandPoint[] {
  return draws.flatMap((column, i): BandPoint[] => {
    const s = spread(column);
    return s && s.count >= least * column.length ? [[x[i]!, s.low, s.high, s.median]] : [];
  });
}
