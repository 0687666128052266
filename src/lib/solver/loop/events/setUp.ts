/** The state a drive starts from, and what holds its heat. */
import { InvalidInputError } from '../../errors';
import { CP_ICE, HEAT_OF_FUSION, ICE_POINT } from '../../fluids/ice';
import { hoseVolume } from '../../hydraulics/hose';
import { NODE } from '../network';
import { isFrontFirst } from '../order';
import type { PreparedLoop } from '../prepare';
import { nodeCapacities, thermalMass, type NodeCapacities } from '../thermalMass';
import { layoutOf, NODES, type Layout } from './layout';
import type { EventRequest } from './types';

export interface SetUp {
  readonly layout: Layout;
  /** Hoses left out where they have cells; the ice counted as melted. */
  readonly capacity: NodeCapacities;
  readonly cellCapacity: readonly number[];
  /** All liquid of the reservoir, ice included, kg. */
  readonly reservoirMass: number;
  readonly specificHeat: number;
  /** At the start, ice and liquid already at one temperature. */
  readonly y: Float64Array;
}

export function setUp(prepared: PreparedLoop, request: EventRequest): SetUp {
  const { start, hoseDelay, ice } = request;
  const { loop } = prepared;
  const layout = layoutOf(request);
  const { rho, cp } = prepared.liquidAt(start.reservoir);
  const iceMass = ice?.mass ?? 0;
  const nodes = hoseDelay
    ? withoutHoses(prepared, start.reservoir)
    : nodeCapacities(prepared, start.reservoir);
  const capacity = { ...nodes, reservoir: nodes.reservoir + iceMass * cp };
  const { suction, delivery, transfer, back } = loop.hoses;
  const cells = hoseDelay?.cells ?? 0;
  const cellCapacity = [suction, delivery, transfer, back].map(
    (hose) => Math.max(rho * cp * hoseVolume(hose), LEAST) / Math.max(cells, 1),
  );

  const y = new Float64Array(layout.dimension);
  for (const node of NODES) y[NODE[node]] = start[node];
  if (iceMass > 0) {
    // The ice as liquid at the ice point, less what it lacks of that; the liquid as it is.
    const cold = HEAT_OF_FUSION + CP_ICE * (ICE_POINT - (ice?.temperature ?? ICE_POINT));
    const H = nodes.reservoir * (start.reservoir - ICE_POINT) - iceMass * cold;
    if (H < -HEAT_OF_FUSION * (iceMass + 0.9 * rho * loop.reservoir.liquidVolume)) {
      throw new InvalidInputError('ice.mass', 'so much ice freezes the reservoir', iceMass);
    }
    y[NODE.reservoir] = ICE_POINT + H / capacity.reservoir;
  }
  if (layout.breaker >= 0) y[layout.breaker] = (request.breaker?.start ?? 0) - 1;
  if (layout.bay >= 0) {
    const { bayRise } = loop.duties[request.schedule[0]!.duty];
    y[layout.bay] = request.underhood?.start ?? loop.site.ambientTemperature + bayRise;
  }
  const cores = [start.chargeLiquid, start.frontLiquid];
  if (isFrontFirst(loop)) cores.reverse();
  const inRuns = [start.reservoir, start.reservoir, ...cores];
  inRuns.forEach((T, run) =>
    y.fill(T, layout.firstCell + run * cells, layout.firstCell + (run + 1) * cells),
  );
  const reservoirMass = rho * loop.reservoir.liquidVolume + iceMass;
  return { layout, capacity, cellCapacity, reservoirMass, specificHeat: cp, y };
}

/** Least capacity of a node or a run, J/K, as in {@link nodeCapacities}. */
const LEAST = 1;

function withoutHoses(prepared: PreparedLoop, T: number): NodeCapacities {
  const parts = Object.fromEntries(thermalMass(prepared, T).map((p) => [p.part, p.capacity]));
  const sum = (...names: string[]) =>
    Math.max(
      LEAST,
      names.reduce((total, name) => total + (parts[name] ?? 0), 0),
    );
  return {
    reservoir: sum('reservoirLiquid', 'reservoirMetal'),
    chargeLiquid: sum('chargeLiquid'),
    chargeMetal: sum('chargeMetal'),
    frontLiquid: sum('frontLiquid'),
    frontMetal: sum('frontMetal'),
  };
}
