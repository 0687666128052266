/** A core of the loop from its measures instead of a rating point. */
import { STANDARD_AIR_TEMPERATURE } from '../../airside/losses';
import { STANDARD_AIR_DENSITY } from '../../airside/fan';
import { AIR_GAS_CONSTANT, airCp } from '../../air/air';
import { OutOfRangeError, type Note } from '../../errors';
import { coolantProperties } from '../../fluids/coolant';
import type { Arrangement, Coolant, Core, CoreRating, LossPoint } from '../../loop/types';
import { exchangerArrangement } from '../arrangement';
import { effectiveness } from '../effectiveness';
import { airSide, type AirSide } from './airSide';
import { coreSurfaces, type CoreSurfaces } from './surfaces';
import { tubeSide, type TubeSide } from './tubeSide';
import type { CoreGeometry } from './types';

/** Flows and inlets at which the geometry is turned into a rating. */
export interface GeometryPoint {
  readonly airMassFlow: number;
  readonly airInlet: number;
  /** Pa absolute. */
  readonly airPressure: number;
  readonly liquidFlow: number;
  readonly liquidInlet: number;
  readonly coolant: Coolant;
}

/** The parts of a {@link Core} that geometry decides. */
export interface GeometryCore extends Pick<
  Core,
  'rating' | 'airShare' | 'airExponent' | 'liquidExponent' | 'liquidLoss'
> {
  /** Tubes only, m³. */
  readonly tubeVolume: number;
  /** Fins and tubes only, kg. */
  readonly metalMass: number;
  /** (face velocity m/s, Pa) in standard air. */
  readonly airLoss: readonly LossPoint[];
  readonly surfaces: CoreSurfaces;
  readonly air: AirSide;
  readonly liquid: TubeSide;
  /** Tube wall, K/W. */
  readonly wallResistance: number;
  readonly UA: number;
  readonly effectiveness: number;
  readonly notes: readonly Note[];
}

const FACE_VELOCITIES = [1, 2, 3, 4.5, 6.5, 9] as const;
const LIQUID_SHARES = [0.25, 0.5, 1, 1.5] as const;
/** Half a step on the logarithm of a flow, for the slope there. */
const STEP = 0.05;

/**
 * A core's conductance and losses from geometry, told as a rating point so that the loop takes it like
 * any other core.
 *
 * 1/UA = 1/(eta_o h A)_air + t/(k A) + 1/(h A)_liquid; the heat at the point by effectiveness-NTU with
 * both streams' properties at their inlets, as `ratedCore` has them. The exponents are the slopes of
 * the two correlations there; the losses are taken at several flows.
 *
 * @throws as {@link coreSurfaces}, {@link airSide}, {@link tubeSide}
 * @source Kays & London, Compact Heat Exchangers, 3rd ed. 1984; laws as named by the sides.
 *   Predictions from such correlations miss by about ±20 % (common practice, no source)
 */
export function coreFromGeometry(
  geometry: CoreGeometry,
  arrangement: Arrangement,
  point: GeometryPoint,
  path = 'geometry',
): GeometryCore {
  const s = coreSurfaces(geometry, path);
  const liquidAt = coolantProperties(point.coolant, point.liquidInlet);
  const airAt = (massFlow: number) =>
    airSide(geometry, s, { massFlow, temperature: point.airInlet, pressure: point.airPressure });
  const liquidSide = (flow: number) => tubeSide(geometry, s, flow, liquidAt);
  const air = airAt(point.airMassFlow);
  const liquid = liquidSide(point.liquidFlow);

  const wallResistance = geometry.tubeWall / (geometry.conductivity * s.liquidArea);
  const UA = 1 / (1 / air.hA + wallResistance + 1 / liquid.hA);
  const C_air = point.airMassFlow * airCp(point.airInlet);
  const C_liquid = liquidAt.rho * point.liquidFlow * liquidAt.cp;
  const C_min = Math.min(C_air, C_liquid);
  const eps = effectiveness({
    arrangement: exchangerArrangement(arrangement, C_air <= C_liquid),
    NTU: UA / C_min,
    Cr: C_min / Math.max(C_air, C_liquid),
  });
  const { airPressure: _, ...rated } = point;
  const rating: CoreRating = {
    ...rated,
    heat: eps * C_min * Math.abs(point.airInlet - point.liquidInlet),
  };
  return {
    rating,
    airShare: UA / air.hA,
    airExponent: slope((m) => airAt(m).hA, point.airMassFlow),
    liquidExponent: slope((q) => liquidSide(q).hA, point.liquidFlow),
    liquidLoss: {
      points: LIQUID_SHARES.map((share) => ({
        flow: share * point.liquidFlow,
        loss: liquidSide(share * point.liquidFlow).pressureDrop,
      })),
      exponent: 2, // not used: several points
    },
    tubeVolume: s.tubeVolume,
    metalMass: s.metalMass,
    airLoss: airLosses(geometry, s),
    surfaces: s,
    air,
    liquid,
    wallResistance,
    UA,
    effectiveness: eps,
    notes: [...air.notes, ...liquid.notes],
  };
}

/** d ln y / d ln x, held to 0..1 as the loop takes exponents. */
function slope(y: (x: number) => number, x: number): number {
  const n = Math.log(y(x * Math.exp(STEP)) / y(x * Math.exp(-STEP))) / (2 * STEP);
  return Math.min(1, Math.max(0, n));
}

/** Pressure the air loses at several face velocities; those too slow or too fast for the fin's law are left out. */
function airLosses(geometry: CoreGeometry, s: CoreSurfaces): LossPoint[] {
  const T = STANDARD_AIR_TEMPERATURE;
  const pressure = STANDARD_AIR_DENSITY * AIR_GAS_CONSTANT * T;
  return FACE_VELOCITIES.flatMap((flow) => {
    const massFlow = STANDARD_AIR_DENSITY * flow * s.faceArea;
    try {
      const side = airSide(geometry, s, { massFlow, temperature: T, pressure });
      return [{ flow, loss: side.pressureDrop }];
    } catch (error) {
      if (error instanceof OutOfRangeError) return [];
      throw error;
    }
  });
}
