/** Readings in baths of known temperature, and the bias resistor they speak for. */
import { InvalidInputError } from '../../errors';
import { parallel } from './divider';
import { OpenProbeError, ShortedProbeError } from './errors';
import { sensitivity } from './probe';
import type { ReadSetup } from './reader';

/** One bath: what is true there, what the reader shows. */
export interface BathReading {
  /** True temperature, K. */
  readonly T: number;
  /** Shown by the reader, K. */
  readonly shown: number;
  /** ± of the reading against the truth, K: reader, bath and probe together. */
  readonly plusMinus: number;
  /** Probe unplugged and measured in that bath, ohm; stands before its curve. */
  readonly ohms?: number;
}

/**
 * @throws {@link InvalidInputError} for fewer than two readings, or a ± that is not above zero
 * @throws {@link OpenProbeError} or {@link ShortedProbeError} for a reading colder or hotter than the
 *   reader's table holds: what readers show with an open or a shorted input
 */
export function requireBath(setup: ReadSetup, readings: readonly BathReading[]): void {
  if (readings.length < 2) {
    throw new InvalidInputError('probe readings', 'two baths are needed', readings.length);
  }
  for (const { T, shown, plusMinus } of readings) {
    if (!(plusMinus > 0)) {
      throw new InvalidInputError('probe readings', 'a ± must be above zero', plusMinus);
    }
    // Refuses what lies outside its law.
    setup.probe.resistance(T);
    requireInTable(setup, shown);
  }
}

/**
 * @throws {@link OpenProbeError} or {@link ShortedProbeError}, with the table's range, for what lies
 *   outside the reader's table
 */
export function requireInTable({ reader }: ReadSetup, shown: number): void {
  const { range } = reader.table;
  if (shown > range[1]) throw new ShortedProbeError('reading', shown, range);
  if (shown < range[0]) throw new OpenProbeError('reading', shown, range);
  // Refuses what else is outside its law.
  reader.table.resistance(shown);
}

/** Resistance from the input to ground in that bath, ohm. */
export const inBath = ({ probe, divider }: ReadSetup, { T, ohms }: BathReading): number =>
  parallel(ohms ?? probe.resistance(T), divider.input);

/**
 * Bias in the circuit for which one reading comes out, all else being as described.
 *
 * @formula R_b = R_ba * R / R_shown
 * @symbol R_ba - bias of the reader's table, ohm
 * @symbol R - probe in that bath with the input beside it, ohm
 * @symbol R_shown - probe at the temperature shown, by the reader's table, ohm
 * @returns ohm
 */
export const biasOf = (setup: ReadSetup, reading: BathReading): number =>
  (setup.reader.bias * inBath(setup, reading)) / setup.reader.table.resistance(reading.shown);

/**
 * ± of a bias found from one reading, as a share of it: ± of the reading times what the probe loses per
 * kelvin at the temperature shown.
 */
export const biasShare = (setup: ReadSetup, { shown, plusMinus }: BathReading): number =>
  plusMinus * sensitivity(setup.reader.table, shown);

/** One bias for all readings: mean of the logarithms, each weighted by the inverse square of its ±. */
export function combinedBias(
  setup: ReadSetup,
  readings: readonly BathReading[],
): { readonly bias: number; readonly share: number } {
  let weights = 0;
  let sum = 0;
  for (const reading of readings) {
    const w = 1 / biasShare(setup, reading) ** 2;
    weights += w;
    sum += w * Math.log(biasOf(setup, reading));
  }
  return { bias: Math.exp(sum / weights), share: 1 / Math.sqrt(weights) };
}
