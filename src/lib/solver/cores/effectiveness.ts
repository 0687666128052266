import { OutOfRangeError, requireWithin, type Interval } from '../errors';
import type { ExchangerArrangement } from './arrangement';
import { effectivenessMax, ntuLaw } from './inverse';
import { EFFECTIVENESS_LAW } from './laws';

/** Where the relations hold: everywhere; the upper NTU is where the series was last compared. */
export const EFFECTIVENESS_RANGE = {
  NTU: [0, 1e6],
  Cr: [0, 1],
} as const satisfies Record<string, Interval>;

/**
 * Share of the greatest possible heat that an exchanger carries: heat / (C_min (hot inlet - cold inlet)).
 *
 * Closed forms for all but crossflow with both streams unmixed, which is the exact series of
 * `crossflow.ts`. Cr = 0 (one stream at constant temperature) is an ordinary point of each.
 *
 * @symbol NTU - UA / C_min, 1
 * @symbol Cr - C_min / C_max, 1
 * @returns effectiveness, 1
 * @throws {@link OutOfRangeError} outside {@link EFFECTIVENESS_RANGE}, NaN included
 * @source Kays & London, Compact Heat Exchangers, 3rd ed. 1984
 * @example effectiveness({ arrangement: 'counterflow', NTU: 2, Cr: 1 }) // 0.66667
 */
export function effectiveness({
  arrangement,
  NTU,
  Cr,
}: {
  arrangement: ExchangerArrangement;
  NTU: number;
  Cr: number;
}): number {
  requireWithin('effectiveness', EFFECTIVENESS_RANGE, { NTU, Cr });
  return EFFECTIVENESS_LAW[arrangement](NTU, Cr);
}

/**
 * NTU that gives an effectiveness: closed where the relation can be turned round, else a bracketed root.
 * With both streams mixed the relation has a peak; the answer lies on the rising side.
 *
 * @symbol effectiveness - share of the greatest possible heat, 1
 * @symbol Cr - C_min / C_max, 1
 * @returns NTU, 1
 * @throws {@link OutOfRangeError} when the arrangement cannot reach this effectiveness (by an NTU of 1e6
 *   where no limit below 1 exists); the range in the error ends at what it can reach
 * @source inverse of {@link effectiveness}
 * @example ntuFromEffectiveness({ arrangement: 'counterflow', effectiveness: 0.7195165065, Cr: 0.45 }) // 1.6
 */
export function ntuFromEffectiveness({
  arrangement,
  effectiveness: eps,
  Cr,
}: {
  arrangement: ExchangerArrangement;
  effectiveness: number;
  Cr: number;
}): number {
  requireWithin('NTU from effectiveness', { Cr: EFFECTIVENESS_RANGE.Cr }, { Cr });
  const max = effectivenessMax(arrangement, Cr);
  if (!(eps >= 0 && eps < max)) {
    throw new OutOfRangeError('NTU from effectiveness', 'effectiveness', eps, [0, max]);
  }
  return ntuLaw(arrangement)(eps, Cr);
}

export { effectivenessMax };

/**
 * Effectiveness of n equal passes, each of one arrangement, with the streams in overall counterflow
 * and mixed between passes. The surface is shared equally: each pass has NTU / n.
 *
 * @formula eps = (((1 - eps1*Cr)/(1 - eps1))^n - 1) / (((1 - eps1*Cr)/(1 - eps1))^n - Cr)
 * @symbol eps1 - effectiveness of one pass at NTU / n, 1
 * @symbol Cr - C_min / C_max, 1
 * @symbol n - number of passes, 1
 * @returns overall effectiveness, 1
 * @throws {@link OutOfRangeError} outside {@link EFFECTIVENESS_RANGE} or for fewer than one pass
 * @source Kays & London, Compact Heat Exchangers, 3rd ed. 1984, multipass overall-counterflow
 * @example effectivenessMultipass({ arrangement: 'counterflow', NTU: 2, Cr: 1, passes: 3 }) // 0.66667
 */
export function effectivenessMultipass({
  arrangement,
  NTU,
  Cr,
  passes,
}: {
  arrangement: ExchangerArrangement;
  NTU: number;
  Cr: number;
  passes: number;
}): number {
  requireWithin('passes', { passes: [1, 20] }, { passes });
  const onePass = effectiveness({ arrangement, NTU: NTU / passes, Cr });
  // The same relation without its 0/0 at Cr = 1: G is the overall eps / (1 - eps) seen by C_min.
  const odds = onePass / (1 - onePass);
  const x = odds * (1 - Cr);
  const G = Cr === 1 ? passes * odds : Math.expm1(passes * Math.log1p(x)) / (1 - Cr);
  return G === Infinity ? 1 : G / (1 + G);
}
