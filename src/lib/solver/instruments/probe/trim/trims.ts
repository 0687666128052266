/** Trims of a bias resistor: the networks that make the reader's largest error over its range least. */
import { parallel } from '../divider';
import { bestBias, rangeError, type RangeError } from './error';
import { networkBand, type Network } from './network';
import { nearestNetworks, type FoundNetwork, type Stock } from './search';
import type { ReadSetup } from '../reader';

/** Where the network goes. */
export type Placement =
  /** Soldered across the bias resistor that is there. */
  | 'across'
  /** Put in series with it. */
  | 'in-series'
  /** In its place. */
  | 'instead';

export interface Trim {
  readonly placement: Placement;
  readonly network: Network;
  /** Resistance of the network, ohm. */
  readonly R: number;
  /** Bias with the network, ohm. */
  readonly bias: number;
  /** Largest error over the range with nominal parts, K. */
  readonly worst: number;
  /** Bias by the tolerances of all its resistors, ohm. */
  readonly biasBand: readonly [low: number, high: number];
  /** Largest error over the range with every tolerance at its worst, K. */
  readonly worstWithTolerance: number;
}

export interface TrimRequest {
  readonly setup: ReadSetup;
  /** Range of true temperatures over which the error counts, K. */
  readonly from: number;
  readonly to: number;
  readonly stock: Stock;
  /** Share, of every resistor of the stock. */
  readonly stockTolerance: number;
  /** Share, of the bias resistor that is there. */
  readonly biasTolerance: number;
  /** The bias stays and gets a network beside it, or is replaced by one. */
  readonly keepBias: boolean;
  /** How many of each size to return. */
  readonly best: number;
}

export interface Trims {
  readonly error: RangeError;
  /** Bias that makes the largest error least, ohm. */
  readonly target: number;
  /** Largest error with that bias, K: no network does better. */
  readonly least: number;
  /** Largest error as it is, K. */
  readonly present: number;
  /** Bias as it is by its tolerance, ohm. */
  readonly presentBand: readonly [low: number, high: number];
  /** By size of the network, each best first. */
  readonly bySize: Readonly<Record<1 | 2 | 3, readonly Trim[]>>;
}

/**
 * Best networks of one, two and three resistors.
 *
 * The largest error falls towards the best bias from either side, so the networks whose bias is nearest
 * to it from below and from above hold all the best ones; of these the error itself decides.
 *
 * @throws as {@link rangeError}
 */
export function trims(request: TrimRequest): Trims {
  const { setup, from, to, keepBias, best, stock, biasTolerance } = request;
  const error = rangeError(setup, from, to);
  const fitted = setup.divider.bias;
  const target = bestBias(error, fitted);
  const placement: Placement = !keepBias ? 'instead' : target < fitted ? 'across' : 'in-series';
  const wanted =
    placement === 'instead'
      ? target
      : placement === 'across'
        ? (fitted * target) / (fitted - target)
        : target - fitted;

  const ofSize = (size: 1 | 2 | 3): Trim[] => {
    const { below, above } = nearestNetworks(wanted, stock, size, best);
    return [...below, ...above]
      .map((found) => trimOf(request, error, placement, found))
      .sort((a, b) => a.worst - b.worst)
      .slice(0, best);
  };
  return {
    error,
    target,
    least: error.worst(target),
    present: error.worst(fitted),
    presentBand: [fitted * (1 - biasTolerance), fitted * (1 + biasTolerance)],
    bySize: { 1: ofSize(1), 2: ofSize(2), 3: ofSize(3) },
  };
}

/** Bias of a fitted resistor with a network of resistance `R` placed so, ohm. */
export function biasWith(placement: Placement, fitted: number, R: number): number {
  switch (placement) {
    case 'across':
      return parallel(fitted, R);
    case 'in-series':
      return fitted + R;
    case 'instead':
      return R;
  }
}

function trimOf(
  { setup, stockTolerance, biasTolerance }: TrimRequest,
  error: RangeError,
  placement: Placement,
  { network, R }: FoundNetwork,
): Trim {
  const fitted = setup.divider.bias;
  const bias = biasWith(placement, fitted, R);
  const [low, high] = networkBand(
    network,
    network.parts.map(() => stockTolerance),
  );
  const biasBand = [
    biasWith(placement, fitted * (1 - biasTolerance), low),
    biasWith(placement, fitted * (1 + biasTolerance), high),
  ] as const;
  return {
    placement,
    network,
    R,
    bias,
    worst: error.worst(bias),
    biasBand,
    worstWithTolerance: error.worstBetween(...biasBand),
  };
}

/**
 * The trim to solder: of the fewest resistors that bring the largest error to `goodEnough`; where none
 * does, the one with the least error. Null where nothing betters the circuit as it is.
 */
export function recommended({ bySize, present }: Trims, goodEnough: number): Trim | null {
  if (present <= goodEnough) return null;
  const firsts = ([1, 2, 3] as const).flatMap((size) => bySize[size].slice(0, 1));
  const chosen =
    firsts.find((trim) => trim.worst <= goodEnough) ??
    firsts.reduce<Trim | null>((a, b) => (a && a.worst <= b.worst ? a : b), null);
  return chosen && chosen.worst < present ? chosen : null;
}
