/** The charge cooler as one conductance from the charge air to its liquid inlet. */
import { chargeStateAt } from '../charge/state';
import { coreState } from '../cores/coreState';
import type { LiquidProperties } from '../fluids/properties';
import { brent } from '../numerics/root';
import { throughFilm } from './front';
import type { PreparedLoop } from './prepare';
import type { ChargeState, CoreState, Duty } from './types';

export interface ChargeExchange {
  /** Null where the heat is stated outright. */
  readonly state: ChargeState | null;
  readonly core: CoreState | null;
  /** Effectiveness times the smaller capacity rate, W/K; 0 where the heat is stated. */
  readonly conductance: number;
  readonly airIn: number;
  readonly statedHeat: number | null;
  /** What the conductance would be if the liquid side had no resistance, W/K; splits it for the metal. */
  readonly airSideConductance: number;
}

/**
 * Exchange of the charge cooler with liquid arriving at `liquidIn`.
 *
 * Where the air flow follows from speed and density, it depends on the manifold's temperature, which is
 * the outlet of this very cooler. A hotter manifold breathes less air, and less air is cooled further:
 * the outlet falls as the assumed manifold temperature rises, so a first guess and its image bracket
 * the one fixed point, found by Brent's method.
 */
export function chargeExchange(
  prepared: PreparedLoop,
  duty: Duty,
  flow: number,
  liquidIn: number,
  liquid: LiquidProperties,
): ChargeExchange {
  if (duty.air.by === 'heat') {
    return {
      state: null,
      core: null,
      conductance: 0,
      airIn: NaN,
      statedHeat: duty.air.heat,
      airSideConductance: 0,
    };
  }
  const { loop, chargeCore } = prepared;
  const at = (state: ChargeState) =>
    coreState(chargeCore, {
      airMassFlow: state.massFlow,
      airIn: state.compressorOutlet,
      liquidFlow: flow,
      liquidIn,
      liquid,
      positive: 'into-liquid',
    });
  const state =
    duty.air.by === 'speed-density'
      ? chargeStateAt(loop, duty, manifoldTemperature(prepared, duty, liquidIn, at))!
      : prepared.chargeAt(duty)!; // null only for stated heat
  const core = at(state);
  return {
    state,
    core,
    conductance: core.effectiveness * Math.min(core.C_air, core.C_liquid),
    airIn: core.airIn,
    statedHeat: null,
    airSideConductance: throughFilm(core.C_air, loop.chargeCooler.cleanliness * core.hA_air),
  };
}

function manifoldTemperature(
  { loop }: PreparedLoop,
  duty: Duty,
  liquidIn: number,
  at: (state: ChargeState) => CoreState,
): number {
  const outlet = (T: number) => at(chargeStateAt(loop, duty, T)!).airOut;
  // Near the answer for a cooler that does most of what it could.
  const guess = Math.min(Math.max(liquidIn + 10, 250), 450);
  const image = outlet(guess);
  const surplus = (T: number) => outlet(T) - T;
  const fa = image - guess;
  const fb = surplus(image);
  // An outlet that does not depend on the flow is its own answer but for rounding.
  if (fb === 0 || fa > 0 === fb > 0) return image;
  return brent(surplus, guess, image, { fa, fb, xtol: 1e-11 }).x;
}
