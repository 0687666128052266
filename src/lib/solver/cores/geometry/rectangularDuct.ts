/** Straight rectangular passages, laminar and developed: plain fins, and the inside of a flat tube. */
import { requireWithin, type Interval } from '../../errors';

const RATIO = { sideRatio: [0, 1] } as const satisfies Record<string, Interval>;

/** Odd terms; the fifth power leaves less than 1e-9 behind the last. */
const TERMS = [1, 3, 5, 7, 9, 11, 13, 15, 17, 19] as const;

/**
 * Fanning friction times Reynolds number, from the exact series for the velocity.
 * @formula f Re = 24 / ((1 + a)^2 (1 - 192 a / pi^5 sum_odd tanh(n pi / (2 a)) / n^5))
 * @symbol a - shorter side over longer, 0 (parallel plates) to 1 (square)
 * @returns f Re on the hydraulic diameter, 1
 * @throws {@link OutOfRangeError} for a ratio outside 0 to 1, NaN included
 * @source Shah & London, Laminar Flow Forced Convection in Ducts, 1978, rectangular ducts (from memory)
 * @example laminarFRe(1) // 14.2271
 */
export function laminarFRe(sideRatio: number): number {
  requireWithin('rectangular duct', RATIO, { sideRatio });
  if (sideRatio === 0) return 24;
  let sum = 0;
  for (const n of TERMS) sum += Math.tanh((n * Math.PI) / (2 * sideRatio)) / n ** 5;
  return 24 / ((1 + sideRatio) ** 2 * (1 - (192 / Math.PI ** 5) * sideRatio * sum));
}

const NUSSELT_T = [1, -2.61, 4.97, -5.119, 2.702, -0.548] as const;

/**
 * Nusselt number with one wall temperature all round and along.
 * @formula Nu_T = 7.541 (1 - 2.610 a + 4.970 a^2 - 5.119 a^3 + 2.702 a^4 - 0.548 a^5)
 * @symbol a - shorter side over longer, 0 to 1
 * @returns Nu on the hydraulic diameter, 1; within 0.1 %
 * @throws {@link OutOfRangeError} for a ratio outside 0 to 1, NaN included
 * @source Shah & London 1978 (from memory)
 * @example laminarNusselt(1) // 2.976
 */
export function laminarNusselt(sideRatio: number): number {
  requireWithin('rectangular duct', RATIO, { sideRatio });
  return 7.541 * NUSSELT_T.reduceRight((sum, c) => sum * sideRatio + c, 0);
}
