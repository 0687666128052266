/** The closed form of a pull sampled over the volume of the reservoir. */
import { spaced } from '../numerics/spaced';
import { loopCapacity } from './capacityFormulas';
import { riseInPull } from './pullFormulas';

/** A loop but for the liquid in its reservoir, and the heat of one pull. */
export interface PullOfLoop {
  /** J/(m³ K) */
  readonly rho_cp: number;
  /** Liquid outside the reservoir, m³, and heat capacity of the metal, J/K. */
  readonly V_o: number;
  readonly C_m: number;
  /** Heat, W, and length of the pull, s. */
  readonly Q: number;
  readonly t: number;
}

/** Points (volume m³, rise K) of one pull with nothing given off, from `from` to `to`. */
export function riseAgainstVolume(
  { Q, t, ...loop }: PullOfLoop,
  [from, to]: readonly [number, number],
  count = 80,
): (readonly [volume: number, rise: number])[] {
  return spaced(from, to, count).map((V_t) => [
    V_t,
    riseInPull.value({ Q, t, C: loopCapacity.value({ ...loop, V_t }) }),
  ]);
}

/** Volumes worth drawing round the present one, m³: a quarter of it to three times. */
export const volumeSpan = (present: number): readonly [number, number] => [
  present / 4,
  3 * present,
];
