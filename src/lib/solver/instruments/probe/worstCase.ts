/** How far a healthy probe circuit may stray from the truth by the tolerances of its parts. */
import { requireWithin, type Interval } from '../../errors';
import { fullScale, parallel, probePower, resistanceFromRatio, selfHeating } from './divider';
import { ratioSeen, type ReadSetup } from './reader';

/** Tolerances as shares or in counts; the dissipation constant makes the probe's own rise. */
export interface Tolerances {
  /** Of the probe's resistance, share. */
  readonly probe: number;
  /** Of the bias resistor, share. */
  readonly bias: number;
  /** Of the converter, counts, its own rounding included. */
  readonly counts: number;
  /** W/K; Infinity leaves the probe's own heat out. */
  readonly dissipation: number;
}

export const TOLERANCE_RANGE = {
  probe: [0, 0.5],
  bias: [0, 0.5],
  counts: [0, 64],
} as const satisfies Record<string, Interval>;

/** What the reader may show at one true temperature, K. */
export interface WorstCase {
  readonly T: number;
  readonly low: number;
  readonly nominal: number;
  readonly high: number;
  /** Rise of the probe by its own current, counted in `high`. */
  readonly selfHeating: number;
}

/**
 * Worst case at true temperature `T`: every tolerance at the end that hurts. The reading is monotone in
 * each, so the corners hold the whole band.
 *
 * @throws {@link OutOfRangeError} outside {@link TOLERANCE_RANGE}, the probe's law or the reader's table
 */
export function worstCase(setup: ReadSetup, tolerances: Tolerances, T: number): WorstCase {
  const { probe, bias, counts, dissipation } = tolerances;
  requireWithin('tolerances', TOLERANCE_RANGE, { probe, bias, counts });
  const { divider, reader } = setup;
  const R = setup.probe.resistance(T);
  const P = probePower({
    V_s: divider.supply,
    R,
    R_b: parallel(divider.bias * (setup.flaw.biasRatio ?? 1), setup.flaw.pullUp ?? Infinity),
  });
  const rise = dissipation === Infinity ? 0 : selfHeating({ P, delta: dissipation });
  const step = 1 / fullScale(divider.bits);

  /** Shown with the probe at `ohms`, the bias off by `share` and the count off by `off`. */
  const shown = (ohms: number, share: number, off: number) => {
    const changed = { ...setup, divider: { ...divider, bias: divider.bias * (1 + share) } };
    const x = ratioSeen(changed, ohms) + off * step;
    return reader.table.temperature(resistanceFromRatio(x, reader.bias));
  };
  return {
    T,
    low: shown(R * (1 + probe), -bias, counts),
    nominal: shown(R, 0, 0),
    high: shown(setup.probe.resistance(T + rise) * (1 - probe), bias, -counts),
    selfHeating: rise,
  };
}
