/** What one thing wrong in a probe's circuit looks like: each with one number to be found. */
import { SolverError } from '../../errors';
import { combinedBias, requireBath, type BathReading } from './bath';
import { shownTemperature, type Flaw, type ReadSetup } from './reader';
import { maximum } from '../../numerics/maximum';
import { spaced } from '../../numerics/spaced';
import type { Quantity } from '../../quantity';

export type HypothesisId = 'as-described' | 'bias' | 'pull-up' | 'supply' | 'pin' | 'leak';

/** A hypothesis fitted to both readings. */
export interface FittedHypothesis {
  readonly id: HypothesisId;
  /** The number found, SI; null where nothing is wrong. */
  readonly value: number | null;
  readonly quantity: Quantity;
  /** ± of the number found, of the same kind as the ± of the readings. */
  readonly plusMinus: number;
  /** What the reader would then show at each reading, K. */
  readonly predicted: readonly number[];
  /** Reading less prediction over its ±, for each reading. */
  readonly misses: readonly number[];
  /** Every reading lies within its ±. */
  readonly explains: boolean;
  /** Sum of the squared misses. */
  readonly chiSquare: number;
  /** The circuit as this hypothesis has it. */
  readonly setup: ReadSetup;
}

interface OneNumber {
  readonly id: Exclude<HypothesisId, 'as-described' | 'bias'>;
  readonly quantity: Quantity;
  /** Natural logarithms between which the number is looked for. */
  readonly logRange: readonly [number, number];
  readonly flaw: (value: number) => Flaw;
}

/** Widest values looked for; wider ones read as open, shorted or as nothing at all. */
const ONE_NUMBER: readonly OneNumber[] = [
  {
    id: 'pull-up',
    quantity: 'resistance',
    logRange: [Math.log(50), Math.log(1e7)],
    flaw: (pullUp) => ({ pullUp }),
  },
  {
    id: 'supply',
    quantity: 'ratio',
    logRange: [Math.log(0.25), Math.log(4)],
    flaw: (supplyRatio) => ({ supplyRatio }),
  },
  {
    id: 'pin',
    quantity: 'resistance',
    logRange: [Math.log(0.05), Math.log(1e5)],
    flaw: (series) => ({ series }),
  },
  {
    id: 'leak',
    quantity: 'resistance',
    logRange: [Math.log(10), Math.log(1e8)],
    flaw: (across) => ({ across }),
  },
];

/** Trial values over the range of a number, before the best one is refined. */
const TRIALS = 90;

/**
 * Fit every hypothesis to the readings; the best first. One whose law leaves its range is left out.
 *
 * @param setup - the circuit as described: nothing wrong
 * @param readerBiasKnown - the reader's maker states the bias of its table; if not, the table's bias is
 *   what `bias` finds, and a hidden pull-up cannot be told from it
 * @throws {@link InvalidInputError} for fewer than two readings, or a ± that is not above zero
 * @throws {@link OpenProbeError} or {@link ShortedProbeError} for a reading outside the reader's table
 */
export function fitHypotheses(
  setup: ReadSetup,
  readings: readonly BathReading[],
  readerBiasKnown: boolean,
): FittedHypothesis[] {
  requireBath(setup, readings);
  const list = ONE_NUMBER.filter(({ id }) => id !== 'pull-up' || readerBiasKnown);
  const asDescribed = { id: 'as-described', value: null, quantity: 'ratio', plusMinus: 0 } as const;
  return [
    () => judged(setup, readings, asDescribed),
    () => bias(setup, readings, readerBiasKnown),
    ...list.map((one) => () => oneNumber(setup, readings, one)),
  ]
    .flatMap((fit) => orNull(fit) ?? [])
    .sort((a, b) => a.chiSquare - b.chiSquare);
}

