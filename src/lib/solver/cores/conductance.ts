import { OutOfRangeError, type Note } from '../errors';
import { AFRESH, type Kept } from '../kept';
import type { LiquidProperties } from '../fluids/properties';
import type { Core } from '../loop/types';
import type { EffectivenessLaw } from './laws';
import { EFFECTIVENESS_LAW } from './laws';
import { exchangerArrangement } from './arrangement';
import { ratedCore, type RatedCore } from './rating';

/** Flows over rated flow within which the exponents may be trusted; beyond, a note says so. */
export const CORE_FLOW_BAND = [0.4, 2.5] as const;

/** The flows through a core, or through a share of it. */
export interface CoreFlows {
  readonly airMassFlow: number;
  readonly liquidFlow: number;
  readonly liquid: LiquidProperties;
}

export interface Conductance {
  /** Fouling taken off, W/K. */
  readonly UA: number;
  /** Clean, W/K. */
  readonly hA_air: number;
  readonly hA_liquid: number;
}

/** A core prepared once: the inverse is done, what is left is a few powers per call. */
export interface CoreModel {
  readonly rated: RatedCore;
  readonly ratedUA: number;
  /**
   * Conductance at other flows.
   * @throws {@link OutOfRangeError} for a negative flow or a NaN
   */
  at(flows: CoreFlows): Conductance;
  /** Effectiveness relation when the air has the smaller capacity rate, and when the liquid has. */
  readonly lawAirSmaller: EffectivenessLaw;
  readonly lawLiquidSmaller: EffectivenessLaw;
  /** Notes about flows far from the rating; empty inside {@link CORE_FLOW_BAND}. */
  notesAt(airMassFlow: number, liquidFlow: number): readonly Note[];
}

const NONE: readonly Note[] = Object.freeze([]);

/**
 * Prepare a core.
 *
 * Air side: hA_air = hA_air,r (m / m_r)^airExponent, the exponent of the surface's own correlation.
 *
 * Liquid side: from Nu = c Re^n Pr^0.4 with h = Nu k / D. Passage width D, flow area and wetted area
 * belong to the core and cancel in the ratio to the rating, and Re is then proportional to rho Q / mu:
 * hA_liquid = hA_liquid,r (k / k_r) (Re / Re_r)^n (Pr / Pr_r)^0.4, Pr = cp mu / k.
 *
 * UA = cleanliness / (1/hA_air + 1/hA_liquid); the wall's own resistance is inside the split. A side
 * that stands still has hA = 0 and the core UA = 0: what free convection carries is left out.
 *
 * @param path - where the core stands in the loop, for the errors
 * @param kept - holds what one rating says, which fouling and exponents leave alone
 * @throws as {@link ratedCore}
 * @source Kays & London, Compact Heat Exchangers, 3rd ed. 1984
 */
export function coreModel(core: Core, path = 'core', kept: Kept = AFRESH): CoreModel {
  const rated = ratedCore(core, path, kept);
  const { airMassFlow: m_r, liquidFlow: Q_r } = core.rating;
  const { airExponent, liquidExponent, cleanliness } = core;
  const prandtl = ({ cp, mu, k }: LiquidProperties) => (cp * mu) / k;
  const Re_r = (rated.liquid.rho * Q_r) / rated.liquid.mu; // per length: the ratio is all that counts
  const Pr_r = prandtl(rated.liquid);

  return {
    rated,
    ratedUA: rated.UA,
    lawAirSmaller: EFFECTIVENESS_LAW[exchangerArrangement(core.arrangement, true)],
    lawLiquidSmaller: EFFECTIVENESS_LAW[exchangerArrangement(core.arrangement, false)],

    at({ airMassFlow, liquidFlow, liquid }) {
      requireFlow(path, 'airMassFlow', airMassFlow);
      requireFlow(path, 'liquidFlow', liquidFlow);
      const hA_air = airMassFlow === 0 ? 0 : rated.hA_air * (airMassFlow / m_r) ** airExponent;
      const hA_liquid =
        liquidFlow === 0
          ? 0
          : rated.hA_liquid *
            (liquid.k / rated.liquid.k) *
            ((liquid.rho * liquidFlow) / liquid.mu / Re_r) ** liquidExponent *
            (prandtl(liquid) / Pr_r) ** 0.4;
      return { UA: cleanliness / (1 / hA_air + 1 / hA_liquid), hA_air, hA_liquid };
    },

    notesAt(airMassFlow, liquidFlow) {
      const air = farNote(path, 'airMassFlow', airMassFlow, m_r);
      const liquid = farNote(path, 'liquidFlow', liquidFlow, Q_r);
      if (air) return liquid ? [air, liquid] : [air];
      return liquid ? [liquid] : NONE;
    },
  };
}

function requireFlow(path: string, quantity: string, value: number): void {
  if (!(value >= 0 && value < Infinity)) {
    throw new OutOfRangeError(path, `${path}.${quantity}`, value, [0, Infinity]);
  }
}

function farNote(path: string, quantity: string, flow: number, rated: number): Note | null {
  const low = CORE_FLOW_BAND[0] * rated;
  const high = CORE_FLOW_BAND[1] * rated;
  if (flow >= low && flow <= high) return null;
  return {
    code: 'core-far-from-rating',
    message:
      'This flow is far from the one at which the core was rated; its conductance is carried over by an exponent and grows less certain.',
    quantity: `${path}.${quantity}`,
    value: flow,
    range: [low, high],
  };
}
