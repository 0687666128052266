/** What the drawn bucket test says: the straight hose wanted, and the flow to expect. */
import { STRAIGHT, straightLength } from '$lib/solver/instruments/meter/meterInLoop';
import type { Study } from './study';

export interface RigPicture {
  /** Straight hose wanted before and after the meter, m. */
  readonly before: number;
  readonly after: number;
  /** Flow of the loop with the meter in it, m³/s; null where it does not flow. */
  readonly flow: number | null;
}

export const rigPicture = ({ meter, inLoop }: Study): RigPicture => ({
  before: straightLength(STRAIGHT.before, meter.bore),
  after: straightLength(STRAIGHT.after, meter.bore),
  flow: inLoop?.with ?? null,
});
