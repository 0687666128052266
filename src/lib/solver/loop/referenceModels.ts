/**
 * Small thermal networks with every coefficient given, run by the same integrator as the loop. They
 * stand between closed forms and the loop: others have published or can compute their solutions.
 */
import { SolverError } from '../errors';
import { DenseSolution } from '../numerics/dense';
import { integrate, type OdeProblem } from '../numerics/ode';

/** Tolerance of these runs: per step, on temperatures of some 300 K. */
const RTOL = 1e-6;
const ATOL = 1e-6;

/** Temperatures of each node at the times asked. */
export interface NodeHistory {
  readonly t: readonly number[];
  /** One array per node. */
  readonly nodes: readonly (readonly number[])[];
}

/** Rate of change of each node, `loaded` telling whether the load is on; `t` does not enter otherwise. */
type Network = (y: Float64Array, loaded: boolean, out: Float64Array) => void;

/** Run a network, restarted where its load steps on or off, and read it at the times asked. */
function simulate(
  network: Network,
  start: readonly number[],
  times: readonly number[],
  { t_on, t_off }: { readonly t_on: number; readonly t_off: number },
): NodeHistory {
  const dimension = start.length;
  const end = Math.max(0, ...times);
  const edges = [0, t_on, t_off, end].filter((t) => t >= 0 && t <= end).sort((a, b) => a - b);
  const dense = new DenseSolution(dimension);
  let y: Float64Array = Float64Array.from(start);
  for (let i = 1; i < edges.length; i++) {
    const [from, to] = [edges[i - 1]!, edges[i]!];
    if (!(to > from)) continue;
    const loaded = from >= t_on && from < t_off;
    const problem: OdeProblem = {
      dimension,
      autonomous: true,
      rhs: (_t, x, out) => network(x, loaded, out),
    };
    const run = integrate(problem, from, y, to, { rtol: RTOL, atol: ATOL, dense });
    if (run.reason !== 'finished') {
      throw new SolverError(`the network could not be followed: ${run.reason}`, {
        code: 'integration-failed',
        law: 'reference network',
        value: run.t,
      });
    }
    y = run.y;
  }
  const at = new Float64Array(dimension);
  const nodes = start.map((): number[] => []);
  for (const t of times) {
    if (dense.steps > 0) dense.value(t, at);
    else at.set(start);
    nodes.forEach((node, i) => node.push(at[i]!));
  }
  return { t: times, nodes };
}

/** What {@link simulateTwoMass} takes. */
export interface TwoMassInputs {
  readonly C1: number;
  readonly C2: number;
  /** Conductance between the two, W/K. */
  readonly G: number;
  /** Conductance of node 2 to ambient, W/K. */
  readonly UA: number;
  /** Heat into node 1 until `t_off`, W. */
  readonly Q: number;
  readonly t_off: number;
  readonly T_ambient: number;
  readonly T1_0: number;
  readonly T2_0: number;
  readonly t: readonly number[];
}

/**
 * Two masses: C1 dT1/dt = Q(t) - G (T1 - T2), C2 dT2/dt = G (T1 - T2) - UA (T2 - T_ambient).
 * @returns nodes 1 and 2, K
 */
export function simulateTwoMass(m: TwoMassInputs): NodeHistory {
  const network: Network = (y, loaded, out) => {
    const across = m.G * (y[0]! - y[1]!);
    out[0] = ((loaded ? m.Q : 0) - across) / m.C1;
    out[1] = (across - m.UA * (y[1]! - m.T_ambient)) / m.C2;
  };
  return simulate(network, [m.T1_0, m.T2_0], m.t, { t_on: 0, t_off: m.t_off });
}

/** What {@link simulateTwoMassFallingFlow} takes. */
export interface TwoMassFallingFlowInputs extends Omit<TwoMassInputs, 'G' | 't_off'> {
  readonly mass_flow_0: number;
  readonly cp: number;
  /** Share of the flow lost per kelvin of node 2 above `T_ref`. */
  readonly flow_loss_per_K: number;
  readonly T_ref: number;
  /** Share of the flow that is always left. */
  readonly flow_floor: number;
}

/**
 * Two masses whose coupling is a liquid flow that falls as node 2 gets hot:
 * G = cp m0 max(floor, 1 - loss max(0, T2 - T_ref)). The heat stays on.
 * @returns nodes 1 and 2, K
 */
