/** What holds the air back at the front exchanger: the core itself and what else it meets. */
import { airDensity, airViscosity } from '../air/air';
import { pressureAtAltitude } from '../air/atmosphere';
import { ratedLoss, type LossFluid, type RatedLossModel } from '../hydraulics/ratedLoss';
import type { Loop } from '../loop/types';
import { STANDARD_AIR_DENSITY } from './fan';
import { coveredShare } from './overlap';

/** Temperature of standard air, K: 1.2 kg/m³ at 101325 Pa. */
export const STANDARD_AIR_TEMPERATURE = 294.15;

export interface AirLosses {
  readonly core: RatedLossModel;
  /** Null where nothing stands in front. */
  readonly stack: RatedLossModel | null;
  /** The air of the site. */
  readonly air: LossFluid;
  /** The air of the ratings. */
  readonly rated: LossFluid;
}

/**
 * Both losses, prepared for the air of the site.
 * @throws {@link InvalidInputError} for points that are no rating
 */
export function airLosses({ site, frontExchanger, airPath }: Loop): AirLosses {
  const T = site.ambientTemperature;
  const rated = { rho: STANDARD_AIR_DENSITY, mu: airViscosity(STANDARD_AIR_TEMPERATURE) };
  return {
    core: ratedLoss(frontExchanger.airLoss, rated, 'frontExchanger.airLoss'),
    stack:
      airPath.stackLoss.points.length > 0 && coveredShare(airPath) > 0
        ? ratedLoss(airPath.stackLoss, rated, 'airPath.stackLoss')
        : null,
    air: { rho: airDensity({ T, p: pressureAtAltitude(site.altitude) }), mu: airViscosity(T) },
    rated,
  };
}
