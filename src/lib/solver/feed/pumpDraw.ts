/** What a pump draws and moves at the volts on its plug: the link between the feed and the liquid. */
import { requireWithin } from '../errors';
import type { Pump } from '../loop/types';

/** The pump at one voltage. */
export interface HydraulicPoint {
  readonly flow: number;
  readonly head: number;
  /** Into the motor, W. */
  readonly electricPower: number;
}

/** The pump in its loop as a function of the volts on its plug. */
export type Hydraulic = (volts: number) => HydraulicPoint;

/**
 * Speed over rated speed at the volts on the plug: brushed in proportion; a controller holds it, then stops.
 * @throws {@link OutOfRangeError} for volts outside 0 to 60
 * @source Permanent-magnet motor, its resistance left out; common practice
 */
export function speedRatio(
  pump: Pick<Pump, 'motor' | 'ratedVolts' | 'cutoutVolts'>,
  volts: number,
): number {
  requireWithin(
    'pump',
    { volts: [0, 60], ratedVolts: [1, 60] },
    { volts, ratedVolts: pump.ratedVolts },
  );
  if (pump.motor === 'held-speed') return volts >= pump.cutoutVolts ? 1 : 0;
  return volts / pump.ratedVolts;
}

/**
 * A pump in its loop, from what the loop makes of a speed.
 * Power follows the cube of speed: exact by the affinity laws while the loop's head goes with the square
 * of flow, which hoses and cores nearly do. The rated power is that of all pumps on this feed.
 */
export function pumpHydraulic(
  pump: Pick<Pump, 'motor' | 'ratedVolts' | 'cutoutVolts' | 'electricPower'>,
  atSpeed: (speedRatio: number) => { readonly flow: number; readonly head: number },
): Hydraulic {
  return (volts) => {
    const s = speedRatio(pump, volts);
    const { flow, head } = s > 0 ? atSpeed(s) : { flow: 0, head: 0 };
    return { flow, head, electricPower: pump.electricPower * s ** 3 };
  };
}
