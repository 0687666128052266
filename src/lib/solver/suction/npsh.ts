/** Suction head: how far the liquid at the pump inlet is from boiling, as metres of itself. */
import { InvalidInputError, requireWithin, type Interval } from '../errors';
import { g } from '../hydraulics/affinity';

/** Enforced by {@link npshAvailable}; wide, to catch a value in the wrong unit or a NaN. */
export const NPSH_RANGE = {
  p_ambient: [0, 2e6],
  p_tank_gauge: [-2e5, 2e6],
  p_vapour: [0, 2e6],
  rho: [500, 2000],
  z: [-50, 50],
  h_suction: [0, 1e4],
} as const satisfies Record<string, Interval>;

export interface SuctionSide {
  /** Pressure of the surrounding air, Pa absolute. */
  readonly p_ambient: number;
  /** Pressure in the reservoir above that, Pa gauge. */
  readonly p_tank_gauge: number;
  /** Vapour pressure of the liquid at the pump inlet's temperature, Pa absolute. */
  readonly p_vapour: number;
  /** Density, kg/m³. */
  readonly rho: number;
  /** Liquid surface above the pump inlet, m. */
  readonly z: number;
  /** Head lost in the suction hose, m. */
  readonly h_suction: number;
}

/**
 * Net positive suction head available. Datum: the pump's inlet centreline. The velocity head at the
 * inlet belongs to the total head there and cancels. A negative result means the liquid boils before
 * it reaches the pump.
 *
 * @formula NPSHa = (p_ambient + p_tank_gauge - p_vapour) / (rho * g) + z - h_suction
 * @symbol p_ambient - pressure of the surrounding air, Pa absolute
 * @symbol p_tank_gauge - reservoir above that, Pa gauge
 * @symbol p_vapour - vapour pressure at the inlet temperature, Pa absolute
 * @symbol rho - density, kg/m^3
 * @symbol g - standard gravity 9.80665 m/s^2
 * @symbol z - liquid surface above the pump inlet, m
 * @symbol h_suction - head lost in the suction hose, m
 * @returns NPSH available, m of the liquid
 * @throws {@link OutOfRangeError} outside {@link NPSH_RANGE}, NaN included
 * @throws {@link InvalidInputError} when the absolute pressure in the reservoir is not above zero
 * @source ISO 9906:2012 (definition)
 * @example npshAvailable({ p_ambient: 101325, p_tank_gauge: 0, p_vapour: 2339, rho: 998.2, z: 0.3, h_suction: 0.5 }) // 9.911964442
 */
export function npshAvailable(side: SuctionSide): number {
  const { p_ambient, p_tank_gauge, p_vapour, rho, z, h_suction } = side;
  requireWithin('NPSH available', NPSH_RANGE, side);
  const absolute = p_ambient + p_tank_gauge;
  if (!(absolute > 0)) {
    throw new InvalidInputError(
      'p_tank_gauge',
      'the absolute pressure in the reservoir is not above zero',
      absolute,
    );
  }
  return (absolute - p_vapour) / (rho * g) + z - h_suction;
}

/**
 * What is left of the suction head.
 *
 * @formula margin = available - required
 * @symbol available - suction head available, m
 * @symbol required - suction head the pump needs (NPSH3: its head has then fallen by 3 %), m
 * @source ISO 9906:2012 (NPSH3)
 * @example suctionMargin({ available: 5, required: 1.8 }) // 3.2
 */
export function suctionMargin({
  available,
  required,
}: {
  available: number;
  required: number;
}): number {
  return available - required;
}
