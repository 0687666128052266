/**
 * Other cores that cover a share of the front exchanger's face: two paths for the air, through both
 * cores and through this one alone, under one pressure difference.
 */
import { brent } from '../numerics/root';
import type { LossCurve } from '../hydraulics/ratedLoss';
import type { AirPath, AirSide, FacePart, FaceZone } from '../loop/types';

/** Share of the face that other cores cover. */
export const coveredShare = ({ stackShare = 1 }: AirPath): number => stackShare;

/** Heat of the other cores that reaches the exchanger's air at all, W: with nothing covered, none. */
export const stackHeatOnFace = (airPath: AirPath): number =>
  coveredShare(airPath) > 0 ? airPath.stackHeat : 0;

/**
 * Rise above ambient, K, of the air that other cores warm.
 *
 * Cores in front warm the air before it meets the exchanger. Cores behind it warm only the air that has
 * left it; of that, the share r comes round again and brings r/(1 - r) of the rise back to the face.
 *
 * @formula dT = Q / C (in front), r / (1 - r) * Q / C (behind)
 * @symbol Q - heat of the other cores, W
 * @symbol C - capacity rate of the air that passes them, W/K
 * @symbol r - share of hot air that comes round again, 1
 * @source first law; the same balance as the exchanger's own recirculation
 */
export function riseByOthers(airPath: AirPath, C: number, recirculation: number): number {
  if (!(C > 0)) return 0;
  const rise = stackHeatOnFace(airPath) / C;
  return airPath.stackPlace === 'behind' ? (recirculation / (1 - recirculation)) * rise : rise;
}

/** The two paths, told by the velocity on the covered one. All velocities are on the exchanger's face. */
export interface Overlap {
  /** Pressure lost on either path, Pa. */
  pressure(covered: number): number;
  /** Velocity on the clear path under the same pressure. */
  clear(covered: number): number;
  /** Velocity over both, by area. */
  mean(covered: number): number;
  /** Pressure lost at a mean velocity, Pa. */
  loss(mean: number): number;
}

/**
 * Two parallel paths under one pressure difference: `share` of the area loses core and stack, the rest
 * the core alone. Pressure and mean velocity both rise with the covered velocity, so each pressure and
 * each mean velocity belongs to just one; it lies between nothing and the mean.
 *
 * @formula dp_core(u_c) + dp_stack(u_c) = dp_core(u_u); u = share * u_c + (1 - share) * u_u
 * @symbol u_c, u_u - face velocity where covered and where clear, m/s
 * @source momentum balance; no air crosses between the paths inside the cores (our assumption)
 */
export function overlap(core: LossCurve, stack: LossCurve, share: number): Overlap {
  const pressure = (covered: number) => core.loss(covered) + stack.loss(covered);
  const clear = (covered: number) => core.flow(pressure(covered));
  const mean = (covered: number) => share * covered + (1 - share) * clear(covered);
  return {
    pressure,
    clear,
    mean,
    loss(wanted) {
      if (!(wanted > 0)) return 0;
      const short = (covered: number) => mean(covered) - wanted;
      // At the mean itself the clear path is at least as fast: the sign differs, or the paths are alike.
      const past = short(wanted);
      return pressure(past > 0 ? brent(short, 0, wanted, { fb: past, xtol: 0 }).x : wanted);
    },
  };
}

/** A path of air through the face: a zone, or one of the two in a zone that is partly covered. */
export type FacePath = Pick<FaceZone, 'zone'> &
  Omit<FacePart, 'covered' | 'rise'> & {
    /** Null where the zone is not divided. */
    readonly covered: boolean | null;
    /** Rise of its air above ambient by other cores, K. */
    readonly rise: number;
  };

/** Every path through the face, in order. */
export function facePaths({ zones, stackRise }: AirSide): FacePath[] {
  return zones.flatMap((zone): FacePath[] =>
    zone.parts
      ? zone.parts.map((part) => ({ zone: zone.zone, ...part }))
      : [{ ...zone, covered: null, rise: stackRise }],
  );
}

/** Largest rise of any path, K. */
export const hottestRise = (air: AirSide): number =>
  Math.max(...facePaths(air).map(({ rise }) => rise));
