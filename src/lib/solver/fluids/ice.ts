/** Ice: how much heat it takes to warm and to melt it, and what comes of ice put into water. */
import { requireWithin, type Interval } from '../errors';

/** Melting point of ice at atmospheric pressure, K. */
export const ICE_POINT = 273.15;
/**
 * Heat of fusion of ice, J/kg.
 * Source: IAPWS R10-06(2009) with IAPWS-95 gives 333.43 to 333.55 kJ/kg by reference state (from memory).
 */
export const HEAT_OF_FUSION = 333.55e3;
/** Specific heat of ice near its melting point, J/(kg K). Source: IAPWS R10-06(2009), 2.09 to 2.10 (from memory). */
export const CP_ICE = 2090;
/** Density of ice near its melting point, kg/m³. Source: IAPWS R10-06(2009), 916.7 (from memory). */
export const ICE_DENSITY = 916.7;

/** What ice and water are taken to hold. */
export interface IceProperties {
  readonly cp_ice: number;
  readonly cp_water: number;
  readonly latent_heat: number;
}

export interface IceMix extends IceProperties {
  readonly ice_mass: number;
  readonly T_ice: number;
  readonly water_mass: number;
  readonly T_water: number;
}

/** Enforced by {@link mixIceAndWater}; water above its boiling point is not asked for its pressure. */
export const ICE_RANGE = {
  ice_mass: [0, 1e4],
  T_ice: [200, ICE_POINT],
  water_mass: [0, 1e5],
  T_water: [ICE_POINT, 400],
  cp_ice: [500, 5000],
  cp_water: [500, 10e3],
  latent_heat: [1e4, 1e6],
} as const satisfies Record<string, Interval>;

/** Ice and water that have come to one temperature. */
export interface Mixed {
  /** K */
  readonly T_final: number;
  /** Ice that is left, or was made, kg. */
  readonly ice_left: number;
}

/**
 * Heat of a mass of water and ice, counted from liquid at the ice point, J. One number tells all: above
 * zero it is liquid, between zero and the latent heat of the whole mass it is both at the ice point.
 *
 * @formula H = m_w * c_w * (T_w - 273.15) - m_i * (L + c_i * (273.15 - T_i))
 * @symbol m_w, m_i - mass of water and of ice, kg
 * @symbol c_w, c_i - specific heat of water and of ice, J/(kg K)
 * @symbol L - heat of fusion, J/kg
 * @symbol T_w, T_i - K
 * @throws {@link OutOfRangeError} outside {@link ICE_RANGE}
 * @source First law
 * @example iceEnthalpy({ ice_mass: 1, T_ice: 273.15, water_mass: 0, T_water: 273.15, cp_ice: 2090, cp_water: 4190, latent_heat: 333550 }) // -333550
 */
export function iceEnthalpy(mix: IceMix): number {
  requireWithin('ice and water', ICE_RANGE, mix);
  const { ice_mass, T_ice, water_mass, T_water, cp_ice, cp_water, latent_heat } = mix;
  return (
    water_mass * cp_water * (T_water - ICE_POINT) -
    ice_mass * (latent_heat + cp_ice * (ICE_POINT - T_ice))
  );
}

/**
 * Ice put into water, with nothing lost to the surroundings.
 *
 * @symbol ice_mass, water_mass - kg
 * @symbol T_ice, T_water - K
 * @returns the temperature all comes to, K, and the ice that is then there, kg
 * @throws {@link OutOfRangeError} outside {@link ICE_RANGE}
 * @source First law on {@link iceEnthalpy}
 * @example mixIceAndWater({ ice_mass: 5, T_ice: 273.15, water_mass: 12, T_water: 313.15, cp_ice: 2090, cp_water: 4190, latent_heat: 333550 }).T_final // 277.9717
 */
export function mixIceAndWater(mix: IceMix): Mixed {
  const H = iceEnthalpy(mix);
  const mass = mix.ice_mass + mix.water_mass;
  if (mass === 0) return { T_final: mix.T_water, ice_left: 0 };
  if (H >= 0) return { T_final: ICE_POINT + H / (mass * mix.cp_water), ice_left: 0 };
  const allIce = -mass * mix.latent_heat;
  if (H >= allIce) return { T_final: ICE_POINT, ice_left: -H / mix.latent_heat };
  return { T_final: ICE_POINT + (H - allIce) / (mass * mix.cp_ice), ice_left: mass };
}
