/** What a technician reads off a drive: which segment, which pull, how much each part holds. */
import { heatStored } from './lumped';
import { prepared as prepare, type PreparedLoop } from './prepare';
import { nodeCapacities, type NodeCapacities } from './thermalMass';
import type { Loop, Segment, ThermalMass, TransientState, WarmUpSolution } from './types';

/** Place in the schedule at time `t`, from 0; an edge counts with the segment that begins there. */
export function segmentAt(
  { segmentStarts }: Pick<WarmUpSolution, 'segmentStarts'>,
  t: number,
): number {
  return Math.max(
    0,
    segmentStarts.findLastIndex((start) => start <= t),
  );
}

/** Which pull of the schedule runs at `t` or ran last before it, from 1; 0: none yet. */
export function pullsBy(
  solution: Pick<WarmUpSolution, 'segmentStarts'>,
  schedule: readonly Segment[],
  t: number,
): number {
  return schedule.slice(0, segmentAt(solution, t) + 1).filter(({ duty }) => duty === 'pull').length;
}

/** One node of the transient, its capacity and the heat it took up over the run. */
export interface PartStored {
  readonly node: keyof NodeCapacities;
  readonly C: number;
  readonly T_0: number;
  readonly T_1: number;
  readonly heat: number;
}

/** Heat taken up by each node between two states, J. @throws what {@link heatStored} throws */
export function storedByPart(
  loop: Loop | PreparedLoop,
  start: TransientState,
  end: TransientState,
): PartStored[] {
  const capacities = nodeCapacities(prepare(loop), start.reservoir);
  return (Object.keys(capacities) as (keyof NodeCapacities)[]).map((node) => {
    const [C, T_0, T_1] = [capacities[node], start[node], end[node]];
    return { node, C, T_0, T_1, heat: heatStored({ C, T0: T_0, T1: T_1 }) };
  });
}

/** Share of the loop's heat capacity that lies in the liquid of the reservoir. */
export function reservoirShare(parts: readonly ThermalMass[]): number {
  const sum = parts.reduce((total, { capacity }) => total + capacity, 0);
  const tank = parts.find(({ part }) => part === 'reservoirLiquid')!;
  return tank.capacity / sum;
}
