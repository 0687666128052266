/**
 * What a reader shows for a probe at a known temperature: the circuit as it is, with at most one thing
 * wrong in it, and the table the reader believes.
 */
import { dividerRatio, parallel, resistanceFromRatio, type Divider } from './divider';
import type { Probe } from './probe';

/** What is wrong in the circuit; each at rest by its default. */
export interface Flaw {
  /** Resistance in the probe's lead, plug or ground pin, ohm. */
  readonly series?: number;
  /** Resistance across the probe: a wet plug, another reader's input, ohm. */
  readonly across?: number;
  /** Resistance from the input to the supply, beside the bias resistor, ohm. */
  readonly pullUp?: number;
  /** Supply of the divider over the reference that the converter measures against. */
  readonly supplyRatio?: number;
  /** Resistance of the bias over its value: the wrong one fitted, or another one assumed. */
  readonly biasRatio?: number;
}

/** The reader's own belief: which probe, behind which bias. */
export interface Reader {
  readonly table: Probe;
  /** Bias resistor for which its table was made, ohm. */
  readonly bias: number;
}

export interface ReadSetup {
  readonly probe: Probe;
  readonly divider: Divider;
  readonly reader: Reader;
  readonly flaw: Flaw;
}

/**
 * Share of its reference that the converter sees with the probe at resistance `R`; above 1 it saturates.
 */
export function ratioSeen({ divider, flaw }: Pick<ReadSetup, 'divider' | 'flaw'>, R: number) {
  const { series = 0, across = Infinity, pullUp = Infinity, supplyRatio = 1, biasRatio = 1 } = flaw;
  const below = parallel(parallel(R + series, across), divider.input);
  const above = parallel(divider.bias * biasRatio, pullUp);
  return supplyRatio * dividerRatio(below, above);
}

/**
 * Resistance the reader takes the probe to have, ohm.
 * @throws {@link OpenProbeError} or {@link ShortedProbeError} where the input sits at an end
 */
export const resistanceBelieved = (setup: ReadSetup, R: number): number =>
  resistanceFromRatio(ratioSeen(setup, R), setup.reader.bias);

/**
 * Temperature the reader shows with the probe at temperature `T`, K.
 * @throws {@link OutOfRangeError} outside the probe's law or the reader's table
 * @throws {@link OpenProbeError} or {@link ShortedProbeError} where the input sits at an end
 */
export const shownTemperature = (setup: ReadSetup, T: number): number =>
  setup.reader.table.temperature(resistanceBelieved(setup, setup.probe.resistance(T)));

/** The same reader with another bias in the circuit, ohm. */
export const withBias = (setup: ReadSetup, bias: number): ReadSetup => ({
  ...setup,
  divider: { ...setup.divider, bias },
});
