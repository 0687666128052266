/** Both exchangers over a range of flows, for plots. Everything else stays as in the solution given. */
import { coreState } from '../cores/coreState';
import { frontExchange } from './front';
import { frontChanged } from './frontWhatIf';
import type { PreparedLoop } from './prepare';
import type { CoreState, SteadySolution } from './types';

type Point = readonly [x: number, y: number];

const STEPS = 48;

/** From nothing to `to`, closer together near nothing, where the curves bend most. */
const steps = (to: number): number[] =>
  Array.from({ length: STEPS + 1 }, (_, i) => to * (i / STEPS) ** 2);

/**
 * Front exchanger, heat per kelvin between liquid inlet and fresh air, against the face velocity of air
 * that is spread evenly over the face and all fresh: what the core could do at best.
 */
export function frontByFaceVelocity(
  prepared: PreparedLoop,
  s: SteadySolution,
  fastest: number,
): Point[] {
  const { width, height } = prepared.loop.frontExchanger;
  const liquid = prepared.liquidAt(s.liquid.temperature);
  const { parts: _, ...first } = s.air.zones[0]!;
  return steps(fastest).map((v) => {
    const zone = {
      ...first,
      share: 1,
      faceVelocity: v,
      airMassFlow: s.air.density * v * width * height,
    };
    const air = { ...s.air, zones: [zone], recirculation: 0 };
    return [v, frontExchange(prepared, air, s.operating.flow, liquid).conductance];
  });
}

/** A place on the plot of {@link frontByFaceVelocity}: the air as it really is at a vehicle speed. */
export function frontAtSpeed(
  prepared: PreparedLoop,
  s: SteadySolution,
  vehicleSpeed: number,
): { readonly faceVelocity: number; readonly conductance: number } {
  const air = prepared.airAt(vehicleSpeed);
  const liquid = prepared.liquidAt(s.liquid.temperature);
  return {
    faceVelocity: air.meanFaceVelocity,
    conductance: frontExchange(prepared, air, s.operating.flow, liquid).conductance,
  };
}

/** Front exchanger, heat per kelvin against liquid flow, its air as it is in the solution. */
export function frontByLiquidFlow(
  prepared: PreparedLoop,
  s: SteadySolution,
  largest: number,
): Point[] {
  const { flow } = s.operating;
  return steps(largest).map((Q) => [Q, frontChanged(prepared, s, { flow: Q / flow }).conductance]);
}

/** What {@link frontByLiquidFlow} nears but does not pass: liquid without a film, in plenty. */
export const frontWithoutLiquidResistance = (prepared: PreparedLoop, s: SteadySolution): number =>
  frontChanged(prepared, s).airSideConductance;

/**
 * Share of the possible cooling that the charge gets: its own drop over the drop to the liquid's
 * temperature. The same as effectiveness while the air carries less per kelvin than the liquid; with
 * less liquid than air, effectiveness speaks of the liquid and this still of the charge.
 *
 * @formula x = eps * C_min / C_air
 */
export const chargeCooling = ({ effectiveness, C_air, C_liquid }: CoreState): number =>
  C_air > 0 ? (effectiveness * Math.min(C_air, C_liquid)) / C_air : 0;

/** A plot ends this far beyond the last point that matters. */
const ROOM = 1.15;

/** End of an axis that shows all of `values`, and at least `least`. */
export const axisEnd = (values: readonly number[], least: number): number =>
  ROOM * Math.max(least, ...values);

/** Charge cooler, {@link chargeCooling} against air mass flow, its liquid as it is in the solution. */
export function chargeByAirFlow(
  prepared: PreparedLoop,
  s: SteadySolution,
  largest: number,
): Point[] {
  const liquid = prepared.liquidAt(s.liquid.temperature);
  const airIn = s.chargeCooler?.airIn ?? prepared.loop.chargeCooler.rating.airInlet;
  // From the first step on: what it tends to without air depends on the exponents.
  return steps(largest)
    .slice(1)
    .map((airMassFlow) => [
      airMassFlow,
      chargeCooling(
        coreState(prepared.chargeCore, {
          airMassFlow,
          airIn,
          liquidFlow: s.operating.flow,
          liquidIn: s.temperatures.chargeCoolerIn,
          liquid,
          positive: 'into-liquid',
        }),
      ),
    ]);
}
