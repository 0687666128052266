/** Both cores as described, at the flows of each row of a log. */
import { airCp } from '../../air/air';
import type { LiquidProperties } from '../../fluids/properties';
import { frontExchange } from '../front';
import type { PreparedLoop } from '../prepare';
import type { AirSide } from '../types';
import { uaOfInlet } from './exchange';

/** What a row says of the streams. */
export interface RowFlows {
  readonly liquid: LiquidProperties;
  /** m³/s */
  readonly flow: number;
  /** m/s */
  readonly speed: number;
  /** Charge air, kg/s; null where its heat is stated. */
  readonly chargeAirFlow: number | null;
}

/** Conductances in W/K; films are hA of one side with the fouling taken off. */
export interface DescribedCores {
  readonly frontUA: number;
  readonly frontFilm: number;
  /** Capacity rate of the air through the whole face. */
  readonly frontAirRate: number;
  /** Air that meets the front exchanger, above ambient, K. */
  readonly stackRise: number;
  readonly chargeUA: number;
  /** Air side; liquid side where the heat is stated. */
  readonly chargeFilm: number;
}

/** Speeds between which the air side is taken as straight, m/s: it is solved once for each. */
const SPEED_STEP = 1;
/** Least share of a core's conductance that is believed, as in the warm-up. */
const LEAST_CLEAN = 0.05;
/** A stream this near its end temperature no longer tells how large the surface is. */
const SATURATED = 0.9999;

/**
 * A function from a row's flows to what the description makes of them. Zones of the face, air that comes
 * round again and what stands in front are in the front exchanger's figure, as one conductance.
 */
export function describedCores(prepared: PreparedLoop): (at: RowFlows) => DescribedCores {
  const { loop, chargeCore } = prepared;
  const cp = airCp(loop.site.ambientTemperature);
  const known = new Map<number, AirSide>();
  const airAt = (speed: number) => {
    const found = known.get(speed) ?? prepared.airAt(speed);
    known.set(speed, found);
    return found;
  };
  const film = Math.max(LEAST_CLEAN, loop.chargeCooler.cleanliness);

  return ({ liquid, flow, speed, chargeAirFlow }) => {
    const place = Math.max(0, speed) / SPEED_STEP;
    const below = Math.floor(place);
    const share = place - below;
    const ends = share === 0 ? [below] : [below, below + 1];
    const sides = ends.map((n) => {
      const air = airAt(n * SPEED_STEP);
      const { conductance, airSideConductance, freshAir } = frontExchange(
        prepared,
        air,
        flow,
        liquid,
      );
      const rise = freshAir - loop.site.ambientTemperature;
      return [cp * air.totalMassFlow, conductance, airSideConductance, rise] as const;
    });
    const [low, high] = [sides[0]!, sides.at(-1)!];
    const [rate, G, airSide, stackRise] = low.map((x, i) => x + share * (high[i]! - x));
    const C = liquid.rho * liquid.cp * flow;
    const core = chargeCore.at({
      airMassFlow: chargeAirFlow ?? 0,
      liquidFlow: flow,
      liquid,
    });
    return {
      frontAirRate: rate!,
      stackRise: stackRise!,
      frontUA: uaOfInlet(Math.min(G!, SATURATED * Math.min(rate!, C)), {
        arrangement: loop.frontExchanger.arrangement,
        air: rate!,
        liquid: C,
      }),
      frontFilm: rate! > 0 ? -rate! * Math.log1p(-Math.min(SATURATED, airSide! / rate!)) : 0,
      chargeUA: core.UA,
      chargeFilm: film * (chargeAirFlow === null ? core.hA_liquid : core.hA_air),
    };
  };
}
