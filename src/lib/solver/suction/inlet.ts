/** The pump's inlet: how high the liquid stands above its eye, what pressure arrives there. */
import { InvalidInputError, OutOfRangeError } from '../errors';
import { g } from '../hydraulics/affinity';
import type { Loop } from '../loop/types';
import type { SuctionSide } from './npsh';

/** Sign of the eye's depth: an inlet that faces up has the eye below it. */
export const FACING = { level: 0, up: 1, down: -1 } as const;

/**
 * Liquid surface above the impeller's eye, to which suction head is counted.
 *
 * @formula z = z_i + s * d
 * @symbol z_i - liquid surface above the inlet port, m
 * @symbol s - 1: the inlet faces up, the eye lies below it; 0: level; -1: it faces down
 * @symbol d - from inlet port to eye along the inlet, m
 * @throws {@link InvalidInputError} `pump.eyeDepth` for a negative depth
 * @source Datum of NPSH: ISO 9906:2012
 */
export function levelAboveEye({ reservoir, pump }: Pick<Loop, 'reservoir' | 'pump'>): number {
  const { eyeDepth = 0, inletFaces = 'level' } = pump;
  if (!(eyeDepth >= 0 && eyeDepth < Infinity)) {
    throw new InvalidInputError('pump.eyeDepth', 'the depth of the eye is negative', eyeDepth);
  }
  return reservoir.levelAbovePump + FACING[inletFaces] * eyeDepth;
}

/**
 * Total pressure that arrives at the impeller's eye.
 *
 * @formula p_i = p_ambient + p_tank_gauge + rho * g * (z - h_suction)
 * @symbol p_ambient - pressure of the surrounding air, Pa absolute
 * @symbol p_tank_gauge - reservoir above that, Pa gauge
 * @symbol rho - density, kg/m^3
 * @symbol g - standard gravity 9.80665 m/s^2
 * @symbol z - liquid surface above the eye, m
 * @symbol h_suction - head lost in the suction hose, m
 * @returns Pa absolute
 * @throws {@link OutOfRangeError} where it would lie below absolute zero: no liquid flows so
 * @source Bernoulli with losses
 * @example inletPressure({ p_ambient: 101325, p_tank_gauge: 0, rho: 1000, z: 1, h_suction: 0 }) // 111131.65
 */
export function inletPressure(side: Omit<SuctionSide, 'p_vapour'>): number {
  const pressure = side.p_ambient + side.p_tank_gauge + side.rho * g * (side.z - side.h_suction);
  if (!(pressure >= 0)) {
    throw new OutOfRangeError('suction pressure', 'p_i', pressure, [0, Infinity]);
  }
  return pressure;
}
