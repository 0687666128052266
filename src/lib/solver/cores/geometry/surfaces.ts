/** Areas, passages, liquid and metal of a core from its measures. */
import { InvalidInputError, requireWithin, type Interval } from '../../errors';
import type { CoreGeometry } from './types';

/** Aluminium sheet, kg/m³: 3003 is 2730. @source handbook value, from memory */
export const ALUMINIUM_DENSITY = 2730;

/** What a ruler can find; wild values are slips of the unit. */
export const GEOMETRY_RANGE = {
  tubeRun: [0.03, 3],
  stack: [0.02, 3],
  depth: [0.008, 0.5],
  tubeHeight: [0.8e-3, 0.03],
  tubeWall: [0.1e-3, 5e-3],
  webs: [0, 40],
  finHeight: [1e-3, 0.03],
  finPitch: [0.3e-3, 0.02],
  finThickness: [0.03e-3, 1e-3],
  passes: [1, 6],
  portBore: [4e-3, 0.08],
  conductivity: [10, 430],
} as const satisfies Record<string, Interval>;

export interface CoreSurfaces {
  readonly tubes: number;
  readonly finLayers: number;
  /** Height really filled by tubes and fins, m. */
  readonly filled: number;
  /** m² */
  readonly faceArea: number;
  readonly freeFlowArea: number;
  readonly finArea: number;
  readonly bareArea: number;
  readonly airArea: number;
  /** Free flow area over face area. */
  readonly openShare: number;
  /** m, on the air side. */
  readonly airDiameter: number;
  /** Inside of one tube, one passage between webs: height and width, m. */
  readonly passageHeight: number;
  readonly passageWidth: number;
  readonly passages: number;
  readonly tubeDiameter: number;
  /** Of all tubes of one pass, m². */
  readonly passArea: number;
  readonly liquidArea: number;
  /** m³, tubes without the end tanks. */
  readonly tubeVolume: number;
  /** kg, fins and tubes without the end tanks. */
  readonly metalMass: number;
}

/**
 * Areas of a core of flat tubes and fins, fins outside at both ends of the stack.
 * @throws {@link OutOfRangeError} for a measure outside {@link GEOMETRY_RANGE}, NaN included
 * @throws {@link InvalidInputError} where the measures contradict each other: a wall that fills the
 *   tube, a fin that fills its gap, more passes than tubes
 * @source geometry; Kays & London 1984 for the names
 */
export function coreSurfaces(g: CoreGeometry, path = 'geometry'): CoreSurfaces {
  requireWithin(path, GEOMETRY_RANGE, g);
  const inside = g.tubeHeight - 2 * g.tubeWall;
  if (!(inside > 0))
    throw new InvalidInputError(`${path}.tubeWall`, 'two walls fill the tube', g.tubeWall);
  if (!(g.finThickness < 0.5 * g.finPitch))
    throw new InvalidInputError(
      `${path}.finThickness`,
      'the fins leave less than half of the gap open',
      g.finThickness,
    );
  const pitch = g.tubeHeight + g.finHeight;
  const tubes = Math.floor((g.stack - g.finHeight) / pitch + 1e-9);
  if (tubes < 1) throw new InvalidInputError(`${path}.stack`, 'not even one tube fits', g.stack);
  if (g.passes > tubes)
    throw new InvalidInputError(`${path}.passes`, `only ${tubes} tubes to share`, g.passes);
  const finLayers = tubes + 1;
  const openGap = 1 - g.finThickness / g.finPitch;

  const fins = (g.tubeRun / g.finPitch) * finLayers;
  const finArea = 2 * fins * g.finHeight * g.depth;
  const bareArea = 2 * tubes * g.tubeRun * g.depth * openGap;
  const freeFlowArea = finLayers * g.finHeight * g.tubeRun * openGap;
  const faceArea = g.tubeRun * g.stack;
  const airArea = finArea + bareArea;

  const passages = g.webs + 1;
  const across = g.depth - 2 * g.tubeWall - g.webs * g.tubeWall;
  const passageWidth = across / passages;
  if (!(passageWidth > 0))
    throw new InvalidInputError(`${path}.webs`, 'the webs fill the tube', g.webs);
  const section = inside * across;
  const perimeter = passages * 2 * (inside + passageWidth);

  return {
    tubes,
    finLayers,
    filled: tubes * pitch + g.finHeight,
    faceArea,
    freeFlowArea,
    finArea,
    bareArea,
    airArea,
    openShare: freeFlowArea / faceArea,
    airDiameter: (4 * freeFlowArea * g.depth) / airArea,
    passageHeight: Math.min(inside, passageWidth),
    passageWidth: Math.max(inside, passageWidth),
    passages,
    tubeDiameter: (4 * section) / perimeter,
    passArea: (section * tubes) / g.passes,
    liquidArea: tubes * g.tubeRun * perimeter,
    tubeVolume: tubes * g.tubeRun * section,
    metalMass:
      ALUMINIUM_DENSITY *
      (fins * g.finHeight * g.depth * g.finThickness +
        tubes * g.tubeRun * (g.depth * g.tubeHeight - section)),
  };
}
