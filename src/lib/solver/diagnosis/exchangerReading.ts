/** The front exchanger as the readings of one duty show it. */
import { coolantProperties } from '../fluids/coolant';
import type { Loop } from '../loop/types';
import {
  SETTLED_DUTIES,
  type Conditions,
  type DutyChannel,
  type Reading,
  type SettledDuty,
} from './types';

export interface ExchangerReading {
  readonly duty: SettledDuty;
  readonly liquidIn: number;
  readonly liquidOut: number;
  readonly ambient: number;
  /** Bucket before meter; absent: flow was not read. */
  readonly flow?: number;
  /** At the mean of in and out. */
  readonly density: number;
  readonly specificHeat: number;
}

/**
 * What in and out of the front exchanger were read at, first duty that has both and lets the liquid
 * enter above ambient; null where none has.
 * @throws {@link OutOfRangeError} where the mean leaves the range of the coolant's properties
 */
export function exchangerReading(
  { coolant, site }: Loop,
  readings: readonly Reading[],
  conditions: Conditions,
): ExchangerReading | null {
  const ambient = conditions.ambient ?? site.ambientTemperature;
  for (const duty of SETTLED_DUTIES) {
    const read = (channel: DutyChannel) =>
      readings.find((r) => r.place === duty && r.channel === channel)?.value;
    const [liquidIn, liquidOut] = [read('frontIn'), read('frontOut')];
    if (liquidIn === undefined || liquidOut === undefined || !(liquidIn > ambient)) continue;
    const { rho, cp } = coolantProperties(coolant, (liquidIn + liquidOut) / 2);
    const flow = read('bucket') ?? read('flow');
    return {
      duty,
      liquidIn,
      liquidOut,
      ambient,
      density: rho,
      specificHeat: cp,
      ...(flow !== undefined && { flow }),
    };
  }
  return null;
}
