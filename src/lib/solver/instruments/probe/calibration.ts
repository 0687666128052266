/** Points to type into a reader whose table can be edited. */
import { spaced } from '../../numerics/spaced';
import { fullScale } from './divider';
import { ratioSeen, resistanceBelieved, type ReadSetup } from './reader';

export interface CalibrationPoint {
  /** Temperature the table must say, K. */
  readonly T: number;
  /** Probe, ohm. */
  readonly R: number;
  /** Volts at the input. */
  readonly volts: number;
  /** Count, not rounded. */
  readonly counts: number;
  /** Resistance the reader takes this for, ohm: what to enter where the table is in ohms. */
  readonly believed: number;
  /** What the reader shows with the table it has now, K. */
  readonly shown: number;
}

/**
 * Corrected points over a range, evenly spaced in temperature.
 * @throws {@link OutOfRangeError} outside the probe's law or the reader's table
 */
export function calibrationPoints(
  setup: ReadSetup,
  from: number,
  to: number,
  count: number,
): CalibrationPoint[] {
  const { divider, probe, reader } = setup;
  return spaced(from, to, count).map((T) => {
    const R = probe.resistance(T);
    const ratio = ratioSeen(setup, R);
    const believed = resistanceBelieved(setup, R);
    return {
      T,
      R,
      volts: ratio * divider.supply,
      counts: ratio * fullScale(divider.bits),
      believed,
      shown: reader.table.temperature(believed),
    };
  });
}
