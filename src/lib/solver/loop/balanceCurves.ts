/** Heat in and heat out against the temperature of the liquid: the picture behind the balance. */
import { goRound } from './balance';
import type { PreparedLoop } from './prepare';
import { roundAt } from './roundAt';
import { FLOW_STANDING, steadyIn } from './steady';
import type { DutyId, SteadySolution } from './types';

type Point = readonly [temperature: number, heat: number];

export interface HeatBalanceCurves {
  /** Every heat but the front exchanger's, W, at each temperature leaving the reservoir, K. */
  readonly entering: readonly Point[];
  /** Heat given off by the front exchanger. */
  readonly leaving: readonly Point[];
  /** Where they meet; null when they do not within the liquid's range. */
  readonly crossing: Point | null;
}

const STEPS = 32;
/** Left and right of the crossing, or from ambient up, K. */
const SPAN = 30;

/** Temperatures worth drawing round the balance of a duty, K; null when the liquid stands still. */
export function balanceSpan(
  prepared: PreparedLoop,
  s: SteadySolution,
): readonly [from: number, to: number] | null {
  if (s.status === 'no-flow') return null;
  const middle = s.temperatures.pumpIn;
  const low = Math.min(prepared.loop.site.ambientTemperature, middle - SPAN);
  return [Math.max(prepared.coldest, low), Math.min(prepared.hottest, middle + SPAN)];
}

/**
 * Sample both heats around the balance of a duty. Null when the liquid stands still: then there is
 * no common temperature to draw against.
 * @param span - temperatures of the liquid, K, as far as it is liquid; {@link balanceSpan} unless told
 */
export function heatBalanceCurves(
  prepared: PreparedLoop,
  dutyId: DutyId,
  span?: readonly [from: number, to: number],
): HeatBalanceCurves | null {
  const duty = prepared.loop.duties[dutyId];
  const air = prepared.airAt(duty.vehicleSpeed);
  const s = steadyIn(prepared, duty, duty.vehicleSpeed);
  const own = balanceSpan(prepared, s);
  if (!own) return null;
  const middle = s.temperatures.pumpIn;
  const [from, to] = span
    ? [Math.max(prepared.coldest, span[0]), Math.min(prepared.hottest, span[1])]
    : own;
  const entering: Point[] = [];
  const leaving: Point[] = [];
  for (let i = 0; i <= STEPS; i++) {
    const T = from + ((to - from) * i) / STEPS;
    const at = roundAt(prepared, duty, air, T);
    // Stiff cold liquid may stand still on the way: no point there.
    if (!(at.flow >= FLOW_STANDING)) continue;
    const { heats, residual } = goRound(at.round, T);
    leaving.push([T, -heats.frontExchanger]);
    entering.push([T, residual - heats.frontExchanger]);
  }
  return {
    entering,
    leaving,
    crossing: s.status === 'balanced' ? [middle, s.front.heat] : null,
  };
}
