import { airCp } from '../air/air';
import type { LiquidProperties } from '../fluids/properties';
import type { CoreState } from '../loop/types';
import type { CoreModel } from './conductance';

/** What meets in a core. */
export interface CoreInlets {
  readonly airMassFlow: number;
  /** K */
  readonly airIn: number;
  readonly liquidFlow: number;
  /** K */
  readonly liquidIn: number;
  readonly liquid: LiquidProperties;
  /** Which way heat counts as positive: into the liquid (charge cooler) or out of it (front exchanger). */
  readonly positive: 'into-liquid' | 'out-of-liquid';
  /**
   * Share of the core these flows pass through, default 1. A share behaves as the whole core would
   * with its flows divided by the share, and has that share of the conductance.
   */
  readonly share?: number;
}

/** NTU beyond this counts as this: the effectiveness moves by less than 6e-4, at flows near nothing. */
const NTU_CAP = 1e6;

/**
 * A core at given inlets: conductance, effectiveness, outlets, heat. Specific heat of the air is taken
 * at its inlet; the liquid's properties are those given. A stream that stands still carries no heat:
 * both outlets then equal their inlets and effectiveness is 0.
 *
 * @throws {@link OutOfRangeError} for a negative flow or an air temperature outside the range of `airCp`
 * @source Kays & London, Compact Heat Exchangers, 3rd ed. 1984
 */
export function coreState(model: CoreModel, inlets: CoreInlets): CoreState {
  const { airMassFlow, airIn, liquidFlow, liquidIn, liquid, positive, share = 1 } = inlets;
  const air = airMassFlow / share;
  const Q = liquidFlow / share;
  const { UA, hA_air, hA_liquid } = model.at({ airMassFlow: air, liquidFlow: Q, liquid });
  const C_air = airMassFlow * airCp(airIn);
  const C_liquid = liquid.rho * liquidFlow * liquid.cp;
  const airIsSmaller = C_air <= C_liquid;
  const C_min = airIsSmaller ? C_air : C_liquid;
  const C_max = airIsSmaller ? C_liquid : C_air;

  const moving = C_min > 0;
  const NTU = moving ? Math.min(NTU_CAP, (share * UA) / C_min) : 0;
  const Cr = moving ? C_min / C_max : 0;
  const law = airIsSmaller ? model.lawAirSmaller : model.lawLiquidSmaller;
  const effectiveness = law(NTU, Cr);
  const intoLiquid = effectiveness * C_min * (airIn - liquidIn);
  return {
    UA: share * UA,
    hA_air: share * hA_air,
    hA_liquid: share * hA_liquid,
    C_air,
    C_liquid,
    NTU,
    Cr,
    effectiveness,
    airIn,
    airOut: moving ? airIn - intoLiquid / C_air : airIn,
    liquidIn,
    liquidOut: moving ? liquidIn + intoLiquid / C_liquid : liquidIn,
    heat: positive === 'into-liquid' ? intoLiquid : 0 - intoLiquid, // never -0
    notes: model.notesAt(air, Q),
  };
}
