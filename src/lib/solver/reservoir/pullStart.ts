/** The first moment of a pull: what the charge gives to liquid that a milder duty has left behind. */
import { goRound } from '../loop/balance';
import { prepared as prepare, type PreparedLoop } from '../loop/prepare';
import { roundAt } from '../loop/roundAt';
import { FLOW_STANDING } from '../loop/steady';
import type { DutyId, Loop } from '../loop/types';

export interface PullStart {
  /** From the charge air into the liquid, W. */
  readonly chargeHeat: number;
  /** Liquid into the charge cooler, K. */
  readonly liquidIn: number;
  /** The charge cooler just then; null where the heat is stated outright. */
  readonly cooler: {
    readonly effectiveness: number;
    /** Smaller capacity rate, W/K. */
    readonly C_min: number;
    readonly airIn: number;
  } | null;
}

/**
 * Charge heat of a duty with liquid at `T_out` leaving the reservoir. The most it gives in that duty:
 * as the liquid warms, less.
 * @returns null where the liquid stands still
 * @source {@link roundAt}, {@link goRound}
 */
export function pullStart(
  loop: Loop | PreparedLoop,
  dutyId: DutyId,
  T_out: number,
): PullStart | null {
  const prepared = prepare(loop);
  const duty = prepared.loop.duties[dutyId];
  const { round, charge, flow } = roundAt(prepared, duty, prepared.airAt(duty.vehicleSpeed), T_out);
  if (!(flow >= FLOW_STANDING)) return null;
  const { temperatures, heats } = goRound(round, T_out);
  const { core } = charge;
  return {
    chargeHeat: heats.charge,
    liquidIn: temperatures.chargeCoolerIn,
    cooler: core && {
      effectiveness: core.effectiveness,
      C_min: Math.min(core.C_air, core.C_liquid),
      airIn: core.airIn,
    },
  };
}
