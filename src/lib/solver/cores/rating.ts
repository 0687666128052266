import { airCp } from '../air/air';
import { InvalidInputError, OutOfRangeError } from '../errors';
import { AFRESH, type Kept } from '../kept';
import { coolantProperties } from '../fluids/coolant';
import type { LiquidProperties } from '../fluids/properties';
import type { Core, CoreRating } from '../loop/types';
import { exchangerArrangement } from './arrangement';
import { effectiveness, ntuFromEffectiveness } from './effectiveness';

/** A rating that needs more than this is a misprint, not a core; the best charge coolers reach 5 at full flow. */
const RATING_NTU_LIMIT = 50;

/** What one rating point says of a core. */
export interface RatedCore {
  readonly UA: number;
  readonly hA_air: number;
  readonly hA_liquid: number;
  readonly C_air: number;
  readonly C_liquid: number;
  readonly NTU: number;
  readonly Cr: number;
  readonly effectiveness: number;
  /** The liquid at the rating's liquid inlet. */
  readonly liquid: LiquidProperties;
}

/**
 * UA of a core at its rating point, backed out of the heat through the effectiveness relation and split
 * between the sides. Specific heats and liquid properties are those at each stream's inlet, the same
 * rule as in `coreState`, so a core run at its own rating gives back the rated heat exactly.
 * The air side gets hA = UA / airShare, the liquid side UA / (1 - airShare).
 *
 * @param path - where the core stands in the loop, for the errors: `chargeCooler`, `frontExchanger`
 * @throws {@link InvalidInputError} naming the field, when a flow, the split or the heat cannot be; the
 *   heat, when the arrangement could not carry it with any surface
 * @source Kays & London, Compact Heat Exchangers, 3rd ed. 1984
 */
export function ratedCore(core: Core, path: string, kept: Kept = AFRESH): RatedCore {
  requireRating(core, path);
  const { rating, arrangement, airShare } = core;
  return kept.of(`${path}.rated`, [rating, arrangement, airShare], () => backedOut(core, path));
}

function backedOut(core: Core, path: string): RatedCore {
  const { rating } = core;
  const liquid = coolantProperties(rating.coolant, rating.liquidInlet);
  const C_air = rating.airMassFlow * airCp(rating.airInlet);
  const C_liquid = liquid.rho * rating.liquidFlow * liquid.cp;
  const C_min = Math.min(C_air, C_liquid);
  const Cr = C_min / Math.max(C_air, C_liquid);
  const arrangement = exchangerArrangement(core.arrangement, C_air <= C_liquid);

  const greatest = C_min * Math.abs(rating.airInlet - rating.liquidInlet);
  const eps = rating.heat / greatest;
  const attainable = effectiveness({ arrangement, NTU: RATING_NTU_LIMIT, Cr });
  if (!(eps < attainable)) {
    throw new InvalidInputError(
      `${path}.rating.heat`,
      `these flows and inlet temperatures carry at most ${Math.round(attainable * greatest)} W in this arrangement`,
      rating.heat,
    );
  }
  const NTU = ntuFromEffectiveness({ arrangement, effectiveness: eps, Cr });
  const UA = NTU * C_min;
  return {
    UA,
    hA_air: UA / core.airShare,
    hA_liquid: UA / (1 - core.airShare),
    C_air,
    C_liquid,
    NTU,
    Cr,
    effectiveness: eps,
    liquid,
  };
}

function requireRating(core: Core, path: string): void {
  const { rating } = core;
  const positive: readonly (keyof CoreRating)[] = ['heat', 'airMassFlow', 'liquidFlow'];
  for (const key of positive) {
    const value = rating[key] as number;
    if (!(value > 0 && value < Infinity)) {
      throw new InvalidInputError(`${path}.rating.${key}`, 'must be above zero', value);
    }
  }
  if (!(Math.abs(rating.airInlet - rating.liquidInlet) > 0)) {
    throw new InvalidInputError(
      `${path}.rating.airInlet`,
      'must differ from the liquid inlet, or no heat flows',
      rating.airInlet,
    );
  }
  const shares: readonly [keyof Core, number, number][] = [
    ['airShare', 0.05, 0.95],
    ['airExponent', 0, 1],
    ['liquidExponent', 0, 1],
    ['cleanliness', 0, 1],
  ];
  for (const [key, low, high] of shares) {
    const value = core[key] as number;
    if (!(value >= low && value <= high)) {
      throw new OutOfRangeError('core', `${path}.${key}`, value, [low, high]);
    }
  }
}
