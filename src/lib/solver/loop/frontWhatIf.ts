/** The front exchanger of a settled loop with one thing changed, at the heat it carries now. */
import type { CoreModel } from '../cores/conductance';
import { frontExchange, type FrontExchange } from './front';
import type { PreparedLoop } from './prepare';
import type { AirSide, SteadySolution } from './types';

/** Factors on what the exchanger has now; 1 unless given. */
export interface FrontChange {
  readonly flow?: number;
  readonly air?: number;
  /** On the conductance of the whole core. */
  readonly core?: number;
}

/** The exchange with changes made; liquid properties stay those of the solution. */
export function frontChanged(
  prepared: PreparedLoop,
  s: SteadySolution,
  { flow = 1, air = 1, core = 1 }: FrontChange = {},
): FrontExchange {
  return frontExchange(
    { ...prepared, frontCore: scaledCore(prepared.frontCore, core) },
    scaledAir(s.air, air),
    flow * s.operating.flow,
    prepared.liquidAt(s.liquid.temperature),
  );
}

/** The exchange with the same air spread evenly over the face, fresh: what unevenness and hot air coming round take is the rest. */
export function frontEven(
  prepared: PreparedLoop,
  s: SteadySolution,
  recirculation = 0,
): FrontExchange {
  const { totalMassFlow, meanFaceVelocity, zones } = s.air;
  const { parts: _, ...first } = zones[0]!;
  const whole = {
    ...first,
    share: 1,
    airMassFlow: totalMassFlow,
    faceVelocity: meanFaceVelocity,
  };
  return frontExchange(
    prepared,
    { ...s.air, zones: [whole], recirculation },
    s.operating.flow,
    prepared.liquidAt(s.liquid.temperature),
  );
}

/** What tells two changes apart, at the heat carried now. */
export interface FrontReading {
  /** Heat per kelvin between liquid inlet and fresh air, W/K. */
  readonly conductance: number;
  /** Liquid into the exchanger, K. */
  readonly liquidIn: number;
  /** Drop of the liquid through it, K. */
  readonly drop: number;
}

/**
 * Temperatures at which a changed exchanger would carry the heat it carries now. Fewer degrees per watt
 * at the inlet come of more conductance; the drop follows from the flow alone.
 *
 * @formula liquidIn = T_fresh + Q / G, drop = Q / C
 */
export function frontAtSameHeat(
  prepared: PreparedLoop,
  s: SteadySolution,
  change: FrontChange,
): FrontReading {
  const { conductance, freshAir, liquidCapacityRate } = frontChanged(prepared, s, change);
  return {
    conductance,
    liquidIn: freshAir + s.front.heat / conductance,
    drop: s.front.heat / liquidCapacityRate,
  };
}

/** The same core washed and flushed. */
export const frontCleaned = (prepared: PreparedLoop, s: SteadySolution): FrontReading =>
  frontAtSameHeat(prepared, s, { core: 1 / prepared.loop.frontExchanger.cleanliness });

/** How sure a core known by one point is, either way (Ng, Johnson & Watkins, IMechE 2005; common practice). */
export const CORE_UNSURE = 0.2;

/** The core as much weaker and as much stronger than stated as one catalogue point leaves open. */
export const frontUnsure = (prepared: PreparedLoop, s: SteadySolution) => ({
  weak: frontAtSameHeat(prepared, s, { core: 1 - CORE_UNSURE }),
  strong: frontAtSameHeat(prepared, s, { core: 1 + CORE_UNSURE }),
});

/** What uneven air and hot air coming round leave of what the core could do. */
export interface AirLosses {
  readonly now: number;
  /** The same air spread evenly, W/K. */
  readonly even: number;
  /** Spread evenly and all fresh, W/K. */
  readonly fresh: number;
  /** Share of `fresh` that is lost. */
  readonly lost: number;
}

export function airLosses(prepared: PreparedLoop, s: SteadySolution): AirLosses {
  const now = frontChanged(prepared, s).conductance;
  const even = frontEven(prepared, s, s.air.recirculation).conductance;
  const fresh = frontEven(prepared, s).conductance;
  return { now, even, fresh, lost: fresh > 0 ? 1 - now / fresh : 0 };
}

/** Relative gain of the exchange for a tenth more of one thing. */
export interface FrontGains {
  readonly flow: number;
  readonly air: number;
  readonly core: number;
}

const TENTH = 1.1;

/** How much more heat per kelvin a tenth more liquid, air or core would carry. */
export function frontGains(prepared: PreparedLoop, s: SteadySolution): FrontGains {
  const now = frontChanged(prepared, s).conductance;
  const gain = (change: FrontChange) => frontChanged(prepared, s, change).conductance / now - 1;
  return { flow: gain({ flow: TENTH }), air: gain({ air: TENTH }), core: gain({ core: TENTH }) };
}

/** One side holds the exchanger back when a tenth more of it brings this many times what the other does (ours). */
const LEADS = 2;

export function leadingSide({ flow, air }: FrontGains): 'air' | 'liquid' | 'both' {
  if (air > LEADS * flow) return 'air';
  return flow > LEADS * air ? 'liquid' : 'both';
}

const scaledAir = (air: AirSide, factor: number): AirSide => ({
  ...air,
  zones: air.zones.map((zone) => ({
    ...scaledFlow(zone, factor),
    ...(zone.parts && {
      parts: [scaledFlow(zone.parts[0], factor), scaledFlow(zone.parts[1], factor)],
    }),
  })),
});

const scaledFlow = <T extends { readonly airMassFlow: number }>(path: T, factor: number): T => ({
  ...path,
  airMassFlow: factor * path.airMassFlow,
});

/** The same core made larger: both sides and the fouling in proportion. */
export function scaledCore(model: CoreModel, factor: number): CoreModel {
  return {
    ...model,
    at(flows) {
      const { UA, hA_air, hA_liquid } = model.at(flows);
      return { UA: factor * UA, hA_air: factor * hA_air, hA_liquid: factor * hA_liquid };
    },
  };
}
