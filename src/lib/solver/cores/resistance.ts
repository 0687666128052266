/** Where the thermal resistance of a core lies. */
import type { CoreState } from '../loop/types';

/** Parts in series, K/W, or what each of them takes, K. */
export interface Resistances {
  readonly air: number;
  readonly liquid: number;
  /** What is left of 1/UA: fouling, and with several zones of air their unevenness. */
  readonly rest: number;
}

/**
 * Parts of 1/UA in series. Of a core in zones, UA and both hA are the sums over the zones: air that is
 * unevenly spread then costs a little on top, since the sum of series is never more than the series of
 * sums, and that cost counts with the fouling.
 *
 * @formula rest = 1 / UA - 1 / hA_air - 1 / hA_liquid
 * @symbol UA - overall conductance, fouling taken off, W/K
 * @symbol hA_air - air side, clean, W/K
 * @symbol hA_liquid - liquid side, clean, W/K
 * @returns null where a side stands still: nothing is carried through
 * @source Definition
 */
export function resistances({
  UA,
  hA_air,
  hA_liquid,
}: Pick<CoreState, 'UA' | 'hA_air' | 'hA_liquid'>): Resistances | null {
  if (!(UA > 0)) return null;
  const air = 1 / hA_air;
  const liquid = 1 / hA_liquid;
  return { air, liquid, rest: Math.max(0, 1 / UA - air - liquid) };
}

/**
 * Temperature difference that the heat carried spends on each resistance, K; their sum is the mean
 * difference between the streams.
 *
 * @formula dT = Q * R
 * @symbol Q - heat carried, either way, W
 * @symbol R - resistance of a part, K/W
 * @returns null where nothing is carried
 */
export function differencesSpent(
  core: Pick<CoreState, 'UA' | 'hA_air' | 'hA_liquid' | 'heat'>,
): Resistances | null {
  const parts = resistances(core);
  const Q = Math.abs(core.heat);
  if (!parts || Q === 0) return null;
  return { air: Q * parts.air, liquid: Q * parts.liquid, rest: Q * parts.rest };
}
