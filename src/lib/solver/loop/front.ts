/** The front exchanger as one conductance from its liquid inlet to the fresh air, zone by zone. */
import { facePaths } from '../airside/overlap';
import { coreState } from '../cores/coreState';
import type { LiquidProperties } from '../fluids/properties';
import type { PreparedLoop } from './prepare';
import type { AirSide, CoreState, FrontState } from './types';

export interface FrontZone {
  readonly share: number;
  /** Its fresh air: ambient and what other cores add, K. */
  readonly freshAir: number;
  /** The zone as it would be with fresh air and without heat; gives UA, NTU, effectiveness. */
  readonly core: CoreState;
  /** Heat per kelvin between liquid inlet and fresh air, recirculation included, W/K. */
  readonly conductance: number;
}

export interface FrontExchange {
  readonly zones: readonly FrontZone[];
  /** Sum over the zones, W/K. */
  readonly conductance: number;
  /** What the sum would be if the liquid side had no resistance, W/K; splits it for the metal. */
  readonly airSideConductance: number;
  /**
   * Ambient plus what other cores add, K. Of several zones with airs of their own, their mean by
   * conductance: Σ G (T_liquid - T_zone) = (Σ G) (T_liquid - T_mean).
   */
  readonly freshAir: number;
  /** The same mean by the air sides alone, for liquid or metal of one temperature, K. */
  readonly freshAirOfMetal: number;
  /** The fresh air as mixed, by mass, K. */
  readonly mixedFreshAir: number;
  readonly recirculation: number;
  readonly liquidCapacityRate: number;
}

/**
 * Fresh air beyond this, K, only comes of stack heat stated for a stream of air that hardly moves. The
 * specific heat of the air is then that at this temperature; the solution carries a note.
 */
export const HOTTEST_FRESH_AIR = 500;

/**
 * Exchange of the front exchanger at one liquid flow. Each zone of the face has its share of the core,
 * of the liquid and its own air; a zone without air passes its liquid uncooled; the end tank mixes. A
 * zone partly covered by other cores counts as two ({@link facePaths}), in the same way: each of its
 * tubes is taken to lie behind the other cores or clear of them, as it does where those cover a share of
 * the height. Where tubes pass both, the liquid meets them in turn, and the truth lies a little off.
 *
 * Recirculation: the air enters at T_in = (1 - r) T_fresh + r T_out with T_out = T_in + Q / C_air, so
 * T_in = T_fresh + r/(1 - r) Q / C_air, and with Q = g (T_liquid - T_in), g = effectiveness C_min,
 * G = g / (1 + g r / ((1 - r) C_air)).
 */
export function frontExchange(
  { frontCore, loop }: PreparedLoop,
  air: AirSide,
  flow: number,
  liquid: LiquidProperties,
): FrontExchange {
  const freshAir = loop.site.ambientTemperature + air.stackRise;
  const back = air.recirculation / (1 - air.recirculation);
  const { cleanliness } = loop.frontExchanger;
  let conductance = 0;
  let airSideConductance = 0;
  let drawn = 0;
  let drawnByMetal = 0;
  const divided = air.zones[0]!.parts !== undefined;
  const zoneOf = (share: number, airMassFlow: number, freshAir: number): FrontZone => {
    const airIn = Math.min(freshAir, HOTTEST_FRESH_AIR);
    const core = coreState(frontCore, {
      airMassFlow,
      airIn,
      liquidFlow: share * flow,
      liquidIn: airIn, // no heat: only the conductance is asked
      liquid,
      positive: 'out-of-liquid',
      share,
    });
    const g = core.effectiveness * Math.min(core.C_air, core.C_liquid);
    const G = g > 0 ? g / (1 + (g * back) / core.C_air) : 0;
    const film = core.C_air > 0 ? throughFilm(core.C_air, cleanliness * core.hA_air) : 0;
    const F = film > 0 ? film / (1 + (film * back) / core.C_air) : 0;
    conductance += G;
    airSideConductance += F;
    drawn += G * freshAir;
    drawnByMetal += F * freshAir;
    return { share, freshAir, core, conductance: G };
  };
  const zones = divided
    ? facePaths(air).map(({ share, airMassFlow, rise }) =>
        zoneOf(share, airMassFlow, loop.site.ambientTemperature + rise),
      )
    : air.zones.map(({ share, airMassFlow }) => zoneOf(share, airMassFlow, freshAir));
  const ofMetal = divided && airSideConductance > 0 ? drawnByMetal / airSideConductance : freshAir;
  return {
    zones,
    conductance,
    airSideConductance,
    freshAir: divided ? (conductance > 0 ? drawn / conductance : ofMetal) : freshAir,
    freshAirOfMetal: ofMetal,
    mixedFreshAir: freshAir,
    recirculation: air.recirculation,
    liquidCapacityRate: liquid.rho * liquid.cp * flow,
  };
}

/** Heat per kelvin of a stream that passes a wall of one temperature, W/K. */
export const throughFilm = (C: number, hA: number): number =>
  C > 0 ? -C * Math.expm1(-hA / C) : 0;

/** The exchanger at the solution: `liquidIn` and the heat of each zone put in. */
export function frontState(exchange: FrontExchange, liquidIn: number, ambient: number): FrontState {
  const { freshAir, mixedFreshAir, recirculation, liquidCapacityRate: C } = exchange;
  const difference = liquidIn - freshAir;
  const heat = exchange.conductance * difference;
  const back = recirculation / (1 - recirculation);
  const sum = (of: (zone: FrontZone, index: number) => number) =>
    exchange.zones.reduce((total, zone, index) => total + of(zone, index), 0);
  const C_air = sum(({ core }) => core.C_air);
  const rise = C_air > 0 ? heat / C_air : 0;
  // Zone i takes in air warmed by back * Q_i / C_i, so the mean over the zones is warmed by back * rise.
  const airIn = mixedFreshAir + back * rise;
  return {
    UA: sum(({ core }) => core.UA),
    hA_air: sum(({ core }) => core.hA_air),
    hA_liquid: sum(({ core }) => core.hA_liquid),
    C_air,
    C_liquid: C,
    airIn,
    airOut: airIn + rise,
    liquidIn,
    liquidOut: C > 0 ? liquidIn - heat / C : freshAir,
    heat,
    zones: exchange.zones.map(({ share, freshAir, core, conductance }) => ({
      share,
      UA: core.UA,
      C_air: core.C_air,
      C_liquid: core.C_liquid,
      NTU: core.NTU,
      Cr: core.Cr,
      effectiveness: core.effectiveness,
      heat: conductance * (liquidIn - freshAir),
    })),
    conductanceToAmbient: liquidIn === ambient ? exchange.conductance : heat / (liquidIn - ambient),
    liquidEffectiveness: C > 0 && liquidIn !== airIn ? heat / (C * (liquidIn - airIn)) : 0,
    notes: exchange.zones.flatMap(({ core }) => core.notes),
  };
}
