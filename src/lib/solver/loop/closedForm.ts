/** The loop as one mass beside the loop followed in time: the same question, answered twice. */
import { lumpedTemperature, timeConstant } from './lumped';
import { prepared as prepare, type PreparedLoop } from './prepare';
import { steady } from './steady';
import { thermalMass, totalCapacity } from './thermalMass';
import { restoring, type Restoring } from './timeScale';
import type { DutyId, Loop, TransientState } from './types';
import { warmUp } from './warmUp';

export interface ClosedForm {
  /** J/K, properties at the start as in the integration. */
  readonly C: number;
  readonly G: Restoring;
  /** Sum of G, W/K. */
  readonly G_sum: number;
  /** Time constant, s; also the time at which both answers are compared. */
  readonly tau: number;
  /** Reservoir, K: at the start, settled, after `tau` by closed form and by integration. */
  readonly T_0: number;
  readonly T_end: number;
  readonly T_closed: number;
  readonly T_integrated: number;
}

/**
 * One duty held for one time constant: exponential approach against integration. They differ because
 * a loop is not one mass (the reservoir lags the cores) and because flow and conductances move with
 * temperature.
 * @returns null where the duty has no balance, nothing brings the loop back, or the run ends early
 * @source Bergman et al., ch. 5; {@link warmUp}
 */
export function closedForm(
  loop: Loop | PreparedLoop,
  duty: DutyId,
  start: TransientState,
): ClosedForm | null {
  const prepared = prepare(loop);
  const settled = steady(prepared, duty);
  if (settled.status !== 'balanced') return null;
  const G = restoring(prepared, duty, settled.liquid.temperature);
  if (!G) return null;
  const G_sum = (Object.values(G) as number[]).reduce((sum, part) => sum + part, 0);
  if (!(G_sum > 0)) return null;
  const C = totalCapacity(thermalMass(prepared, start.reservoir));
  const tau = timeConstant({ C, G: G_sum });
  const run = warmUp(prepared, {
    schedule: [{ duty, duration: tau }],
    start,
    chargeLimit: Infinity,
    recoveryBand: 1,
  });
  if (run.status !== 'completed') return null;
  const T_0 = start.reservoir;
  const T_end = settled.temperatures.reservoir;
  // The settled temperature as surroundings and no heat on top: the same exponential.
  const mass = { C, G: G_sum, Q: 0, T_surroundings: T_end, T0: T_0 };
  return {
    C,
    G,
    G_sum,
    tau,
    T_0,
    T_end,
    T_closed: lumpedTemperature(mass, tau),
    T_integrated: run.end.reservoir,
  };
}
