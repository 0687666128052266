/** Where a transient may start. */
import { coefficients, COEFFICIENTS, K } from './forcing';
import { prepared as prepare, type PreparedLoop } from './prepare';
import { steady } from './steady';
import type { DutyId, Loop, SteadySolution, TransientState } from './types';

/** Everything at one temperature, K; default ambient. */
export function coldState(loop: Loop | PreparedLoop, temperature?: number): TransientState {
  const T = temperature ?? prepare(loop).loop.site.ambientTemperature;
  return { reservoir: T, chargeLiquid: T, chargeMetal: T, frontLiquid: T, frontMetal: T };
}

/**
 * The state in which a loop stands when it has been in one duty for long: the transient started here,
 * in that duty, does not move. Where the steady solution ended at a limit, the state at that limit.
 * @param solution - of that duty, where it is known
 */
export function settledState(
  loop: Loop | PreparedLoop,
  dutyId: DutyId,
  solution: SteadySolution = steady(loop, dutyId),
): TransientState {
  const prepared = prepare(loop);
  const duty = prepared.loop.duties[dutyId];
  const { temperatures: T, ledger, liquid, front } = solution;
  const k = new Float64Array(COEFFICIENTS);
  coefficients(prepared, duty, duty.vehicleSpeed, liquid.temperature, k);
  const flows = k[K.C]! > 0;
  // The metal lies as far above (below) the liquid that meets it as its heat needs.
  const coolerMeets = flows ? T.chargeCoolerIn : T.chargeCoolerOut;
  return {
    reservoir: T.reservoir,
    chargeLiquid: T.chargeCoolerOut,
    chargeMetal: coolerMeets + ledger.charge / k[K.chargeLiquid]!,
    frontLiquid: T.frontOut,
    frontMetal: T.frontIn - front.heat / k[K.frontLiquid]!,
  };
}
