/** How a loop answers to a change of its temperature: heat per degree, summed over every way in and out. */
import { prepared as prepare, type PreparedLoop } from './prepare';
import { roundAt } from './roundAt';
import { FLOW_STANDING } from './steady';
import type { DutyId, Loop } from './types';

/** W/K; how much less net heat enters for each kelvin the liquid is hotter. */
export interface Restoring {
  readonly front: number;
  /** 0 where the charge heat is stated outright: it then does not know the liquid. */
  readonly charge: number;
  readonly engine: number;
  readonly hose: number;
  readonly reservoir: number;
}

/**
 * What brings a loop back, in one duty, with liquid at `T_out` leaving the reservoir.
 * @returns null where the liquid stands still: its parts then have no common temperature
 * @source first law; each place as in {@link roundAt}
 */
export function restoring(
  loop: Loop | PreparedLoop,
  dutyId: DutyId,
  T_out: number,
): Restoring | null {
  const prepared = prepare(loop);
  const duty = prepared.loop.duties[dutyId];
  const { round, flow } = roundAt(prepared, duty, prepared.airAt(duty.vehicleSpeed), T_out);
  if (!(flow >= FLOW_STANDING)) return null;
  return {
    front: round.frontConductance,
    charge: round.chargeConductance,
    engine: round.engineConductance,
    hose: round.hoseConductance,
    reservoir: round.reservoirConductance,
  };
}
