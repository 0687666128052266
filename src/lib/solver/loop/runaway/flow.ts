/** The flow at a temperature of the liquid, with the feedbacks that act on it. */
import { breakerBehaviour, BREAKER_RANGE } from '../../feed/breaker';
import type { LiquidFlow, PreparedLoop } from '../prepare';
import type { UnderhoodGain } from './types';

/** Warmer bay air for a liquid temperature, K. */
export const bayShift = (underhood: UnderhoodGain | null, T: number, ambient: number): number =>
  underhood ? underhood.liquidGain * (T - ambient) : 0;

/** Whether the loop's feed has a breaker to open. */
export const hasBreaker = ({ loop }: PreparedLoop): boolean => !!loop.feed?.breaker;

/**
 * Share of the time for which the breaker lets the pump run, over many of its cycles.
 *
 * A breaker that resets itself gives the share of its
 * cycle spent closed; one that does not, none. Its surroundings are held to the range of the breaker's
 * law: hotter than 125 °C counts as that.
 */
export function runningShare(prepared: PreparedLoop, current: number, warmer: number): number {
  const breaker = prepared.loop.feed?.breaker;
  if (!breaker || !(current > 0)) return 1;
  const [coldest, hottest] = BREAKER_RANGE.ambient;
  const around = Math.min(Math.max(breaker.ambient + warmer, coldest), hottest);
  const does = breakerBehaviour(breaker.thermal, current, around);
  if (does.kind === 'holds') return 1;
  return does.kind === 'cycles' ? does.share : 0;
}

const currents = new WeakMap<PreparedLoop, Map<number, number>>();
const REMEMBERED = 512;

/** Current of the pump on its feed, A; remembered, as the flow is. */
export function currentAt(prepared: PreparedLoop, T: number): number {
  let known = currents.get(prepared);
  if (!known) currents.set(prepared, (known = new Map<number, number>()));
  let current = known.get(T);
  if (current === undefined) {
    const { supplied } = prepared.hydraulics.settled(prepared.liquidAt(T), T);
    current = supplied?.status === 'runs' ? supplied.current : 0;
    if (known.size >= REMEMBERED) known.clear();
    known.set(T, current);
  }
  return current;
}

/** Flow and pump heat, both as means over the breaker's cycles, the flow times the knob. */
export const scaledFlow = (at: LiquidFlow, flow: number, running: number): LiquidFlow => ({
  liquid: at.liquid,
  flow: flow * running * at.flow,
  pumpHeat: running * at.pumpHeat,
});
