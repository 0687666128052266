/** The loop in time: a schedule of duties, followed by an error-controlled integrator. */
import { InvalidInputError, SolverError, type Note } from '../errors';
import { DenseSolution } from '../numerics/dense';
import type { OdeEvent } from '../numerics/event';
import { integrate } from '../numerics/ode';
import { forcingOf, TABLE_RTOL, type Forcing, type Forcings } from './forcing';
import { network, NODE, STATES, type Network } from './network';
import { prepared as prepare, type PreparedLoop } from './prepare';
import { nodeCapacities, thermalMass } from './thermalMass';
import type { Loop, TransientState, WarmUpRequest, WarmUpSolution } from './types';
import { readOut, type Run } from './warmUpReading';

export { coldState, settledState } from './states';

const RTOL = 1e-6;
/** Absolute part of the tolerance, K, for each unit of rtol. */
const ATOL_PER_RTOL = 10;

/**
 * Follow a loop through a schedule.
 *
 * Five temperatures: the well-mixed reservoir, liquid and metal of both cores; see {@link network}.
 * Within a segment nothing that drives the loop changes, so the integrator starts afresh at each edge.
 * Flow, specific heat and conductances follow the temperature of the liquid leaving the reservoir,
 * through a table held to 1e-7 of direct values. What is simplified:
 * - the liquid in a hose counts with the part it leads to; the time it takes to travel is left out;
 * - heat capacities are those at the reservoir's starting temperature;
 * - by speed and density, the air flow is that of a manifold which has settled at the present liquid
 *   temperature.
 * None of the three moves the temperature at which the loop settles.
 *
 * The run ends early, with its status, when liquid boils or freezes.
 *
 * @param forcing - what drives the loop, where several runs share it: loops that differ in nothing but
 *   what they hold
 * @throws {@link InvalidInputError} for a schedule without time or a state that is not a number
 * @throws {@link SolverError} `integration-failed`, should the integrator give up
 * @source first law on each node; ε-NTU after Kays & London
 */
export function warmUp(
  loop: Loop | PreparedLoop,
  request: WarmUpRequest,
  forcing: Forcings = forcingOf(prepare(loop)),
): WarmUpSolution {
  requireRequest(request);
  const prepared = prepare(loop);
  const { start, schedule, rtol = RTOL } = request;
  const net = network(prepared.loop, nodeCapacities(prepared, start.reservoir));
  const dense = new DenseSolution(STATES);
  const atol = Array.from({ length: STATES }, (_, i) =>
    i === NODE.heatIn || i === NODE.heatOut ? Infinity : ATOL_PER_RTOL * rtol,
  );

  let t = 0;
  let y: Float64Array = stateVector(start);
  let status: WarmUpSolution['status'] = 'completed';
  let rejected = 0;
  const runs: Run[] = [];
  for (const segment of schedule) {
    const force = forcing(segment);
    const limit = limitOf(prepared, net, force);
    const firstStep = dense.steps;
    const from = t;
    if (limit.event.value(t, y) <= 0) status = limit.passed();
    else {
      const problem = {
        dimension: STATES,
        autonomous: true,
        unused: [NODE.heatIn, NODE.heatOut],
        rhs: (_t: number, x: Float64Array, out: Float64Array) => net.rates(force, x, out),
      };
      const events = [limit.event];
      const run = integrate(problem, t, y, t + segment.duration, { rtol, atol, dense, events });
      if (run.reason === 'event') {
        limit.event.value(run.t, run.y);
        status = limit.passed();
      } else if (run.reason !== 'finished') {
        throw new SolverError(`the warm-up could not be followed: ${run.reason}`, {
          code: 'integration-failed',
          law: 'warm-up',
          value: run.t,
        });
      }
      ({ t, y } = run);
      rejected += run.rejected;
    }
    runs.push({ forcing: force, from, to: t, firstStep, lastStep: dense.steps - 1 });
    if (status !== 'completed') break;
  }

  return {
    status,
    endTime: t,
    segmentStarts: runs.map(({ from }) => from),
    end: stateOf(y),
    ...readOut({ prepared, net, dense, runs, request, end: y }),
    thermalMass: thermalMass(prepared, start.reservoir),
    heatIn: y[NODE.heatIn]!,
    heatOut: y[NODE.heatOut]!,
    energyError: energyError(prepared, start, y),
    steps: dense.steps,
    rejected,
    notes: tableNotes(runs),
  };
}

