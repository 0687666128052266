/** What a meter on the pump's plug would show along a drive. */
import { pchip } from '../../numerics/interpolate';
import { spaced } from '../../numerics/spaced';
import type { PreparedLoop } from '../prepare';
import type { EventHistory } from './types';

/** Temperatures at which pump and feed are settled where the volts follow the flow. */
const LOOKS = 7;

/**
 * Volts on the plug at each time of a history: none while the pump is off or its breaker open, else those
 * of the pump at work with the liquid of that moment (an air-bound pump draws less and would see a little
 * more; that is left out).
 */
export function plugVolts(
  { hydraulics, liquidAt, coldest, hottest }: PreparedLoop,
  { pumpOn, pumpIn }: Pick<EventHistory, 'pumpOn' | 'pumpIn'>,
): Float64Array {
  const { fixedPump } = hydraulics;
  const at = fixedPump ? () => fixedPump.volts : following();
  return pumpOn.map((on, i) => (on === 1 ? at(pumpIn[i]!) : 0));

  function following(): (T: number) => number {
    const within = (T: number) => Math.min(Math.max(T, coldest), hottest);
    const low = within(pumpIn.reduce((least, T) => Math.min(least, T), Infinity));
    const high = within(pumpIn.reduce((most, T) => Math.max(most, T), -Infinity));
    const volts = (T: number) => hydraulics.settled(liquidAt(T), T).pump.volts;
    if (!(high - low > 1)) {
      const one = volts(low);
      return () => one;
    }
    const temperatures = spaced(low, high, LOOKS);
    const curve = pchip(temperatures, temperatures.map(volts));
    return (T) => curve.value(Math.min(Math.max(T, low), high));
  }
}
