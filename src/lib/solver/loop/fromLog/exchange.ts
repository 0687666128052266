/** One core seen as one conductance: between UA and the heat per kelvin from inlet to inlet. */
import { exchangerArrangement } from '../../cores/arrangement';
import { ntuFromEffectiveness } from '../../cores/effectiveness';
import type { Arrangement } from '../types';

export interface Streams {
  readonly arrangement: Arrangement;
  /** Capacity rates, W/K. */
  readonly air: number;
  readonly liquid: number;
}

/**
 * UA of one core that carries `G` W/K from inlet to inlet.
 * @throws {@link OutOfRangeError} where no surface carries as much between these streams
 * @source Kays & London, Compact Heat Exchangers, 3rd ed. 1984
 */
export function uaOfInlet(G: number, { arrangement, air, liquid }: Streams): number {
  const least = Math.min(air, liquid);
  if (!(least > 0)) return 0;
  return (
    least *
    ntuFromEffectiveness({
      arrangement: exchangerArrangement(arrangement, air <= liquid),
      effectiveness: G / least,
      Cr: least / Math.max(air, liquid),
    })
  );
}