export function simulateTwoMassFallingFlow(m: TwoMassFallingFlowInputs): NodeHistory {
  const network: Network = (y, _loaded, out) => {
    const left = 1 - m.flow_loss_per_K * Math.max(0, y[1]! - m.T_ref);
    const across = m.cp * m.mass_flow_0 * Math.max(m.flow_floor, left) * (y[0]! - y[1]!);
    out[0] = (m.Q - across) / m.C1;
    out[1] = (across - m.UA * (y[1]! - m.T_ambient)) / m.C2;
  };
  return simulate(network, [m.T1_0, m.T2_0], m.t, { t_on: 0, t_off: Infinity });
}

/** What the two four-node loops share: 1 charge cooler, 2 reservoir, 3 pump and hoses, 4 front exchanger. */
export interface Loop4Common {
  readonly C1: number;
  readonly C2: number;
  readonly C3: number;
  readonly C4: number;
  readonly liquid_capacity_rate: number;
  readonly t_on: number;
  readonly t_off: number;
  readonly T_ambient: number;
  readonly pump_heat: number;
  readonly T1_0: number;
  readonly T2_0: number;
  readonly T3_0: number;
  readonly T4_0: number;
  readonly t: readonly number[];
}

export interface Loop4Inputs extends Loop4Common {
  /** Heat into node 1 from `t_on` to `t_off`, W. */
  readonly Q: number;
  /** Conductance of node 4 to ambient, W/K. */
  readonly UA_front: number;
}

function simulateLoop4Network(
  m: Loop4Common,
  heatIn: (T4: number, loaded: boolean) => number,
  heatOut: (T3: number, T4: number) => number,
): NodeHistory {
  const W = m.liquid_capacity_rate;
  const network: Network = (y, loaded, out) => {
    const [T1, T2, T3, T4] = [y[0]!, y[1]!, y[2]!, y[3]!];
    out[0] = (W * (T4 - T1) + heatIn(T4, loaded)) / m.C1;
    out[1] = (W * (T1 - T2)) / m.C2;
    out[2] = (W * (T2 - T3) + m.pump_heat) / m.C3;
    out[3] = (W * (T3 - T4) - heatOut(T3, T4)) / m.C4;
  };
  return simulate(network, [m.T1_0, m.T2_0, m.T3_0, m.T4_0], m.t, m);
}

/**
 * Four nodes in a ring, each C_i dT_i/dt = W (T_before - T_i) plus its own heat: Q(t) at 1, pump heat
 * at 3, -UA (T4 - T_ambient) at 4.
 * @returns nodes 1 to 4, K
 */
export function simulateLoop4(m: Loop4Inputs): NodeHistory {
  return simulateLoop4Network(
    m,
    (_T4, loaded) => (loaded ? m.Q : 0),
    (_T3, T4) => m.UA_front * (T4 - m.T_ambient),
  );
}

/**
 * Where {@link simulateLoop4} settles with the load held on: heat in over UA at node 4, one pass's rise
 * by pump and load on the way round.
 * @returns nodes 1 to 4, K
 */
export function loop4Steady({
  Q,
  pump_heat,
  UA_front,
  T_ambient,
  liquid_capacity_rate: W,
}: Pick<
  Loop4Inputs,
  'Q' | 'pump_heat' | 'UA_front' | 'T_ambient' | 'liquid_capacity_rate'
>): readonly [number, number, number, number] {
  const T4 = T_ambient + (Q + pump_heat) / UA_front;
  const T1 = T4 + Q / W;
  return [T1, T1, T1 + pump_heat / W, T4];
}

export interface Loop4AirInputs extends Loop4Common {
  readonly effectiveness_charge: number;
  readonly air_capacity_rate: number;
  readonly T_air_hot_on: number;
  readonly T_air_hot_off: number;
  readonly effectiveness_front: number;
  readonly C_min_front: number;
}

/**
 * As {@link simulateLoop4} with both cores by effectiveness: into node 1
 * effectiveness_charge C_air (T_air(t) - T4), out of node 4 effectiveness_front C_min (T3 - T_ambient).
 * At the instant the load steps the hot air temperature is that of the state beginning there.
 * @returns nodes 1 to 4 and the charge air's outlet, K
 */
export function simulateLoop4Air(
  m: Loop4AirInputs,
): NodeHistory & { readonly chargeOut: readonly number[] } {
  const airIn = (loaded: boolean) => (loaded ? m.T_air_hot_on : m.T_air_hot_off);
  const history = simulateLoop4Network(
    m,
    (T4, loaded) => m.effectiveness_charge * m.air_capacity_rate * (airIn(loaded) - T4),
    (T3) => m.effectiveness_front * m.C_min_front * (T3 - m.T_ambient),
  );
  const chargeOut = m.t.map((t, i) => {
    const T_air = airIn(t >= m.t_on && t < m.t_off);
    return T_air - m.effectiveness_charge * (T_air - history.nodes[3]![i]!);
  });
  return { ...history, chargeOut };
}
