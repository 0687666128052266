/** The few numbers of a steady state that a study of many loops looks at. */
import { goRound } from './balance';
import { standing } from './noFlow';
import type { PreparedLoop } from './prepare';
import { settle, type Search } from './settle';
import { coolerState } from './solution';
import type { Duty, SteadySolution } from './types';

export interface Glance {
  readonly status: 'balanced' | 'boils' | 'freezes' | 'no-flow';
  /** Charge air to the engine, K; null where the heat is stated outright. */
  readonly chargeOut: number | null;
  /** Liquid in the reservoir, K. */
  readonly reservoir: number;
  /** Liquid leaving the reservoir, K: where the search of a like loop may start. */
  readonly outlet: number;
  /** m³/s */
  readonly flow: number;
}

/**
 * As `steadyIn` at the duty's own speed, without what is only shown: the operating point's shares, the
 * margins, the notes. `status` says `boils` only where the heats do not balance below the boiling point.
 * @throws as `steady`
 */
export function glance(prepared: PreparedLoop, duty: Duty, search: Search = {}): Glance {
  const air = prepared.airAt(duty.vehicleSpeed);
  const settled = settle(prepared, duty, air, search);
  if (!settled) return ofStanding(standing(prepared, duty, air));
  const { found, ended } = settled;
  const { temperatures, heats } = goRound(found.round, found.T);
  const cooler = coolerState(found.charge, temperatures, heats.charge, found.round.C);
  return {
    status: ended,
    chargeOut: cooler?.airOut ?? null,
    reservoir: temperatures.reservoir,
    outlet: found.T,
    flow: found.flow,
  };
}

const ofStanding = ({ chargeOut, temperatures, operating }: SteadySolution): Glance => ({
  status: 'no-flow',
  chargeOut,
  reservoir: temperatures.reservoir,
  outlet: temperatures.pumpIn,
  flow: operating.flow,
});