/** The table gives up halving only where something jumps: then it says so. */
function tableNotes(runs: readonly Run[]): Note[] {
  const worst = Math.max(0, ...runs.map(({ forcing }) => forcing.table.worst));
  if (!(worst > TABLE_RTOL)) return [];
  return [
    {
      code: 'warm-up.table-coarse',
      message:
        'flow or heat transfer changes so sharply with temperature that the table of them is coarse there',
      value: worst,
      range: [0, TABLE_RTOL],
    },
  ];
}

function stateVector(s: TransientState): Float64Array {
  return Float64Array.of(
    s.reservoir,
    s.chargeLiquid,
    s.chargeMetal,
    s.frontLiquid,
    s.frontMetal,
    0,
    0,
  );
}

const stateOf = (y: Float64Array): TransientState => ({
  reservoir: y[NODE.reservoir]!,
  chargeLiquid: y[NODE.chargeLiquid]!,
  chargeMetal: y[NODE.chargeMetal]!,
  frontLiquid: y[NODE.frontLiquid]!,
  frontMetal: y[NODE.frontMetal]!,
});

interface Limit {
  /** Distance, K, to the nearest temperature at which the liquid stops being one. */
  readonly event: OdeEvent;
  /** Which of them was the nearest at the last look. */
  passed(): 'boils' | 'freezes';
}

/** One event for all limits: looking at a state costs as much as a step's stage. */
function limitOf(prepared: PreparedLoop, net: Network, forcing: Forcing): Limit {
  const { boilingPoint, hottest, coldest } = prepared;
  let toBoiling = 0;
  let toFreezing = 0;
  const value = (_t: number, y: Float64Array) => {
    const { T_out, coolerIn, frontIn } = net.read(forcing, y);
    const warmest = Math.max(
      T_out,
      coolerIn,
      frontIn,
      y[NODE.reservoir]!,
      y[NODE.chargeLiquid]!,
      y[NODE.frontLiquid]!,
    );
    toBoiling = Math.min(boilingPoint - warmest, hottest - T_out);
    toFreezing = T_out - coldest;
    return Math.min(toBoiling, toFreezing);
  };
  return {
    event: { direction: -1, value },
    passed: () => (toBoiling <= toFreezing ? 'boils' : 'freezes'),
  };
}

/** Heat in less heat out less heat stored, over the largest of the three (a joule at least). */
function energyError(prepared: PreparedLoop, start: TransientState, y: Float64Array): number {
  const capacity = nodeCapacities(prepared, start.reservoir);
  const end = stateOf(y);
  let stored = 0;
  for (const node of Object.keys(capacity) as (keyof TransientState)[]) {
    stored += capacity[node] * (end[node] - start[node]);
  }
  const [into, out] = [y[NODE.heatIn]!, y[NODE.heatOut]!];
  return (
    Math.abs(into - out - stored) / Math.max(Math.abs(into), Math.abs(out), Math.abs(stored), 1)
  );
}

function requireRequest({ schedule, start }: WarmUpRequest): void {
  if (schedule.length === 0) throw new InvalidInputError('schedule', 'the schedule has no segment');
  schedule.forEach(({ duration, heat }, i) => {
    if (!(duration > 0 && duration < Infinity)) {
      throw new InvalidInputError(`schedule.${i}.duration`, 'must be above zero', duration);
    }
    if (heat !== undefined && !Number.isFinite(heat)) {
      throw new InvalidInputError(`schedule.${i}.heat`, 'must be a number', heat);
    }
  });
  for (const [node, T] of Object.entries(start)) {
    if (!Number.isFinite(T)) throw new InvalidInputError(`start.${node}`, 'must be a number', T);
  }
}