/** What no divider gives, or what leaves the table, does not fit; anything but a refusal is a fault. */
function orNull<T>(work: () => T): T | null {
  try {
    return work();
  } catch (thrown) {
    if (thrown instanceof SolverError) return null;
    throw thrown;
  }
}

type Found = Pick<FittedHypothesis, 'id' | 'value' | 'quantity' | 'plusMinus'>;

function judged(
  setup: ReadSetup,
  readings: readonly BathReading[],
  found: Found,
): FittedHypothesis {
  const predicted = readings.map((reading) => shownInBath(setup, reading));
  const misses = readings.map((r, i) => (r.shown - predicted[i]!) / r.plusMinus);
  return {
    ...found,
    predicted,
    misses,
    explains: misses.every((miss) => Math.abs(miss) <= 1),
    chiSquare: misses.reduce((sum, miss) => sum + miss * miss, 0),
    setup,
  };
}

/** Shown by this circuit in that bath; by the probe's measured resistance where there is one. */
const shownInBath = (setup: ReadSetup, { T, ohms }: BathReading): number =>
  ohms === undefined
    ? shownTemperature(setup, T)
    : shownTemperature({ ...setup, probe: { ...setup.probe, resistance: () => ohms } }, T);

function bias(
  setup: ReadSetup,
  readings: readonly BathReading[],
  readerBiasKnown: boolean,
): FittedHypothesis {
  const { bias: inCircuit, share } = combinedBias(setup, readings);
  const { divider, reader } = setup;
  // Whichever of the two is not known is what the readings give.
  const assumed = (reader.bias * divider.bias) / inCircuit;
  const explained: ReadSetup = readerBiasKnown
    ? { ...setup, divider: { ...divider, bias: inCircuit } }
    : { ...setup, reader: { ...reader, bias: assumed } };
  const value = readerBiasKnown ? inCircuit : assumed;
  return judged(explained, readings, {
    id: 'bias',
    value,
    quantity: 'resistance',
    plusMinus: value * share,
  });
}

function oneNumber(
  setup: ReadSetup,
  readings: readonly BathReading[],
  { id, quantity, logRange, flaw }: OneNumber,
): FittedHypothesis {
  const at = (log: number): ReadSetup => ({ ...setup, flaw: flaw(Math.exp(log)) });
  const score = (log: number) => {
    const tried = at(log);
    let sum = 0;
    for (const r of readings) {
      const shown = shownOr(tried, r);
      if (shown === null) return -Infinity;
      sum -= ((r.shown - shown) / r.plusMinus) ** 2;
    }
    return sum;
  };
  const trials = spaced(logRange[0], logRange[1], TRIALS);
  const scores = trials.map(score);
  const best = scores.indexOf(Math.max(...scores));
  const log = maximum(
    score,
    trials[Math.max(best - 1, 0)]!,
    trials[Math.min(best + 1, TRIALS - 1)]!,
    1e-9,
  ).x;
  const value = Math.exp(log);
  return judged(at(log), readings, {
    id,
    value,
    quantity,
    plusMinus: value * logPlusMinus(at, log, readings),
  });
}

const shownOr = (setup: ReadSetup, reading: BathReading): number | null =>
  orNull(() => shownInBath(setup, reading));

/** ± of the logarithm of the number, from how the predictions move with it. */
function logPlusMinus(
  at: (log: number) => ReadSetup,
  log: number,
  readings: readonly BathReading[],
): number {
  const step = 1e-4;
  let information = 0;
  for (const r of readings) {
    const up = shownOr(at(log + step), r);
    const down = shownOr(at(log - step), r);
    if (up === null || down === null) continue;
    information += ((up - down) / (2 * step) / r.plusMinus) ** 2;
  }
  return information > 0 ? 1 / Math.sqrt(information) : Infinity;
}

/** Pull-up to the reader's own supply that brings a fitted bias down to what is found; null above it. */
export const pullUpBehind = (fitted: number, found: number): number | null =>
  found < fitted ? (fitted * found) / (fitted - found) : null;
