/** A core's measures tried at other air flows and with other fins: curves and what-ifs. */
import { STANDARD_AIR_DENSITY } from '../../airside/fan';
import { OutOfRangeError } from '../../errors';
import type { Arrangement } from '../../loop/types';
import { coreFromGeometry, type GeometryCore, type GeometryPoint } from './fromGeometry';
import type { CoreGeometry } from './types';

/** One point of a sweep over face velocity in standard air. */
export interface SweptCore {
  readonly faceVelocity: number;
  readonly UA: number;
  readonly airLoss: number;
}

/** Face velocities of the curves, m/s. */
const SWEEP = Array.from({ length: 25 }, (_, i) => 0.5 + i * 0.5);

/**
 * Conductance and air loss against face velocity, the liquid as at `point`; velocities that the fin's
 * law does not take are left out.
 */
export function sweptCore(
  geometry: CoreGeometry,
  arrangement: Arrangement,
  point: GeometryPoint,
): SweptCore[] {
  const face = geometry.tubeRun * geometry.stack;
  return SWEEP.flatMap((faceVelocity) => {
    const airMassFlow = faceVelocity * face * STANDARD_AIR_DENSITY;
    try {
      const core = coreFromGeometry(geometry, arrangement, { ...point, airMassFlow });
      return [{ faceVelocity, UA: core.UA, airLoss: core.air.pressureDrop }];
    } catch (error) {
      if (error instanceof OutOfRangeError) return [];
      throw error;
    }
  });
}

/** Face velocity of a mass flow, in standard air, m/s. */
export const faceVelocityOf = ({ tubeRun, stack }: CoreGeometry, airMassFlow: number): number =>
  airMassFlow / (STANDARD_AIR_DENSITY * tubeRun * stack);

/** Relative changes when the fins stand closer by a factor; null where such fins cannot be. */
export function closerFins(
  geometry: CoreGeometry,
  arrangement: Arrangement,
  point: GeometryPoint,
  made: GeometryCore,
  factor: number,
): { readonly heat: number; readonly airLoss: number } | null {
  try {
    const other = coreFromGeometry(
      { ...geometry, finPitch: geometry.finPitch / factor },
      arrangement,
      point,
    );
    return {
      heat: other.rating.heat / made.rating.heat - 1,
      airLoss: other.air.pressureDrop / made.air.pressureDrop - 1,
    };
  } catch {
    return null;
  }
}

/** How much measures say of what a rating says: conductance over conductance, less one. */
export const measuresAgainstRating = (measures: number, rating: number): number =>
  measures / rating - 1;
